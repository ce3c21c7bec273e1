#pragma once
// A drawer's box by what its parts are, and not by what they were to be. Private to this folder.

#include "drawer/squareness.h"
#include "job/work.h"

namespace kw {

// Outside, of one copy: where a part or its joint was cut, by the size and the settings that it was cut with, also where it was kept though
// these are others now; else as planned. A front or back is as long as it was cut, less what enters both sides, and with both sides' thickness.
// What the sides stand over behind a back that is set in from their ends is taken to go on straight at its width.
BoxSides box_as_made(const Work& work, const DrawerDesign& drawer, int copy);

// Whether no side of both differs by as much as this.
bool is_near(const BoxSides& a, const BoxSides& b, Length by);

}  // namespace kw
