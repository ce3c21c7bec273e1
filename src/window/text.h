#pragma once
// Words on the screen, with fractions set properly ("10 1/16" as a maker writes it). Sizes in device pixels.

#include <imgui.h>

#include <string>
#include <string_view>
#include <vector>

#include "window/ui.h"

namespace kw::window {

float text_width(Ui& ui, std::string_view text, const Font& font);
// at: upper left corner of the line.
void draw_text(Ui& ui, ImDrawList& list, ImVec2 at, std::string_view text, const Font& font, ImU32 ink);

// Lines no wider than width; a word that is wider than that stands alone and sticks out. A length, its unit and its mark are not
// parted.
std::vector<std::string> wrapped(Ui& ui, std::string_view text, const Font& font, float width);

// The text, or as much of it as fits with an ellipsis at the end.
struct Fitted {
    std::string text;
    bool cut_off = false;
};
Fitted shortened(Ui& ui, std::string_view text, const Font& font, float width);

}  // namespace kw::window
