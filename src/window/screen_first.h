#pragma once
#include "window/screen.h"

namespace kw::window {

// What is measured, as a sketch: the case seen from in front or from the side, or an edge of a board.
enum class Sketch { rule, width, height, depth, slides, stock, bottom };
void draw_sketch(Ui& ui, Sketch sketch, ImVec2 size);

// The questions of the first start, while `first_question` is not negative.
void draw_first(Screen& screen);

}  // namespace kw::window
