#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

#include "window/field_parts.h"
#include "window/keypad.h"

namespace kw::window {
namespace {

constexpr double natural_width_px = 260;

float width_of(Ui& ui, const FieldOptions& options) {
    const float room = content_width(ui);
    return options.width > 0   ? std::min(options.width, room)
           : options.width < 0 ? room
                               : std::min(ui.px(natural_width_px), room);
}

bool text_entry(Ui& ui, const char* label, std::string& text, const ImRect& box, float unit_room,
                const FieldOptions& options) {
    const Font font = ui.font(TypeSize::body);
    const float pad = ui.px(14);
    ui.fonts.need(text);
    ImGui::SetCursorScreenPos(box.Min);
    ImGui::PushFont(font.font);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding,
                        ImVec2(pad, std::floor((box.GetHeight() - ImGui::GetFontSize()) / 2)));
    ImGui::SetNextItemWidth(box.GetWidth() - unit_room);
    const std::string id = "##entry" + std::string(label);
    ImGui::PushStyleColor(ImGuiCol_Text, ImGui::ColorConvertU32ToFloat4(colour(ui.colours().ink)));
    ImGui::InputTextWithHint(id.c_str(), std::string(options.hint).c_str(), &text,
                             ImGuiInputTextFlags_AutoSelectAll);
    ImGui::PopStyleColor();
    ImGui::PopStyleVar();
    ImGui::PopFont();
    return ImGui::IsItemDeactivatedAfterEdit();
}

}  // namespace

void field_caption(Ui& ui, std::string_view label, const FieldOptions& options) {
    if (label.empty()) return;
    const Font font = ui.font(TypeSize::small, options.error.empty() ? Face::text : Face::strong);
    const draw::Rgb rgb = options.error.empty() ? ui.colours().soft_ink : ui.colours().wrong;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float room = width_of(ui, options);
    const auto lines = wrapped(ui, label, font, room);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        draw_text(ui, canvas(), {at.x, at.y + static_cast<float>(i) * font.line}, lines[i], font,
                  colour(rgb));
    }
    ImGui::Dummy(
        {room, static_cast<float>(lines.size()) * font.line - ImGui::GetStyle().ItemSpacing.y + ui.px(4)});
}

void field_frame(Ui& ui, const ImRect& box, bool focused, const FieldOptions& options) {
    const draw::Palette& p = ui.colours();
    const bool wrong = !options.error.empty();
    const draw::Rgb edge = wrong ? p.wrong : focused ? p.accent : p.edge;
    fill_sheet(ui, canvas(), box.Min, box.Max, wrong ? p.wrong_tint : p.well, ui.px(size::radius));
    canvas().AddRect(box.Min, box.Max, colour(edge), ui.px(size::radius), 0,
                     ui.px(wrong || focused ? 3 : 1.5));
}

float field_unit(Ui& ui, const ImRect& box, std::string_view unit) {
    if (unit.empty()) return 0;
    const std::string words = ui.shown("unit.", unit);
    const Font font = ui.font(TypeSize::body);
    const float width = text_width(ui, words, font) + ui.px(14);
    draw_text(ui, canvas(), {box.Max.x - width, std::round((box.Min.y + box.Max.y - font.line) / 2)}, words,
              font, colour(ui.colours().soft_ink));
    return width + ui.px(4);
}

void field_reason(Ui& ui, float width, const FieldOptions& options) {
    if (options.error.empty()) return;
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() - ImGui::GetStyle().ItemSpacing.y + ui.px(4));
    say(ui, std::string(sign(Tone::wrong)) + " " + std::string(options.error), TypeSize::small, Tone::wrong,
        width);
}

void log_field(Ui& ui, const char* kind, std::string_view label, std::string_view value, const ImRect& box,
               bool cut_off) {
    LoggedWidget logged =
        pressable(kind, shown_label(label), em_px(TypeSize::body), ui.colours().ink, ui.colours().well);
    logged.value = value;
    logged.hint_cut_off = cut_off;
    log_widget(ui, logged, box.Min, box.Max);
}

bool text_field(Ui& ui, const char* label, std::string& text, const FieldOptions& options) {
    ImGui::BeginGroup();
    field_caption(ui, shown_label(label), options);
    const float width = width_of(ui, options);
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const ImRect box(corner, {corner.x + width, corner.y + ui.px(size::target)});
    const ImGuiID id = ImGui::GetID(("##entry" + std::string(label)).c_str());
    take_room(ui, box.Min, box.Max);
    field_frame(ui, box, ImGui::GetActiveID() == id || ImGui::GetFocusID() == id, options);
    const float unit_room = field_unit(ui, box, options.unit);
    const bool done = text_entry(ui, label, text, box, unit_room, options);
    log_field(ui, "text field", label, text, box);
    field_reason(ui, width, options);
    ImGui::EndGroup();
    return done;
}

namespace {

// What stands in an empty field: smaller where it has no room, and on two lines where it has none even so. Whether it is cut off.
bool draw_hint(Ui& ui, const ImRect& box, std::string_view hint, float room) {
    Font font = ui.font(TypeSize::body);
    std::vector<std::string> lines{std::string(hint)};
    if (text_width(ui, hint, font) > room) {
        font = ui.font(TypeSize::small);
        lines = wrapped(ui, hint, font, room);
    }
    const float high = static_cast<float>(lines.size()) * font.line;
    float y = std::round((box.Min.y + box.Max.y - high) / 2);
    bool cut_off = high > box.Max.y - box.Min.y;
    for (const std::string& line : lines) {
        const Fitted fitted = shortened(ui, line, font, room);
        draw_text(ui, canvas(), {box.Min.x + ui.px(14), y}, fitted.text, font, colour(ui.colours().soft_ink));
        cut_off |= fitted.cut_off;
        y += font.line;
    }
    return cut_off;
}

}  // namespace

bool length_field(Ui& ui, const char* label, std::string& text, const FieldOptions& options) {
    ImGui::BeginGroup();
    ImGui::PushID(label);
    field_caption(ui, shown_label(label), options);
    const float width = width_of(ui, options);
    const Press press = press_area(ui, "length", {width, ui.px(size::target)});
    field_frame(ui, press.box, press.held, options);
    const bool names_unit = !entry_of(text.empty() ? std::string(options.hint) : text, "").unit.empty();
    const float unit_room = field_unit(ui, press.box, names_unit ? "" : options.unit),
                room = width - ui.px(28) - unit_room;
    bool cut_off = false;
    if (text.empty()) {
        cut_off = draw_hint(ui, press.box, options.hint, room);
    } else {
        const Font font = ui.font(TypeSize::body, Face::strong);
        const ImVec2 at{press.box.Min.x + ui.px(14),
                        std::round((press.box.Min.y + press.box.Max.y - font.line) / 2)};
        draw_text(ui, canvas(), at, shortened(ui, text, font, room).text, font, colour(ui.colours().ink));
    }
    focus_ring(ui, press);
    // A value can be seen whole on its keypad; what stands in an empty field, nowhere else.
    log_field(ui, "length field", label, text, press.box, cut_off);
    if (press.pressed) open_keypad(ui, text, options.unit);
    const bool done = keypad(ui, shown_label(label), text, options.recent);
    field_reason(ui, width, options);
    ImGui::PopID();
    ImGui::EndGroup();
    return done;
}

}  // namespace kw::window
