#pragma once
// A whole picture turned by a right angle, with its hatches, its dimensions and its words' anchors.

#include "draw/drawing.h"

namespace kw::draw {

// Counter-clockwise about the origin: (x, y) lands on (-y, x).
Drawing turned_left(Drawing drawing);

// Everything moved by so much.
Drawing moved(Drawing drawing, double x_mm, double y_mm);

}  // namespace kw::draw
