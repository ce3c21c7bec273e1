#pragma once
// The rule-of-thumb drawer that facts of whole jobs start from, and ways to look at what comes of it.

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>
#include <string>

#include "job/work.h"

namespace half_inch {

using namespace kw;

inline Length in(std::int64_t n, std::int64_t d = 1) { return Length::inches(n, d); }

// The rule-of-thumb drawer: half-inch stock, quarter stack, no clearances.
inline Job half_inch_job() {
    Job job;
    job.name = "Half inch";
    job.fit.clearance = job.fit.end_relief = job.fit.groove_clearance = Length{};
    job.stock = {{"half", in(1, 2), StockKind::plywood, {}, GrainCut::flatsawn, std::nullopt},
                 {"quarter", in(1, 4), StockKind::plywood, {}, GrainCut::flatsawn, std::nullopt}};
    job.shop.machines = {usual_machine("saw", MachineKind::table_saw),
                         usual_machine("chop", MachineKind::miter_saw)};
    job.shop.cutters = {{"quarter stack", CutterKind::dado_stack, "saw", in(1, 4)}};
    DrawerSpec drawer;
    drawer.name = "a";
    drawer.opening = Opening{in(11), in(5), in(27, 2)};
    drawer.slide = usual_slide(SlideKind::side_mount);
    drawer.slide.side = in(15, 32);
    drawer.side_stock = drawer.front.stock = drawer.back.stock = "half";
    drawer.bottom.stock = "quarter";
    job.drawers = {drawer};
    return job;
}

// Fingers at all four corners of a box four inches high.
inline Job fingered_job() {
    Job job = half_inch_job();
    DrawerSpec& drawer = job.drawers.front();
    drawer.opening.reset();
    drawer.box = BoxSize{in(10), in(4), in(12)};
    drawer.front.joint = drawer.back.joint = "box joint";
    drawer.bottom.style = BottomStyle::captured;
    drawer.bottom.offset = in(1, 2);
    return job;
}

inline std::shared_ptr<const Work> worked(const Job& job) {
    auto work = work_out(job);
    if (!work)
        for (const Problem& problem : work.error())
            MESSAGE(problem.pointer << ": " << problem.why.text(Graduation::in_64));
    REQUIRE(work);
    return *work;
}

inline std::string first_problem(const Job& job) {
    const auto work = work_out(job);
    REQUIRE_FALSE(work);
    const Problem& problem = work.error().front();
    return problem.pointer + ": " + problem.why.text(Graduation::in_64) + " | " +
           problem.remedy.text(Graduation::in_64);
}

inline std::size_t place(const Plan& plan, const std::string& work) {
    for (std::size_t i = 0; i < plan.setups.size(); ++i)
        if (plan.setups[i].work == work) return i;
    FAIL("no setup `" << work << "`");
    return 0;
}

inline bool says(const std::vector<Note>& notes, const std::string& words) {
    return std::any_of(notes.begin(), notes.end(), [&](const Note& note) {
        return note.text.text(Graduation::in_64).find(words) != std::string::npos;
    });
}

}  // namespace half_inch
