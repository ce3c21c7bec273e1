#pragma once
#include "window/screen.h"

namespace kw::window {

// What the keyboard asks for in this frame, outside of fields and the keypad.
void take_keys(Screen& screen);

}  // namespace kw::window
