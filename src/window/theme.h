#pragma once
// How the window looks beyond what pictures share with it (draw/palette.h): sizes in paper pixels, which the pixel ratio
// turns into device pixels.

#include <imgui.h>

#include <cstdint>

#include "draw/palette.h"

namespace kw::window {

enum class TypeSize { small, body, heading, number, huge };

// What a text or a mark says, besides its words. Each tone has a sign of its own, so that none hangs on colour.
enum class Tone { plain, soft, accent, changed, good, caution, wrong };

namespace size {
inline constexpr double target = 52;  // height of what a finger presses; never under 44
inline constexpr double least_target = 44;
inline constexpr double drag_starts = 9;  // further than a press with a shaking finger
inline constexpr double pad = 16;         // within buttons and cards
inline constexpr double gap = 12;         // between things
inline constexpr double radius = 7;
inline constexpr double edge = 2;
inline constexpr double page = 20;        // round the whole page
inline constexpr double digit_em = 0.70;  // digits of a fraction in running text
}  // namespace size

double em_px(TypeSize size);
draw::Rgb ink(draw::Theme theme, Tone tone);
draw::Rgb tint(draw::Theme theme, Tone tone);
const char* sign(Tone tone);  // empty for plain and soft

ImU32 colour(draw::Rgb rgb, float alpha = 1);
// Of full light, as the graphics card takes it.
inline float part(std::uint8_t value) { return static_cast<float>(value) / 255.0f; }

// What the widgets of the page are painted on.
inline ImDrawList& canvas() { return *ImGui::GetWindowDrawList(); }

// The toolkit's own style: spacing, and colours of the few of its parts that we let it draw (text entry, scroll bars).
void apply_style(ImGuiStyle& style, draw::Theme theme, double pixel_ratio);

}  // namespace kw::window
