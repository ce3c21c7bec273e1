// Whole jobs with box joints. Worked on paper; what is usual is common practice, no source.
#include <algorithm>

#include "half_inch_job.h"
#include "job/notes.h"
#include "job/precedence.h"

using namespace half_inch;

namespace {

const Part& part(const Plan& plan, Role role) {
    return *std::find_if(plan.parts.begin(), plan.parts.end(),
                         [&](const Part& one) { return one.size.role == role; });
}

}  // namespace

TEST_CASE("all corners of boards equally thick are fingered by one setting of pin and height") {
    const auto work = worked(fingered_job());
    int rows = 0;
    for (const Setup& setup : work->plan.setups) {
        if (!setup.index) continue;
        ++rows;
        CHECK(setup.guide == "indexing jig");
        CHECK(setup.fence == in(1, 4));
        CHECK(setup.height == in(1, 2));
        CHECK(*setup.index == in(1, 2));
        for (const Pass& pass : setup.passes) CHECK(pass.cuts == 8);
    }
    CHECK(rows == 2);  // the sides' ends, and those of front and back with a spacer on the pin
    // Fingers go right through: front and back are as long as the box is wide.
    CHECK(part(work->plan, Role::front).size.length == in(10));
    CHECK(part(work->plan, Role::back).size.length == in(10));
    CHECK(part(work->plan, Role::back).size.width == in(4));
    // Between front and back, and in a groove of each: 12 - 2 x 1/2 + 2 x 1/4.
    CHECK(part(work->plan, Role::bottom).size.width == in(23, 2) - work->job.fit.bottom_slack);
}

TEST_CASE("drawers of several heights go through one jig, each with as many sockets as it is high") {
    Job job = fingered_job();
    job.drawers.push_back(job.drawers.front());
    job.drawers.back().name = "b";
    job.drawers.back().box->height = in(6);
    const auto work = worked(job);
    std::vector<int> cuts;
    for (const Setup& setup : work->plan.setups)
        if (setup.index && setup.spacer == Length{})
            for (const Pass& pass : setup.passes) cuts.push_back(pass.cuts);
    REQUIRE(cuts.size() == 8);  // both ends of both sides of two drawers
    CHECK(std::count(cuts.begin(), cuts.end(), 8) == 4);
    CHECK(std::count(cuts.begin(), cuts.end(), 12) == 4);
}

TEST_CASE("each further socket of a row takes its time, and no more than that") {
    Job job = fingered_job();
    const auto work = worked(job);
    job.times.index_s += 1;
    // Four ends of sides, and two each of front and back: eight, each set over seven times.
    CHECK(worked(job)->plan.seconds == work->plan.seconds + 8 * 7);
}

TEST_CASE("a bottom does not slide in under a back that is fingered to the bottom edge") {
    Job job = fingered_job();
    job.drawers.front().bottom.style = BottomStyle::slide_in;
    CHECK(first_problem(job) ==
          "/drawers/0/bottom/style: a back with a box joint is as high as the sides: no bottom slides in "
          "under it | write `captured`");
}

TEST_CASE("what stands on its end in a jig is held, and its caution says so") {
    const auto work = worked(fingered_job());
    for (const Setup& setup : work->plan.setups) {
        const auto cautions = cautions_for(work->job, setup);
        const bool held = std::any_of(cautions.begin(), cautions.end(), [](const std::string& caution) {
            return caution.find("The board stands on its end") != std::string::npos;
        });
        CHECK(held == setup.index.has_value());
    }
}

TEST_CASE("of a blade and a stack the wider cuts a box joint, since it takes fewer sockets") {
    Job job = fingered_job();
    job.shop.cutters.insert(job.shop.cutters.begin(), {"ripping blade", CutterKind::blade, "saw", in(1, 8)});
    const auto by_stack = worked(job);
    for (const Setup& setup : by_stack->plan.setups)
        if (setup.index) CHECK(setup.cutter == "quarter stack");
    job.drawers.front().front.cutter = job.drawers.front().back.cutter = "ripping blade";
    const auto by_blade = worked(job);
    for (const Setup& setup : by_blade->plan.setups)
        if (setup.index) CHECK(setup.passes.front().cuts == 16);
}

TEST_CASE("boards of two thicknesses take two heights, and the pin stays where the first was locked") {
    Job job = fingered_job();
    job.stock.push_back(
        {"three quarter", in(3, 4), StockKind::plywood, {}, GrainCut::flatsawn, std::nullopt});
    job.drawers.front().front.stock = "three quarter";
    const auto work = worked(job);
    const Setup &sides = work->plan.setups[place(work->plan, "box joint: side sockets")],
                &front = work->plan.setups[place(work->plan, "box joint: end sockets")];
    CHECK(sides.height == in(3, 4));
    CHECK(front.height == in(1, 2));
    CHECK(sides.fence == front.fence);
    CHECK(says(work->plan.notes, "not equally thick"));
}

TEST_CASE("a front with a box joint goes with a back in a dado, which has a depth of its own") {
    Job job = half_inch_job();
    job.drawers.front().front.joint = "box joint";
    const auto work = worked(job);
    CHECK(work->plan.setups[place(work->plan, "back dado: side dado, pass 1 of 2")].height == in(1, 4));
    CHECK(part(work->plan, Role::back).size.length < part(work->plan, Role::front).size.length);
}

TEST_CASE(
    "fingers that are to be planed off stand proud at the back as at the front, and one setting cuts both") {
    Job job = fingered_job();
    job.fit.step = in(1, 64);
    const auto work = worked(job);
    int rows = 0;
    for (const Setup& setup : work->plan.setups) {
        if (!setup.index) continue;
        ++rows;
        CHECK(setup.height == in(1, 2) + in(1, 64));
    }
    CHECK(rows == 2);
    CHECK(part(work->plan, Role::back).size.length == in(10) + in(1, 32));
}

TEST_CASE("a front that is cut to length before its fingers is told of without a tongue") {
    Job job = fingered_job();
    job.shop.machines.pop_back();  // the one saw crosscuts too
    const auto work = worked(job);
    CHECK(says(work->plan.notes, "what goes into the sides must come out as long as planned (1/2 in)"));
    CHECK_FALSE(says(work->plan.notes, "tongue"));
}

TEST_CASE("a row goes up a board as far as it is cut: a band comes onto its top edge afterwards") {
    Job job = fingered_job();
    job.drawers.front().box->height = in(35, 8);
    const auto sockets_of_sides = [](const Job& asked) {
        const auto work = worked(asked);
        return work->plan.setups[place(work->plan, "box joint: side sockets")].passes.front().cuts;
    };
    // They begin at 1/4 in and repeat by 1/2 in: the ninth at 4 1/4 in, of 4 3/8 in; under a band of a quarter it is not there.
    CHECK(sockets_of_sides(job) == 9);
    job.stock.front().banding = Banding{in(1, 4), {BandedEdge::top}};
    CHECK(sockets_of_sides(job) == 8);
}

TEST_CASE("one pin cuts the rows of boards of three thicknesses, and only the first of them tests it") {
    Job job = fingered_job();
    for (const auto& [name, thickness] :
         {std::pair{"three quarter", in(3, 4)}, std::pair{"five eighths", in(5, 8)}})
        job.stock.push_back({name, thickness, StockKind::plywood, {}, GrainCut::flatsawn, std::nullopt});
    job.drawers.front().front.stock = "three quarter";
    job.drawers.front().back.stock = "five eighths";
    const auto work = worked(job);
    const Plan& plan = work->plan;
    std::vector<std::string> leading;
    int rows = 0;
    for (const Group& group : work->design.groups) {
        if (!has_fingers(group.work.chosen.joint)) continue;
        ++rows;
        if (!follows_pin(group)) leading.push_back(group.key);
    }
    // The sides' ends at the front, and at the back; those of front and back, both as deep as the sides are thick.
    CHECK(rows == 3);
    REQUIRE(leading.size() == 1);
    const auto before = precedence_of(work->design, plan.setups).before;
    const auto first_setup_of = [&](const std::string& key) {
        const std::string& id = work->design.group_with_key(key)->id;
        for (std::size_t i = 0; i < plan.setups.size(); ++i)
            if (plan.setups[i].group == id) return int(i);
        return -1;
    };
    for (const Group& group : work->design.groups) {
        if (!follows_pin(group)) continue;
        CHECK(partner_of(work->design, group)->key == leading.front());
        const std::pair first_row_first{first_setup_of(leading.front()), first_setup_of(group.key)};
        CHECK(std::find(before.begin(), before.end(), first_row_first) != before.end());
    }
}

TEST_CASE("the sides' row is locked before a row that stands by its pin, also where one saw does all") {
    Job job = fingered_job();
    job.stock.push_back(
        {"three quarter", in(3, 4), StockKind::plywood, {}, GrainCut::flatsawn, std::nullopt});
    job.drawers.front().front.stock = "three quarter";
    std::erase_if(job.shop.machines, [](const Machine& machine) { return machine.name == "chop"; });
    job.shop.cutters.push_back({"ripping blade", CutterKind::blade, "saw", in(1, 8)});
    const auto work = worked(job);
    const Plan& plan = work->plan;
    const auto sides = int(place(plan, "box joint: side sockets")),
               ends = int(place(plan, "box joint: end sockets"));
    const auto before = precedence_of(work->design, plan.setups).before;
    CHECK(std::find(before.begin(), before.end(), std::pair{sides, ends}) != before.end());
    // It is cut on boards that have their length, which nothing of a tongue sets.
    CHECK_FALSE(says(plan.notes, "tongue"));
    CHECK(says(plan.notes, "cut to length before"));
}
