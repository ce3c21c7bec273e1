#pragma once
// What is done to the stock for a picture of a screen.

#include "window/shots.h"

namespace kw::window {

// In which its plywood and its boards can be had.
void say_sizes(Theatre& stage);
// At once, where the window would do it aside.
void lay_out_parts(Theatre& stage);
// Of the first stock that is laid out.
void tell_broken_down(Theatre& stage);

}  // namespace kw::window
