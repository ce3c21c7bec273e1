#include "draw/order_drag.h"

#include <algorithm>

namespace kw::draw {
namespace {

constexpr double own_px = 22;      // beside its own block: as near as a touch may have taken it up
constexpr double row_end_px = 12;  // at the right end of a row: what a finger can reach

std::size_t index_of(const Plan& plan, const std::string& setup) {
    const auto found = std::find_if(plan.setups.begin(), plan.setups.end(),
                                    [&](const Setup& one) { return one.id == setup; });
    return static_cast<std::size_t>(found - plan.setups.begin());
}

// Those that stay on that side of the step whatever is asked: what it needs or what needs it, and what was pinned there before.
std::vector<bool> kept_on_side(const Work& work, std::size_t setup, Pinned side) {
    const std::vector<Setup>& setups = work.plan.setups;
    std::vector<bool> kept(setups.size(), false);
    const auto keep = [&](std::size_t one) {
        const Surroundings its = surroundings_of(work.standing_design, setups, one);
        const std::vector<bool>& on_side = side == Pinned::first ? its.before : its.after;
        for (std::size_t i = 0; i < kept.size(); ++i) kept[i] = kept[i] || on_side[i];
    };
    keep(setup);
    const auto& pins = side == Pinned::first ? work.job.pins.first : work.job.pins.last;
    for (std::size_t i = 0; !pins.empty() && i < setups.size(); ++i)
        if (!kept[i] && pinned_as(work.job.pins, pin_name(setups[i], work.design)) == side) keep(i);
    return kept;
}

std::size_t row_at(const OrderView& view, double y_mm) {
    for (std::size_t row = 0; row < view.rows.size(); ++row)
        if (y_mm >= view.rows[row].box.bottom_mm) return row;
    return view.rows.size() - 1;
}

// Before how many of the steps this point lies.
std::size_t place_at(const OrderView& view, const OrderRow& row, double x_mm) {
    std::size_t place = row.first;
    while (place < row.end && (view.places[place].box.left_mm + view.places[place].box.right_mm) / 2 <= x_mm)
        ++place;
    return place;
}

const OrderRow& row_of(const OrderView& view, std::size_t place) {
    return *std::find_if(view.rows.begin(), view.rows.end(),
                         [&](const OrderRow& row) { return place < row.end; });
}

}  // namespace

std::optional<DraggedStep> dragged_step(const Work& work, const std::string& step) {
    const auto& sequence = work.plan.sequence;
    const auto found = std::find(sequence.begin(), sequence.end(), step);
    const RestStep* left = step_named(work.rest, step);
    if (found == sequence.end() || !left) return std::nullopt;
    const std::size_t setup = index_of(work.plan, left->setup), done = work.rest.done.size();
    DraggedStep dragged{step, static_cast<std::size_t>(found - sequence.begin()),
                        pinned_as(work.job.pins, pin_name(work.plan.setups[setup], work.design)), 0, 0};
    const std::vector<bool> before = kept_on_side(work, setup, Pinned::first),
                            after = kept_on_side(work, setup, Pinned::last);
    const auto setup_at = [&](std::size_t place) {
        return index_of(work.plan, sequence[place].substr(0, sequence[place].find('#')));
    };
    dragged.first_until = done;
    while (dragged.first_until < sequence.size() && before[setup_at(dragged.first_until)])
        ++dragged.first_until;
    dragged.last_from = sequence.size();
    while (dragged.last_from > done && after[setup_at(dragged.last_from - 1)]) --dragged.last_from;
    return dragged;
}

Drop drop_at(const OrderView& view, const DraggedStep& dragged, Point at) {
    const OrderRow &row = view.rows[row_at(view, at.y_mm)], &own = row_of(view, dragged.at);
    const bool in_own_row = row.first == own.first;
    const Box& block = view.places[dragged.at].box;
    if (in_own_row && at.x_mm >= std::max(block.left_mm - own_px, row.box.left_mm) &&
        at.x_mm <= block.right_mm + own_px)
        return Drop::stays;
    if (in_own_row && at.x_mm < row.box.left_mm) return Drop::first;
    if (in_own_row && at.x_mm > row.box.right_mm - row_end_px) return Drop::last;
    const std::size_t place = place_at(view, row, at.x_mm);
    if (in_own_row && (place == dragged.at || place == dragged.at + 1)) return Drop::stays;
    if (place <= dragged.first_until && place < dragged.at) return Drop::first;
    if (place >= dragged.last_from && place > dragged.at) return Drop::last;
    return dragged.pinned == Pinned::nowhere ? Drop::stays : Drop::any;
}

std::optional<Pinned> asked_by(const DraggedStep& dragged, Drop drop) {
    if (drop == Drop::stays) return std::nullopt;
    const Pinned asked = drop == Drop::first  ? Pinned::first
                         : drop == Drop::last ? Pinned::last
                                              : Pinned::nowhere;
    return asked == dragged.pinned ? std::nullopt : std::optional(asked);
}

std::optional<Line> drop_mark(const OrderView& view, const DraggedStep& dragged, Drop drop) {
    if (drop != Drop::first && drop != Drop::last) return std::nullopt;
    const bool first = drop == Drop::first;
    const std::size_t beside =
        first ? std::min(dragged.first_until, dragged.at) : std::max(dragged.last_from, dragged.at + 1) - 1;
    const Box &own = view.places[dragged.at].box, &other = view.places[beside].box;
    const double down = row_of(view, beside).box.top_mm - row_of(view, dragged.at).box.top_mm;
    const double x = first ? other.left_mm : other.right_mm;
    return Line{{{x, own.top_mm + down}, {x, own.bottom_mm + down}}, Stroke::now};
}

DropWords say_drop(const DraggedStep& dragged, Drop drop, const Words& words) {
    const std::string step = words("order.step", dragged.at + 1);
    if (drop == Drop::any)
        return {words("draw.drop_anywhere", step), dragged.pinned == Pinned::first
                                                       ? words("draw.no_longer_first")
                                                       : words("draw.no_longer_last")};
    if (drop == Drop::stays) return {words("draw.stays", step), words("draw.where_to_drop")};
    const std::string place =
        drop == Drop::first ? words("draw.drop_first", step) : words("draw.drop_last", step);
    return {place, asked_by(dragged, drop) ? words("draw.let_go") : words("draw.wanted_already")};
}

}  // namespace kw::draw
