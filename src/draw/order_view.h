#pragma once
// The order of work as a picture: a lane for each machine, time from left to right, in as many rows as the room takes.
//
// A step is a block as wide as it takes time. Its head names it; its foot shows what the time goes into: setting the cutter, the
// shims, the fence, the height, a spacer, a test cut, the cuts. Dots lead the maker from machine to machine. Above the blocks
// stands which cutter is on; a wedge in a block points to the end of time at which it is wanted.

#include "draw/layout.h"
#include "job/work.h"

namespace kw::draw {

// Words keep their size, so the picture is made for its room. Here 1 mm of the drawing is 1 paper pixel.
struct OrderRoom {
    double width_px = 800;
    double height_px = 500;  // what is wished for: more lanes than it takes make the picture higher
};

// Where a step can be touched: its lane's height, as wide as its block.
struct StepPlace {
    std::string step;
    Box box;
};

// A row of time, with the lanes of all machines: steps [first, end) of the places.
struct OrderRow {
    std::size_t first = 0;
    std::size_t end = 0;
    Box box;  // from where its time begins to the edge of the picture
};

struct OrderView {
    Drawing drawing;                // its frame has the corner (0, 0) at the upper left
    std::vector<StepPlace> places;  // in the order of the work
    std::vector<OrderRow> rows;
};

// `next`: the step that is to be done next, as in Rest; it gets a bold edge.
OrderView order_view(const Work& work, const std::string& next, const OrderRoom& room,
                     const TextMeasure& measure);

// The step at this point of the drawing, or the nearest in its lane no farther away than `reach_mm`; empty where there is none.
std::string step_at(const OrderView& view, Point at, double reach_mm);

}  // namespace kw::draw
