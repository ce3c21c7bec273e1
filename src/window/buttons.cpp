#include <algorithm>
#include <cmath>

#include "window/press.h"
#include "window/text.h"
#include "window/widgets.h"

namespace kw::window {
namespace {

struct ButtonLook {
    draw::Rgb ground, ink, edge, lip;
    bool filled = true;
    bool edged = true;
};

ButtonLook look_of(const Ui& ui, Rank rank, bool enabled, bool held) {
    const draw::Palette& p = ui.colours();
    if (!enabled)
        return {p.paper, p.soft_ink, p.hairline, p.hairline, rank != Rank::quiet, rank != Rank::quiet};
    switch (rank) {
        case Rank::primary:
            return {
                held ? p.accent_press : p.accent, p.on_accent, p.accent_press, p.accent_press, true, false};
        case Rank::secondary: return {held ? p.accent_tint : p.card, p.ink, p.edge, p.edge, true, true};
        case Rank::quiet: break;
    }
    return {held ? p.accent_tint : p.card, p.accent, p.edge, p.edge, held, false};
}

// Words of a button, broken into at most two lines if they must.
struct LabelLines {
    std::vector<std::string> lines;
    bool cut_off = false;
    float width = 0;
};

LabelLines words_within(Ui& ui, std::string_view label, const Font& font, float width) {
    LabelLines words;
    words.lines = wrapped(ui, label, font, width);
    if (words.lines.size() > 2) {
        for (std::size_t i = 2; i < words.lines.size(); ++i) words.lines[1] += " " + words.lines[i];
        words.lines.resize(2);
    }
    for (std::string& line : words.lines) {
        Fitted fitted = shortened(ui, line, font, width);
        words.cut_off = words.cut_off || fitted.cut_off;
        line = std::move(fitted.text);
        words.width = std::max(words.width, text_width(ui, line, font));
    }
    return words;
}

void paint_ground(Ui& ui, const ImRect& box, const ButtonLook& look, bool held) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float r = ui.px(size::radius), lip = ui.px(3);
    if (look.filled) {
        // A lip at the foot says that it can be pushed; held down, it is gone.
        if (!held) fill_sheet(ui, list, box.Min, box.Max, look.lip, r);
        fill_sheet(ui, list, box.Min, {box.Max.x, box.Max.y - (held ? 0 : lip)}, look.ground, r);
    }
    if (look.edged) list.AddRect(box.Min, box.Max, colour(look.edge), r, 0, ui.px(1.5));
}

struct Faces {
    Font label, detail;
};

void paint_words(Ui& ui, const ImRect& box, const LabelLines& words, const LabelLines& detail,
                 const Faces& faces, draw::Rgb ink) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float height = static_cast<float>(words.lines.size()) * faces.label.line +
                         static_cast<float>(detail.lines.size()) * faces.detail.line;
    float y = std::round((box.Min.y + box.Max.y - height) / 2);
    const auto put = [&](const std::vector<std::string>& lines, const Font& font) {
        for (const std::string& line : lines) {
            draw_text(ui, list, {(box.Min.x + box.Max.x - text_width(ui, line, font)) / 2, y}, line, font,
                      colour(ink));
            y += font.line;
        }
    };
    put(words.lines, faces.label);
    put(detail.lines, faces.detail);
}

// fill: how much of a hold is done, 0 to 1.
Press drawn_button(Ui& ui, const char* label, std::string_view words_shown, Rank rank,
                   const ButtonOptions& options, float fill = 0) {
    const Faces faces{ui.font(TypeSize::body, Face::strong), ui.font(TypeSize::small)};
    const float pad = ui.px(size::pad);
    const float natural =
        std::max(text_width(ui, words_shown, faces.label), text_width(ui, options.detail, faces.detail));
    const float width = width_or(options.width, std::ceil(std::max(natural + 2 * pad, ui.px(size::target))));
    const float room = std::max(width - 2 * std::min(pad, width * 0.12f), 1.0f) + 1;
    const LabelLines words = words_within(ui, words_shown, faces.label, room);
    const LabelLines detail =
        options.detail.empty() ? LabelLines{} : words_within(ui, options.detail, faces.detail, room);
    const float text_height = static_cast<float>(words.lines.size()) * faces.label.line +
                              static_cast<float>(detail.lines.size()) * faces.detail.line;
    const float height =
        std::max(ui.px(std::max(options.height_px, size::least_target)), text_height + ui.px(14));
    Press press = press_area(ui, label, {width, height}, options.enabled);
    const ButtonLook look = look_of(ui, rank, options.enabled, press.held && press.hovered);
    paint_ground(ui, press.box, look, press.held && press.hovered);
    if (fill > 0) {
        const ImVec2 end{press.box.Min.x + fill * width, press.box.Max.y};
        ImGui::GetWindowDrawList()->AddRectFilled(press.box.Min, end, colour(ui.colours().changed, 0.35f),
                                                  ui.px(size::radius));
    }
    paint_words(ui, press.box, words, detail, faces, look.ink);
    focus_ring(ui, press);
    LoggedWidget logged = pressable("button", words_shown, em_px(TypeSize::body), look.ink,
                                    look.filled ? look.ground : ui.colours().paper);
    logged.enabled = options.enabled;
    logged.value = options.detail;
    logged.cut_off = words.cut_off || detail.cut_off;
    log_widget(ui, logged, press.box.Min, press.box.Max);
    return press;
}

}  // namespace

bool button(Ui& ui, const char* label, Rank rank, const ButtonOptions& options) {
    return drawn_button(ui, label, shown_label(label), rank, options).pressed;
}

bool confirm_button(Ui& ui, const char* label, const char* second_label, const ButtonOptions& options) {
    constexpr double patience_s = 3;
    const ImGuiID id = ImGui::GetID(label);
    const bool armed = ui.armed == id && ui.now_s < ui.armed_until_s;
    const Press press = drawn_button(ui, label, shown_label(armed ? second_label : label),
                                     armed ? Rank::primary : Rank::secondary, options);
    if (!press.pressed) return false;
    ui.armed = armed ? 0 : id;
    ui.armed_until_s = ui.now_s + patience_s;
    ui.pacer.wake_at(ui.armed_until_s);
    return armed;
}

bool hold_button(Ui& ui, const char* label, const ButtonOptions& options, double hold_s) {
    bool tapped = false;
    return hold_button(ui, label, options, tapped, hold_s);
}

bool hold_button(Ui& ui, const char* label, const ButtonOptions& options, bool& tapped, double hold_s) {
    const ImGuiID id = ImGui::GetID(label);
    const double held = held_s(id);
    const Press press = drawn_button(ui, label, shown_label(label), Rank::secondary, options,
                                     static_cast<float>(std::min(held / hold_s, 1.0)));
    if (ImGui::GetCurrentContext()->ActiveId == id) ui.animate();
    tapped = press.pressed && held < hold_s;
    if (!press.shown || held < hold_s) return false;
    ImGui::ClearActiveID();
    return true;
}

}  // namespace kw::window
