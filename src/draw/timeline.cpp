#include "draw/timeline.h"

#include <algorithm>
#include <cassert>

namespace kw::draw {
namespace {

Material material_of(std::string_view change) {
    if (change == "cutter") return Material::cutter;
    if (change == "shims") return Material::shims;
    if (change == "fence") return Material::fence;
    if (change == "height") return Material::height;
    return Material::spacer;
}

std::vector<Piece> pieces_of(const RestStep& step) {
    std::vector<Piece> pieces;
    for (const RestChange& change : step.changes)
        pieces.push_back({change.what, material_of(change.what), change.seconds});
    pieces.push_back({"test cut", Material::test_cut, step.test_s});
    pieces.push_back({"cuts", Material::long_grain, step.cuts_s});
    std::erase_if(pieces, [](const Piece& piece) { return piece.seconds <= 0; });
    return pieces;
}

std::vector<std::string> machines_of(const Work& work) {
    std::vector<std::string> used;
    const auto is_used = [&](const std::string& name) {
        return std::any_of(work.plan.setups.begin(), work.plan.setups.end(),
                           [&](const Setup& setup) { return setup.machine == name; });
    };
    for (const Machine& machine : work.job.shop.machines)
        if (is_used(machine.name)) used.push_back(machine.name);
    return used;
}

// As many as fill rows of this length; nothing where a step alone is longer.
std::vector<TimeRow> filled_rows(const Timeline& timeline, std::int64_t seconds) {
    std::vector<TimeRow> rows;
    for (std::size_t i = 0; i < timeline.steps.size(); ++i) {
        const TimedStep& step = timeline.steps[i];
        const std::int64_t from = step.from_s - step.walk_s;
        if (step.to_s() - from > seconds) return {};
        if (rows.empty() || step.to_s() - rows.back().from_s > seconds) rows.push_back({i, i, from, from});
        rows.back().end = i + 1;
        rows.back().to_s = step.to_s();
    }
    return rows;
}

}  // namespace

std::int64_t TimedStep::to_s() const {
    std::int64_t end = from_s;
    for (const Piece& piece : pieces) end += piece.seconds;
    return end;
}

std::int64_t TimedStep::setting_s() const {
    std::int64_t sum = 0;
    for (const Piece& piece : pieces)
        if (piece.what != "cuts" && piece.what != "test cut") sum += piece.seconds;
    return sum;
}

bool Timeline::has_pinned(Pinned pinned) const {
    return std::any_of(steps.begin(), steps.end(),
                       [&](const TimedStep& step) { return step.pinned == pinned; });
}

Timeline timeline_of(const Work& work) {
    Timeline timeline;
    timeline.machines = machines_of(work);
    timeline.begun = work.rest.begun;
    std::int64_t now_s = 0;
    const auto add = [&](const RestStep& step, bool is_done) {
        TimedStep timed;
        timed.step = step.step;
        timed.name = std::to_string(timeline.steps.size() + 1);
        timed.setup = work.plan.setup_with_id(step.setup);
        const auto& all = timeline.machines;
        timed.lane = std::size_t(std::find(all.begin(), all.end(), timed.setup->machine) - all.begin());
        assert(timed.lane < all.size());
        timed.walk_s = step.walk_s;
        timed.from_s = now_s + step.walk_s;
        timed.pieces = pieces_of(step);
        timed.is_done = is_done;
        timed.still_set = step.still_set;
        const bool any_pins = !work.job.pins.first.empty() || !work.job.pins.last.empty();
        if (any_pins && !is_done)
            timed.pinned = pinned_as(work.job.pins, pin_name(*timed.setup, work.design));
        now_s = timed.to_s();
        timeline.steps.push_back(std::move(timed));
    };
    for (const RestStep& step : work.rest.done_steps) add(step, true);
    timeline.now_s = now_s;
    for (const RestStep& step : work.rest.steps) add(step, false);
    return timeline;
}

std::vector<TimeRow> rows_of(const Timeline& timeline, std::size_t rows) {
    std::int64_t low = 0, high = std::max<std::int64_t>(timeline.end_s(), 1);
    while (high - low > 1) {
        const std::int64_t middle = (low + high) / 2;
        const std::size_t needed = filled_rows(timeline, middle).size();
        (needed > 0 && needed <= rows ? high : low) = middle;
    }
    return filled_rows(timeline, high);
}

}  // namespace kw::draw
