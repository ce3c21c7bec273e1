#pragma once
// The maker's triangle: the front is laid before the back, and the left side beside the right one, inside faces touching and top edges
// up, and over each pair one triangle is pencilled that points to the rear. What of it stands on a board tells which edge is up, which
// of the two it is, and which way round it goes (common practice, no source).

#include <vector>

#include "draw/drawing.h"
#include "drawer/parts.h"
#include "length/locale.h"

namespace kw::draw {

// What of the triangle stands on this part's top edge, seen from above as the part stands in the drawer, which faces the maker: x from
// its left to its right and y from its front to its rear, each from 0 to 1. Nothing of a part that has no part in it.
std::vector<Point> triangle_on(Role role);

// Both pairs, from above.
Drawing maker_triangles(const Locale& locale);

}  // namespace kw::draw
