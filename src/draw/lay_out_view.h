#pragma once
// One board or sheet from above, with what is cut from it: numbers stand for parts, in the order in which the layout lists them.

#include "draw/drawing.h"
#include "job/lay_out.h"

namespace kw::draw {

Drawing lay_out_view(const Job& job, const LaidStock& laid, const LaidPiece& piece);

}  // namespace kw::draw
