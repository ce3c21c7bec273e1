#pragma once
// The keypad for lengths: everything by touch, and everything by keyboard (digits, point, space for the fraction, slash,
// plus and minus for sums, Up and Down for a step, i and m for the unit, Backspace, Enter, Escape).

#include <span>
#include <string>
#include <string_view>

#include "window/ui.h"

namespace kw::window {

// Both within the same ID of the field that it serves.
void open_keypad(Ui& ui, std::string_view text, std::string_view unit);
// True once, when a value was confirmed into `text`.
bool keypad(Ui& ui, std::string_view title, std::string& text, std::span<const std::string> recent);

}  // namespace kw::window
