#include "window/press.h"

#include <algorithm>

#include "window/widgets.h"

namespace kw::window {

Press press_area(Ui& ui, std::string_view id, ImVec2 size, bool enabled) {
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    Press press;
    press.id = window->GetID(id.data(), id.data() + id.size());
    const ImVec2 corner = window->DC.CursorPos;
    press.box = ImRect(corner, {corner.x + size.x, corner.y + size.y});
    ImGui::ItemSize(size, 0);
    press.shown = ImGui::ItemAdd(press.box, press.id, nullptr, enabled ? 0 : ImGuiItemFlags_Disabled);
    if (press.shown) take_room(ui, press.box.Min, press.box.Max);
    if (press.shown && enabled)
        press.pressed = ImGui::ButtonBehavior(press.box, press.id, &press.hovered, &press.held);
    if (press.pressed) ui.pacer.request(Pacer::settle_frames);
    return press;
}

double held_s(ImGuiID id) {
    const ImGuiContext& g = *ImGui::GetCurrentContext();
    if (g.ActiveId != id) return 0;
    if (g.ActiveIdSource != ImGuiInputSource_Mouse) return static_cast<double>(g.ActiveIdTimer);
    return g.IO.MouseDown[0] ? static_cast<double>(g.IO.MouseDownDuration[0]) : 0;
}

void focus_ring(Ui& ui, const Press& press) {
    const ImGuiContext& g = *ImGui::GetCurrentContext();
    if (g.NavId != press.id || g.NavDisableHighlight) return;
    const float out = ui.px(3);
    ImGui::GetWindowDrawList()->AddRect({press.box.Min.x - out, press.box.Min.y - out},
                                        {press.box.Max.x + out, press.box.Max.y + out},
                                        colour(ui.colours().changed), ui.px(size::radius + 3), 0, ui.px(3));
}

std::string_view shown_label(std::string_view label) {
    return label.substr(0, std::min(label.find("##"), label.size()));
}

float width_or(float asked, float natural) {
    if (asked < 0) return std::max(1.0f, ImGui::GetContentRegionAvail().x);
    return asked > 0 ? asked : natural;
}

LoggedWidget pressable(const char* kind, std::string_view label, double text_px, draw::Rgb ink,
                       draw::Rgb ground) {
    LoggedWidget widget;
    widget.kind = kind;
    widget.label = label;
    widget.pressable = true;
    widget.text_px = text_px;
    widget.contrast = draw::contrast(ink, ground);
    return widget;
}

}  // namespace kw::window
