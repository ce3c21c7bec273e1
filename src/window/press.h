#pragma once
// What all pressable widgets share: a place in the flow, the press itself, the focus ring.

#include <imgui.h>
#include <imgui_internal.h>

#include <string>
#include <string_view>

#include "window/ui.h"

namespace kw::window {

struct Press {
    ImRect box;
    ImGuiID id = 0;
    bool shown = false;  // not scrolled out of sight
    bool pressed = false;
    bool held = false;
    bool hovered = false;
};

// Takes room at the cursor and reads the press.
Press press_area(Ui& ui, std::string_view id, ImVec2 size, bool enabled = true);
// How long it has been held down by now, by finger or by key; 0 where it is not.
double held_s(ImGuiID id);
// Ring round what the keyboard would press.
void focus_ring(Ui& ui, const Press& press);

std::string_view shown_label(std::string_view label);  // without "##..."
float width_or(float asked, float natural);            // 0: natural; negative: all that is left

// What a test wants to know of it.
LoggedWidget pressable(const char* kind, std::string_view label, double text_px, draw::Rgb ink,
                       draw::Rgb ground);

}  // namespace kw::window
