#pragma once
// What a finger does for a picture of a screen.

#include <string>

#include "window/shots.h"

namespace kw::window {

// Presses what bears this label, as a finger would.
void press(Theatre& stage, const std::string& label);
// Takes up the last block of the order's picture and holds it at the beginning of its lane.
void drag_last_to_beginning(Theatre& stage);
// Gives a drag up, and lets go.
void let_go_nowhere(Theatre& stage);

}  // namespace kw::window
