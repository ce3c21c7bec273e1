// What is told of a drawer that can be made, but is not likely meant so, or won't hold.
#include <doctest/doctest.h>

#include <algorithm>

#include "job/half_inch_job.h"

using namespace kw;
using half_inch::first_problem;
using half_inch::half_inch_job;
using half_inch::in;
using half_inch::worked;

namespace {

constexpr Length mm(std::int64_t n) { return Length::millimetres(n); }

std::vector<std::string> notes_with(const Job& job, const std::string& words) {
    std::vector<std::string> all;
    const auto work = worked(job);
    for (const Note& note : work->plan.notes) {
        const std::string text = note.about + ": " + note.text.text(job.locale);
        if (text.find(words) != std::string::npos) all.push_back(text);
    }
    return all;
}

Job metric() {
    Job job = half_inch_job();
    job.unit = Unit::millimetre;
    job.locale = Graduation::mm_0_1;
    return job;
}

}  // namespace

TEST_CASE(
    "a width in millimetres, in a job in inches, is asked about, and the drawer is planned all the same") {
    Job job = half_inch_job();
    CHECK(notes_with(job, "another unit").empty());
    job.drawers[0].opening->width = in(365);
    CHECK(notes_with(job, "another unit") ==
          std::vector<std::string>{
              "a: its opening is 365 in wide: was another unit meant? Write `width` with its "
              "unit, as in \"365 mm\""});
    // Where more are like it, one note is enough.
    DrawerSpec other = job.drawers[0];
    other.name = "b";
    job.drawers.push_back(other);
    CHECK(notes_with(job, "another unit") ==
          std::vector<std::string>{
              "a: its opening is 365 in wide: was another unit meant? Write `width` with its "
              "unit, as in \"365 mm\"; one more drawer is like it"});
}

TEST_CASE("an opening in inches, in a job in millimetres, is asked about where it can't be made") {
    Job job = metric();
    job.drawers[0].opening->width = Length::micrometres(14375);
    CHECK(first_problem(job).find(
              "; or was another unit meant? Write `width` with its unit, as in \"14.375 in\"") !=
          std::string::npos);
    job = metric();
    job.drawers[0].opening.reset();
    job.drawers[0].box = BoxSize{mm(300), mm(4), mm(400)};
    CHECK(first_problem(job).find(
              "; or was another unit meant? Write `height` with its unit, as in \"4 in\"") !=
          std::string::npos);
}

TEST_CASE("what is large or small for a drawer, but no slip of the unit, is not asked about") {
    Job job = metric();
    job.drawers[0].opening.reset();
    for (const auto& box : {BoxSize{in(72), in(4), in(20)}, BoxSize{in(12), in(2), in(6)}}) {
        job.drawers[0].box = box;
        CHECK(notes_with(job, "another unit").empty());
    }
}

TEST_CASE("a groove that leaves next to nothing of the tongue is told of") {
    Job job = half_inch_job();
    const auto work = worked(job);
    const Length tongue = tongue_of(work->design.drawers[0].front.joint);
    job.locale = Graduation::mm_0_1;
    const auto said = [&](Length left) {
        job.drawers[0].bottom.depth = tongue - left;
        return notes_with(job, "of the front's tongue");
    };
    CHECK(said(Length::micrometres(200)) ==
          std::vector<std::string>{"a: the groove (6.2 mm −) leaves only 0.2 mm of the front's tongue across "
                                   "its height: there it won't hold, above the groove it does"});
    CHECK(said(mm(1)).empty());
    // What is cut away whole is told of as that.
    CHECK(said(Length{}).empty());
    CHECK(notes_with(job, "the tongue is gone").size() == 1);
}

TEST_CASE("a slot that leaves next to nothing of a thin board is told of") {
    // A third of the board is left, which is enough of a thick one: here it is 0.8 mm.
    Job job = half_inch_job();
    job.locale = Graduation::mm_0_1;
    job.fit.end_relief = Length{};
    job.stock.push_back({"thin", Length::micrometres(2400), StockKind::plywood, {}, GrainCut::flatsawn, {}});
    job.drawers[0].side_stock = "thin";
    job.drawers[0].front.joint = job.drawers[0].back.joint = "rabbet";
    job.drawers[0].front.depth = job.drawers[0].back.depth = Length::micrometres(1600);
    job.drawers[0].bottom.depth = Length::micrometres(1500);
    CHECK(notes_with(job, "of the sides") ==
          std::vector<std::string>{
              "a: the front's side rabbet leaves only 0.8 mm of the sides: that breaks in handling",
              "a: the back's side rabbet leaves only 0.8 mm of the sides: that breaks in handling",
              "a: the bottom's groove leaves only 0.9 mm of the sides: that breaks in handling"});
    job.stock.back().thickness = mm(4);
    CHECK(notes_with(job, "of the sides").empty());
}
