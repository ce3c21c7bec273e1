#pragma once
// Where a maker stands at the saw: one step of the order, and the machine as it was set before it.

#include "window/screen.h"

namespace kw::window {

struct Stand {
    const Work& work;
    std::string step;
    std::size_t index = 0;
    const Setup& setup;
    const Setup* before = nullptr;
    const Setup* after = nullptr;
    const Setup* at_machine = nullptr;  // what its machine was set for before
};

// The numbers to set, large; one of them is made to fill the screen by a tap.
void draw_numbers(Screen& screen, const Stand& stand, bool in_a_row);
// The section at the machine and, where there is room, the boards as they lie: this high altogether, device pixels.
void draw_setup_picture(Screen& screen, const Stand& stand, float height);
// The number that fills the screen; false where none does.
bool draw_filling(Screen& screen, const Stand& stand);

}  // namespace kw::window
