// The whole computation, from a job to its plan.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "job/half_inch_job.h"
#include "job/notes.h"

using namespace kw;
using half_inch::first_problem;
using half_inch::half_inch_job;
using half_inch::in;
using half_inch::place;
using half_inch::worked;

TEST_CASE("the rule-of-thumb drawer comes out as every maker knows it (common practice, no source)") {
    const auto work = worked(half_inch_job());
    CHECK(work->plan.boxes[0].size == BoxSize{in(161, 16), in(4), in(53, 4)});
    CHECK(work->plan.part_with_id("a.1.front")->size.length == in(153, 16));
    CHECK(work->plan.part_with_id("a.1.back")->size.length == in(153, 16));
    CHECK(work->plan.part_with_id("a.1.bottom")->size.length == in(153, 16) - in(1, 32));
    const Setup& rabbet = work->plan.setups[place(work->plan, "locking rabbet: rabbet")];
    CHECK(rabbet.fence == in(1, 4));
    CHECK(rabbet.height == in(1, 4));
    CHECK(rabbet.spacer == in(1, 4));
}

TEST_CASE(
    "the order keeps the trade's rules: rip, crosscut, fronts to length behind the joint, bottoms last") {
    const Plan plan = worked(half_inch_job())->plan;
    CHECK(place(plan, "rip to width: sides and fronts") < place(plan, "crosscut to length: sides"));
    CHECK(place(plan, "crosscut to length: sides") < place(plan, "locking rabbet: side dado"));
    CHECK(place(plan, "locking rabbet: side dado") < place(plan, "crosscut to length: fronts"));
    CHECK(place(plan, "crosscut to length: fronts") < place(plan, "locking rabbet: rabbet"));
    CHECK(place(plan, "groove") < place(plan, "rip to width: backs"));
    CHECK(place(plan, "groove") < place(plan, "rip to width: bottoms"));
    CHECK(place(plan, "back dado: side dado, pass 2 of 2") < place(plan, "rip to width: bottoms"));
}

TEST_CASE(
    "where the only saw that crosscuts holds the stack, fronts go to length first, and the plan says so") {
    Job job = half_inch_job();
    job.shop.machines.pop_back();
    const Plan plan = worked(job)->plan;
    CHECK(place(plan, "crosscut to length: fronts") < place(plan, "locking rabbet: side dado"));
    CHECK(std::any_of(plan.notes.begin(), plan.notes.end(), [](const Note& note) {
        return note.text.text(Graduation::in_64).find("the front is cut to length first") !=
               std::string::npos;
    }));
}

TEST_CASE("every end that a joint needs goes through once, and every part is brought to size") {
    Job job = half_inch_job();
    job.drawers[0].count = 3;
    const Plan plan = worked(job)->plan;
    std::set<std::string> sized;
    std::size_t rabbets = 0;
    for (const Setup& setup : plan.setups) {
        if (setup.stage == Stage::rip)
            for (const Pass& pass : setup.passes) CHECK(sized.insert(pass.part).second);
        if (setup.work == "locking rabbet: rabbet") rabbets += setup.passes.size();
    }
    CHECK(sized.size() == plan.parts.size());
    CHECK(rabbets == 6);
}

TEST_CASE("a plan is the same every time") {
    Job job = half_inch_job();
    job.drawers[0].count = 2;
    const auto once = worked(job);
    const auto again = worked(job);
    CHECK(once->plan.sequence == again->plan.sequence);
    for (std::size_t i = 0; i < once->plan.setups.size(); ++i)
        CHECK(once->plan.setups[i].work == again->plan.setups[i].work);
}

TEST_CASE(
    "a joint stays set until all its parts have run, and two that are locked in turn don't share a "
    "crosscut") {
    Job job = half_inch_job();
    job.stock.push_back({"thick", in(9, 16), StockKind::plywood, {}, GrainCut::flatsawn, std::nullopt});
    DrawerSpec other = job.drawers[0];
    other.name = "b";
    other.front.stock = "thick";
    other.opening->width =
        in(11) - in(1, 8);  // its tongues are 1/16 in longer: the fronts come out equally long
    job.drawers.push_back(other);
    const Plan plan = worked(job)->plan;
    std::vector<Length> stops;
    std::vector<std::string> locked;  // as the saw meets them
    for (const Setup& setup : plan.setups) {
        if (setup.work == "crosscut to length: fronts") stops.push_back(setup.fence);
        if (setup.machine == "saw" && (locked.empty() || locked.back() != setup.group))
            locked.push_back(setup.group);
    }
    CHECK(stops == std::vector<Length>{in(153, 16), in(153, 16)});
    locked.erase(std::remove(locked.begin(), locked.end(), ""), locked.end());
    CHECK(std::set<std::string>(locked.begin(), locked.end()).size() == locked.size());
    CHECK(locked.size() == plan.groups.size());
}

TEST_CASE("front and back rabbets that stand alike are one setup, whatever they are called") {
    Job job = half_inch_job();
    job.drawers[0].front.joint = job.drawers[0].back.joint = "rabbet";
    const Plan plan = worked(job)->plan;
    const Setup& rabbet = plan.setups[place(plan, "rabbet: side rabbet")];
    CHECK(rabbet.passes.size() == 4);
    CHECK(std::count_if(plan.setups.begin(), plan.setups.end(), [](const Setup& setup) {
              return setup.work.find("side rabbet") != std::string::npos;
          }) == 1);
}

TEST_CASE("a groove goes before the ends are cut where that spares a change; a joint at the ends does not") {
    const auto work = worked(half_inch_job());
    const auto crosscut = place(work->plan, "crosscut to length: fronts");
    CHECK(crosscut < place(work->plan, "locking rabbet: rabbet"));
    CHECK(place(work->plan, "rip to width: sides and fronts") < place(work->plan, "groove"));
}

TEST_CASE("a solid bottom is made narrower by what it may still grow, and plywood is not") {
    Job job = half_inch_job();
    const Length plywood = worked(job)->plan.part_with_id("a.1.bottom")->size.width;
    job.stock.push_back({"slab", in(1, 4), StockKind::solid, "sugar maple", GrainCut::flatsawn, 8.0});
    job.drawers[0].bottom.stock = "slab";
    job.climate = {6, 11};
    const auto work = worked(job);
    // Sugar maple, tangential: 0.00353 per 1 % (USDA Wood Handbook, table of dimensional change coefficients). From 8 to 11 %
    // over the box's depth less the setback.
    const Length grows = Length::nearest_mm(0.00353 * 3 * (in(53, 4) - job.drawers[0].back.setback).mm());
    CHECK(abs(plywood - work->plan.part_with_id("a.1.bottom")->size.width - grows) <= Length::micrometres(1));
    const auto says = [&](const char* words) {
        return std::any_of(work->plan.notes.begin(), work->plan.notes.end(), [&](const Note& note) {
            return note.text.text(Graduation::mm_0_1).find(words) != std::string::npos;
        });
    };
    CHECK(says("fix the solid bottom at the front only: over the year it moves by 5."));
}

TEST_CASE("a captured solid bottom that would drop out of its grooves in the driest month is told of") {
    Job job = half_inch_job();
    job.stock.push_back(
        {"slab", in(1, 4), StockKind::solid, "american beech", GrainCut::flatsawn, std::nullopt});
    job.drawers[0].bottom.stock = "slab";
    job.drawers[0].bottom.style = BottomStyle::captured;
    job.drawers[0].bottom.depth = in(1, 8);
    job.climate = {5, 13};
    const auto work = worked(job);
    CHECK(std::any_of(work->plan.notes.begin(), work->plan.notes.end(), [](const Note& note) {
        return note.level == Level::warning &&
               note.text.text(Graduation::mm_0_1).find("in the driest month the grooves hold only 0 mm") !=
                   std::string::npos;
    }));
}

TEST_CASE("backs go to length when the joints that set it are locked, their own and the front's") {
    Job job = half_inch_job();
    job.drawers[0].bottom.style = BottomStyle::captured;
    const Plan plan = worked(job)->plan;
    CHECK(place(plan, "locking rabbet: side dado") < place(plan, "crosscut to length: backs"));
    CHECK(place(plan, "back dado: side dado, pass 1 of 2") < place(plan, "crosscut to length: backs"));
}

TEST_CASE("a captured back and one over a slide-in bottom are ripped apart, though they are of one width") {
    Job job = half_inch_job();
    DrawerSpec captured = job.drawers[0], over = job.drawers[0];
    captured.name = "captured";
    captured.bottom.style = BottomStyle::captured;
    captured.opening.reset();
    captured.box = BoxSize{in(10), in(3), in(12)};
    over.name = "over";
    over.opening.reset();
    over.box =
        BoxSize{in(10), in(3) + in(1, 4) + over.bottom.offset, in(12)};  // its back stands on the bottom
    job.drawers = {captured, over};
    const auto work = worked(job);
    CHECK(work->plan.part_with_id("captured.1.back")->size.width ==
          work->plan.part_with_id("over.1.back")->size.width);
}

TEST_CASE("a tongue with a height of its own is cut after the front has its length, and that is told") {
    Job job = half_inch_job();
    job.drawers[0].front.depth = in(3, 16);
    const auto work = worked(job);
    CHECK(std::any_of(work->plan.notes.begin(), work->plan.notes.end(), [](const Note& note) {
        return note.text.text(Graduation::in_64)
                   .find("bring the tongue to its planned length by the spacer") != std::string::npos;
    }));
}

TEST_CASE("what can't be made is refused at the field to blame, with what would do") {
    Job job = half_inch_job();
    job.drawers[0].front.depth = in(7, 16);
    CHECK(first_problem(job) ==
          "/drawers/0/front/depth: the web would be too thin: a slot 7/16 in deep leaves 1/16 in of a board "
          "1/2 in thick"
          " | make it at most 21/64 in + deep, or take thicker stock");
    job = half_inch_job();
    job.drawers[0].bottom.depth = in(5, 16);
    CHECK(work_out(job));  // the dado is made wider for it, in two passes
    job.drawers[0].front.dado_width = in(1, 4);
    CHECK(first_problem(job) ==
          "/drawers/0/bottom/depth: a groove 5/16 in deep goes through the front's tongue, which is 1/4 in "
          "thick"
          " | make the groove at most 1/4 in deep, or the dado wider");
    job = half_inch_job();
    job.drawers[0].opening->width = in(4);
    CHECK(first_problem(job).find(
              "/drawers/0/opening/width: the front would be 2 9/16 in long, shorter than is safe") == 0);
    job = half_inch_job();
    job.drawers[0].face = {"half", FaceStyle::inset, in(6), in(6), in(1, 16), in(1, 16)};
    CHECK(first_problem(job) ==
          "/drawers/0/face/left: gaps of 12 in in all leave no face in an opening 11 in wide | make the gaps "
          "less");
    job = half_inch_job();
    job.drawers[0].back.stock = "oak";
    CHECK(first_problem(job) ==
          "/drawers/0/back/stock: there is no stock named `oak` | name one of the job's `stock`");
    job = half_inch_job();
    job.drawers[0].front.joint = "dovetail";
    CHECK(first_problem(job) ==
          "/drawers/0/front/joint: there is no joint `dovetail` here | write `locking rabbet` or `rabbet` or "
          "`half lap corner` or `box joint`");
}

TEST_CASE("all that is wrong is said at once, not only the first") {
    Job job = half_inch_job();
    job.drawers[0].back.stock = "oak";
    job.drawers[0].bottom.stock = "elm";
    CHECK(work_out(job).error().size() == 2);
}

TEST_CASE("nothing long goes across a rip fence on a short edge: it goes against a stop") {
    Job job = half_inch_job();
    job.drawers[0].face = {"half", FaceStyle::overlay, in(3, 8), in(3, 8), in(3, 8), in(3, 8)};
    job.drawers[0].opening->width = in(30);
    const Plan plan = worked(job)->plan;
    const Setup& face = plan.setups[place(plan, "crosscut to length: faces")];
    CHECK(face.guide == "stop");
    CHECK(face.machine == "chop");
    for (const Setup& setup : plan.setups) {
        if (setup.guide != "rip fence" || setup.height) continue;
        for (const Pass& pass : setup.passes) {
            const PartSize& size = plan.part_with_id(pass.part)->size;
            const Length edge = setup.fence == size.width ? size.length : size.width;
            CHECK(3 * edge >= 2 * setup.fence);
        }
    }
}

TEST_CASE("what the shop does not list, or can't use, is told of") {
    Job job = half_inch_job();
    job.shop.cutters.push_back({"wide stack", CutterKind::dado_stack, "saw", in(7, 8)});
    const auto work = worked(job);
    const auto says = [&](const char* words) {
        return std::any_of(work->plan.notes.begin(), work->plan.notes.end(), [&](const Note& note) {
            return note.text.text(Graduation::in_64).find(words) != std::string::npos;
        });
    };
    CHECK(says("no blade is listed for it: one with a kerf of 1/8 in is taken"));
    CHECK(says("it is 7/8 in wide and `saw` takes no more than 13/16 in: it is not used"));
    // Quarter-inch groove, tongue and cutter are usual (common practice, no source); that the tongue is cut through there is told.
    CHECK(says("the groove (1/4 in) is as deep as the front's tongue is thick (1/4 in)"));
}

TEST_CASE("cautions go with the setup, name the manual, and never say that anything is safe") {
    const auto work = worked(half_inch_job());
    for (const Setup& setup : work->plan.setups) {
        const auto cautions = cautions_for(work->job, setup);
        REQUIRE(cautions.size() >= 2);
        CHECK(cautions.front().rfind("WARNING", 0) ==
              0);  // blade contact and kickback: WARNING at least, ANSI Z535.4-2007 4.14
        CHECK(cautions.back().find("manual") != std::string::npos);
        for (const std::string& caution : cautions) CHECK(caution.find("is safe") == std::string::npos);
    }
}
