#pragma once
// What tape and feelers read: of an opening before, and of a drawer once it is put together.

#include "window/screen.h"

namespace kw::window {

// A card for the places of the drawer's opening, opened by a tap, with what they say of each other.
void draw_survey(Screen& screen, std::size_t drawer);

// The page of the drawers in the clamps and in their places.
void draw_assembly(Screen& screen);

}  // namespace kw::window
