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
    bool is_done = false;               // all that goes through it has
    bool is_left_by_test = false;  // that is another cut of the same joint, tested and locked with this one
};

// Nothing where the plan has no setups.
std::optional<Stand> stand_at(Screen& screen);
// What is said of the setting, reckoned when the work or the step is another.
const SetupSaid& said_at(Screen& screen, const Stand& stand);
// Of the number that is set by the guide: "Fence to near side".
std::string fence_caption(Screen& screen, const Stand& stand);

void draw_changes(Screen& screen, const Stand& stand);

// What goes through, in one line: where the list of it is farther down, or there is no room for a large count.
void say_through(Screen& screen, const Stand& stand);
// The ends to run, with the way to say that a part is spoilt, and the way back.
void draw_parts(Screen& screen, const Stand& stand);
// Whether what is ticked here now ran before the setup was torn down.
bool is_told_late(const Screen& screen, const Stand& stand);
// What "Hold to undo" takes back: "the lock at step 12"; empty where there is nothing.
std::string last_words(const Words& words, const Work& work);
void draw_take_back(Screen& screen);

// The numbers to set, large; one of them is made to fill the screen by a tap.
void draw_numbers(Screen& screen, const Stand& stand, bool in_a_row);
// The section at the machine and, where there is room, the boards as they lie: this high altogether, device pixels.
void draw_setup_picture(Screen& screen, const Stand& stand, float height);
// The number that fills the screen; false where none does.
bool draw_filling(Screen& screen, const Stand& stand);

}  // namespace kw::window
