// Distances between the parts of an assembled drawer, read off one line.
#pragma once

#include "checker/solid.h"

namespace checker {

// From where the wood of `first` ends on the line to where that of `second` begins; negative where they overlap. NaN where the
// line misses one of them.
double gap_mm(const Solid& first, const Solid& second, int axis, const Point& line);

// The play, in all, of `tongue` between the walls of a slot in `slotted`. NaN where there is no tongue or no wall on both sides.
double play_mm(const Solid& slotted, const Solid& tongue, int axis, const Point& line);

// The least and the greatest coordinate of the wood on the line; NaN where there is none.
double first_wood_mm(const Solid& solid, int axis, const Point& line);
double last_wood_mm(const Solid& solid, int axis, const Point& line);

}  // namespace checker
