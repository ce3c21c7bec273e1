#pragma once
// A step that is dragged along the order's picture: where it would be done if it were let go there.
//
// There are no places but three: before all that it does not need itself, after all that can be done without it, and where it fits best
// (see job/pins.h). So a step that is let go before the first of what it can precede is pinned first, behind the last of what
// it can follow it is pinned last; in between nothing is asked for, or a pin is let go.

#include <optional>

#include "draw/order_view.h"
#include "job/pins.h"

namespace kw::draw {

// What must be known of a step to drag it. Places are those of the picture, in the order of the work.
struct DraggedStep {
    std::string step;
    std::size_t at = 0;
    Pinned pinned = Pinned::nowhere;
    std::size_t first_until = 0;  // let go before this place or earlier: first
    std::size_t last_from = 0;    // let go before this place or later: last
};

// Nothing for a step that is done, or that is not in the plan.
std::optional<DraggedStep> dragged_step(const Work& work, const std::string& step);

enum class Drop {
    stays,  // over its own place: nothing changes
    any,    // among what it could precede and follow: wherever it fits best
    first,
    last,
};
// Beyond either end of its own row it is first or last too, however many rows there are.
Drop drop_at(const OrderView& view, const DraggedStep& dragged, Point at);

// The pin that is asked for so; nothing where all stays as it is.
std::optional<Pinned> asked_by(const DraggedStep& dragged, Drop drop);

// Where the step would come, as a line across its lane; nothing where no place is known.
std::optional<Line> drop_mark(const OrderView& view, const DraggedStep& dragged, Drop drop);

// "S12 first: before all that it does not need itself", and what letting go does.
struct DropWords {
    std::string place;
    std::string what_then;
};
DropWords say_drop(const DraggedStep& dragged, Drop drop, const Words& words);

}  // namespace kw::draw
