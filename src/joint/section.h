#pragma once
// Cross sections of boards with cuts in them, as polygons with exact corners. Polygon booleans are done by
// a library, so that clearance, gap and overlap are measured on the cut wood and not taken from the formula that
// planned the cuts: a wrong formula shows.
//
// Frame of a section: x runs along the board from its reference end or edge, y runs into the board from the
// face that lay down on the table (y = 0) to the other face (y = thickness).

#include <optional>
#include <utility>
#include <vector>

#include "length/length.h"

namespace kw {

// Just beside a face or an edge, where a line must not run along it.
inline constexpr Length hair = Length::from_ticks(1);

struct Point {
    Length x;
    Length y;
    bool operator==(const Point&) const = default;
};

struct Rect {
    Length left;
    Length bottom;
    Length right;
    Length top;
    bool operator==(const Rect&) const = default;
};

// Closed rings; even-odd filling. Outer rings and holes are told apart by the filling rule alone.
using Ring = std::vector<Point>;
using Region = std::vector<Ring>;

Region to_region(const Rect& rect);
Region subtract(const Region& from, const std::vector<Rect>& cuts);
Region subtract(const Region& from, const Region& removed);
Region intersect(const Region& a, const Region& b);
Region unite(const Region& a, const Region& b);
bool is_empty(const Region& region);
double area_mm2(const Region& region);

// The smallest upright rectangle around a region; nothing if it is empty.
std::optional<Rect> bounds(const Region& region);

// Point (x, y) of the region lands on (x + shift.x, y + shift.y).
Region moved(const Region& region, Point shift);

// Where the insert's section stands when it meets the receiver at a right angle: its own x (from its end) runs
// against the receiver's y, and its own y along the receiver's x. (u, v) lands on (origin.x + v, origin.y - u).
Region turned_to_meet(const Region& insert, Point origin);

// The stretches of solid wood along a line parallel to an axis, in increasing order.
using Span = std::pair<Length, Length>;
std::vector<Span> solid_along_x(const Region& region, Length y);
std::vector<Span> solid_along_y(const Region& region, Length x);

}  // namespace kw
