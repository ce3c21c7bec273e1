#include "window/ui.h"

#include <algorithm>
#include <cmath>

#include "window/gl_api.h"

namespace kw::window {
namespace {

constexpr double toast_s = 4;

void clear_area(const ImDrawList*, const ImDrawCmd* command) {
    const auto& area = *static_cast<const OpaqueArea*>(command->UserCallbackData);
    const ImGuiIO& io = ImGui::GetIO();
    const auto snap = [](float value, float scale) { return static_cast<int>(std::lround(value * scale)); };
    const float sx = io.DisplayFramebufferScale.x, sy = io.DisplayFramebufferScale.y;
    const int left = snap(std::max(area.box.x, command->ClipRect.x), sx);
    const int top = snap(std::max(area.box.y, command->ClipRect.y), sy);
    const int right = snap(std::min(area.box.z, command->ClipRect.z), sx);
    const int bottom = snap(std::min(area.box.w, command->ClipRect.w), sy);
    if (right <= left || bottom <= top) return;
    const int height = snap(io.DisplaySize.y, sy);
    const auto part = [](std::uint8_t value) { return static_cast<float>(value) / 255.0f; };
    glScissor(left, height - bottom, right - left, bottom - top);
    glClearColor(part(area.rgb.red), part(area.rgb.green), part(area.rgb.blue), 1);
    glClear(GL_COLOR_BUFFER_BIT);
}

}  // namespace

void Ui::toast(std::string text, Tone tone) {
    toasts.push_back({std::move(text), tone, now_s + toast_s});
    if (toasts.size() > 3) toasts.erase(toasts.begin());
    pacer.wake_at(now_s + toast_s);
    pacer.request(Pacer::settle_frames);
}

void add_in_sight(std::vector<ImVec4>& areas, const ImDrawList& list, ImVec2 min, ImVec2 max) {
    const ImVec2 clip_min = list.GetClipRectMin(), clip_max = list.GetClipRectMax();
    const ImVec4 box{std::max(min.x, clip_min.x), std::max(min.y, clip_min.y), std::min(max.x, clip_max.x),
                     std::min(max.y, clip_max.y)};
    if (box.z > box.x && box.w > box.y) areas.push_back(box);
}

void take_room(Ui& ui, ImVec2 min, ImVec2 max) {
    add_in_sight(ui.taken, *ImGui::GetWindowDrawList(), min, max);
}

void fill_opaque(Ui& ui, ImDrawList& list, ImVec2 min, ImVec2 max, draw::Rgb rgb) {
    ui.opaque_areas.push_back({{min.x, min.y, max.x, max.y}, rgb});
    list.AddCallback(clear_area, &ui.opaque_areas.back());
}

void fill_sheet(Ui& ui, ImDrawList& list, ImVec2 min, ImVec2 max, draw::Rgb rgb, float radius,
                ImDrawFlags round) {
    const float r = std::ceil(std::min({radius, (max.x - min.x) / 2, (max.y - min.y) / 2}));
    const auto is_round = [&](ImDrawFlags corner) { return (round & corner) != 0; };
    const ImDrawFlags clockwise[] = {ImDrawFlags_RoundCornersTopLeft, ImDrawFlags_RoundCornersTopRight,
                                     ImDrawFlags_RoundCornersBottomRight, ImDrawFlags_RoundCornersBottomLeft};
    const auto [top_left, top_right, bottom_right, bottom_left] = clockwise;
    const float left = is_round(top_left | bottom_left) ? r : 0,
                right = is_round(top_right | bottom_right) ? r : 0;
    fill_opaque(ui, list, {min.x + left, min.y}, {max.x - right, max.y}, rgb);
    if (left > 0)
        fill_opaque(ui, list, {min.x, min.y + (is_round(top_left) ? r : 0)},
                    {min.x + r, max.y - (is_round(bottom_left) ? r : 0)}, rgb);
    if (right > 0)
        fill_opaque(ui, list, {max.x - r, min.y + (is_round(top_right) ? r : 0)},
                    {max.x, max.y - (is_round(bottom_right) ? r : 0)}, rgb);
    const float half_turn = 3.14159265f;
    const ImVec2 centres[] = {
        {min.x + r, min.y + r}, {max.x - r, min.y + r}, {max.x - r, max.y - r}, {min.x + r, max.y - r}};
    for (int i = 0; i < 4; ++i) {
        if (!is_round(clockwise[i])) continue;
        const float from = half_turn + static_cast<float>(i) * half_turn / 2;
        list.PathLineTo(centres[i]);
        list.PathArcTo(centres[i], r, from, from + half_turn / 2);
        list.PathFillConvex(colour(rgb));
    }
}

void log_widget(Ui& ui, LoggedWidget widget, ImVec2 min, ImVec2 max) {
    if (!ui.log) return;
    const auto d = [](float value) { return static_cast<double>(value); };
    widget.box = {d(min.x), d(min.y), d(max.x), d(max.y)};
    const ImVec2 clip_min = ImGui::GetWindowDrawList()->GetClipRectMin(),
                 clip_max = ImGui::GetWindowDrawList()->GetClipRectMax();
    widget.seen = {d(std::max(min.x, clip_min.x)), d(std::max(min.y, clip_min.y)),
                   d(std::min(max.x, clip_max.x)), d(std::min(max.y, clip_max.y))};
    if (widget.seen.right <= widget.seen.left || widget.seen.bottom <= widget.seen.top) widget.seen = {};
    ui.log->widgets.push_back(std::move(widget));
}

}  // namespace kw::window
