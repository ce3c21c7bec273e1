// A back that goes into the sides with a tongue, from the job to its plan. Common practice, no source.
#include <doctest/doctest.h>

#include <algorithm>

#include "job/half_inch_job.h"

using namespace kw;
using half_inch::first_problem;
using half_inch::half_inch_job;
using half_inch::in;
using half_inch::place;
using half_inch::worked;

TEST_CASE(
    "a back with a tongue that is flush with the rear ends is the front's joint over again: one setup for "
    "both") {
    Job job = half_inch_job();
    job.drawers[0].back.joint = "tongue and dado";
    job.drawers[0].back.setback = Length{};
    const Plan plan = worked(job)->plan;
    CHECK(plan.setups[place(plan, "locking rabbet: side dado")].passes.size() == 4);
    CHECK(plan.setups[place(plan, "locking rabbet: rabbet")].passes.size() == 4);
    const auto joint_of = [](const Plan& of) {
        return of.group_with_id(of.setups[place(of, "locking rabbet: rabbet")].group)->work.chosen.joint;
    };
    CHECK_FALSE(joint_of(plan).step_is_place);  // the front is among them
    DrawerSpec other = job.drawers[0];
    other.name = "b";
    other.front.joint = "rabbet";
    std::swap(job.drawers[0], other);
    job.drawers.push_back(other);
    const Plan back_first = worked(job)->plan;
    const Setup& rabbet = back_first.setups[place(back_first, "tongue and dado: rabbet")];
    CHECK(rabbet.passes.size() == 6);
    CHECK_FALSE(back_first.group_with_id(rabbet.group)->work.chosen.joint.step_is_place);
}

TEST_CASE(
    "a back with a tongue is cut with the stack and the height that are on for the front, in one pass") {
    Job job = half_inch_job();
    job.fit.clearance = Length::inches(4, 1000);
    job.fit.end_relief = in(1, 64);
    const auto passes_of_back = [&] {
        const Plan plan = worked(job)->plan;
        return std::count_if(plan.setups.begin(), plan.setups.end(), [](const Setup& setup) {
            return setup.work.rfind("back ", 0) == 0 && setup.work.find("side dado") != std::string::npos;
        });
    };
    CHECK(passes_of_back() == 3);  // a whole back, by a stack half as wide as it is thick and its clearance
    job.drawers[0].back.joint = "tongue and dado";
    CHECK(passes_of_back() == 1);
    const auto work = worked(job);
    const Setup& front = work->plan.setups[place(work->plan, "locking rabbet: side dado")];
    for (const char* cut :
         {"locking rabbet: rabbet", "back tongue and dado: side dado", "back tongue and dado: rabbet"}) {
        CAPTURE(cut);
        const Setup& setup = work->plan.setups[place(work->plan, cut)];
        CHECK(setup.cutter == front.cutter);
        CHECK(setup.height == front.height);
    }
    CHECK(work->plan.part_with_id("a.1.back")->size.length ==
          work->plan.part_with_id("a.1.front")->size.length);
}

TEST_CASE("a back thicker or thinner than the front still goes to length at one stop, by a second height") {
    for (const Length thickness : {in(3, 8), in(5, 8)}) {
        Job job = half_inch_job();
        job.fit.end_relief = in(1, 64);
        job.drawers[0].front.depth = in(5, 16);
        job.stock.push_back({"other", thickness, StockKind::plywood, {}, GrainCut::flatsawn, std::nullopt});
        job.drawers[0].back.stock = "other";
        job.drawers[0].back.joint = "tongue and dado";
        const auto work = worked(job);
        CHECK(work->plan.part_with_id("a.1.back")->size.length ==
              work->plan.part_with_id("a.1.front")->size.length);
        const Setup& dado = work->plan.setups[place(work->plan, "back tongue and dado: side dado")];
        const Setup& rabbet = work->plan.setups[place(work->plan, "back tongue and dado: rabbet")];
        CHECK(dado.group != rabbet.group);
        CHECK(*dado.height == in(5, 16));  // as the front's
        CHECK(*rabbet.height == thickness - in(1, 4));
        CHECK(rabbet.test_cut);
    }
}

TEST_CASE("the setback of a back with a tongue is to its outside face, and the bottom ends there") {
    Job job = half_inch_job();
    const Length to_whole = worked(job)->plan.part_with_id("a.1.bottom")->size.width;
    job.drawers[0].back.joint = "tongue and dado";
    const Plan plan = worked(job)->plan;
    const Setup& dado = plan.setups[place(plan, "back tongue and dado: side dado")];
    CHECK(dado.fence == job.drawers[0].back.setback + in(1, 4));
    CHECK(plan.part_with_id("a.1.bottom")->size.width == to_whole);
}

TEST_CASE("a tongue goes on a back, and no groove goes through it") {
    Job job = half_inch_job();
    job.drawers[0].back.joint = "tongue and dado";
    job.drawers[0].back.dado_width = in(3, 16);
    job.drawers[0].bottom.style = BottomStyle::captured;
    job.drawers[0].bottom.depth = in(1, 4);
    CHECK(
        first_problem(job) ==
        "/drawers/0/bottom/depth: a groove 1/4 in deep goes through the back's tongue, which is 3/16 in thick"
        " | make the groove at most 3/16 in deep, or the dado wider");
    job.drawers[0].bottom.style = BottomStyle::slide_in;  // then it does not cross the back at all
    CHECK(work_out(job));
    job.drawers[0].front.joint = "tongue and dado";
    CHECK(first_problem(job) ==
          "/drawers/0/front/joint: there is no joint `tongue and dado` here | write `locking rabbet` or "
          "`rabbet` or `half lap corner` or `box joint`");
}
