#include <algorithm>
#include <cmath>

#include "window/press.h"
#include "window/text.h"
#include "window/widgets.h"

namespace kw::window {
namespace {

float middle_y(const ImRect& box, const Font& font) {
    return std::round((box.Min.y + box.Max.y - font.line) / 2);
}

float centred_x(Ui& ui, const ImRect& box, std::string_view text, const Font& font) {
    return (box.Min.x + box.Max.x - text_width(ui, text, font)) / 2;
}

int rows_for(Ui& ui, std::span<const std::string> labels, const Font& font, float width) {
    float widest = 0;
    for (const std::string& label : labels) widest = std::max(widest, text_width(ui, label, font));
    const float each = widest + ui.px(2 * size::gap);
    const int across = std::clamp(static_cast<int>(width / each), 1, static_cast<int>(labels.size()));
    return (static_cast<int>(labels.size()) + across - 1) / across;
}

struct Segment {
    std::string_view label;
    bool chosen = false;
    ImDrawFlags corners = 0;
};

bool segment(Ui& ui, const Segment& s, int index, ImVec2 size) {
    const Font font = ui.font(TypeSize::body, s.chosen ? Face::strong : Face::text);
    const draw::Palette& p = ui.colours();
    ImGui::PushID(index);
    const Press press = press_area(ui, s.label, size);
    ImGui::PopID();
    const float r = ui.px(size::radius);
    const draw::Rgb ground = s.chosen ? p.accent : press.held ? p.accent_tint : p.card;
    const draw::Rgb ink = s.chosen ? p.on_accent : p.ink;
    fill_sheet(ui, canvas(), press.box.Min, press.box.Max, ground, r, s.corners);
    canvas().AddRect(press.box.Min, press.box.Max, colour(s.chosen ? p.accent : p.edge), r, s.corners,
                     ui.px(1.5));
    const Fitted words = shortened(ui, s.label, font, size.x - ui.px(8));
    draw_text(ui, canvas(), {centred_x(ui, press.box, words.text, font), middle_y(press.box, font)},
              words.text, font, colour(ink));
    focus_ring(ui, press);
    LoggedWidget logged = pressable("segment", s.label, em_px(TypeSize::body), ink, ground);
    logged.chosen = s.chosen;
    logged.cut_off = words.cut_off;
    log_widget(ui, logged, press.box.Min, press.box.Max);
    return press.pressed;
}

ImDrawFlags corners_of(int column, int columns, int row, int rows) {
    ImDrawFlags corners = 0;
    if (column == 0 && row == 0) corners |= ImDrawFlags_RoundCornersTopLeft;
    if (column == columns - 1 && row == 0) corners |= ImDrawFlags_RoundCornersTopRight;
    if (column == 0 && row == rows - 1) corners |= ImDrawFlags_RoundCornersBottomLeft;
    if (column == columns - 1 && row == rows - 1) corners |= ImDrawFlags_RoundCornersBottomRight;
    return corners ? corners : ImDrawFlags_RoundCornersNone;
}

// What rows of a list have in common: a place as wide as the region, words, detail under or beside them.
struct Row {
    Press press;
    float left = 0;   // where the words start
    float right = 0;  // where they must end
};

struct RowWords {
    std::string_view label;
    std::string_view detail;
    draw::Rgb ink;
    Face face = Face::text;
};

Row begin_row(Ui& ui, const char* label, std::string_view detail, double before_px, double after_px,
              bool enabled) {
    const float width = content_width(ui), pad = ui.px(size::gap);
    const Font font = ui.font(TypeSize::body), small = ui.font(TypeSize::small);
    const float room = width - ui.px(before_px + after_px) - 2 * pad;
    const auto lines = wrapped(ui, shown_label(label), font, room);
    float height = static_cast<float>(lines.size()) * font.line + ui.px(18);
    if (!detail.empty()) height += static_cast<float>(wrapped(ui, detail, small, room).size()) * small.line;
    Row row;
    row.press = press_area(ui, label, {width, std::max(height, ui.px(size::target))}, enabled);
    row.left = row.press.box.Min.x + pad + ui.px(before_px);
    row.right = row.press.box.Max.x - pad - ui.px(after_px);
    return row;
}

void row_words(Ui& ui, const Row& row, const RowWords& words) {
    const Font font = ui.font(TypeSize::body, words.face), small = ui.font(TypeSize::small);
    const float room = row.right - row.left;
    const auto lines = wrapped(ui, words.label, font, room);
    const auto more =
        words.detail.empty() ? std::vector<std::string>{} : wrapped(ui, words.detail, small, room);
    const ImRect& box = row.press.box;
    const float height =
        static_cast<float>(lines.size()) * font.line + static_cast<float>(more.size()) * small.line;
    float y = std::round((box.Min.y + box.Max.y - height) / 2);
    for (const std::string& line : lines) {
        draw_text(ui, canvas(), {row.left, y}, line, font, colour(words.ink));
        y += font.line;
    }
    for (const std::string& line : more) {
        draw_text(ui, canvas(), {row.left, y}, line, small, colour(ui.colours().soft_ink));
        y += small.line;
    }
}

void row_ground(Ui& ui, const Row& row, bool chosen) {
    const ImRect& box = row.press.box;
    const draw::Palette& p = ui.colours();
    if (chosen || (row.press.held && row.press.hovered)) {
        canvas().AddRectFilled(box.Min, box.Max, colour(p.accent_tint), ui.px(size::radius));
    }
    canvas().AddLine({box.Min.x, box.Max.y}, box.Max, colour(p.hairline), ui.px(1));
}

void log_row(Ui& ui, const char* kind, const Row& row, std::string_view label, std::string_view detail,
             draw::Rgb ink, bool chosen) {
    LoggedWidget logged = pressable(kind, shown_label(label), em_px(TypeSize::body), ink, ui.colours().card);
    logged.value = detail;
    logged.chosen = chosen;
    log_widget(ui, logged, row.press.box.Min, row.press.box.Max);
}

void tick_box(Ui& ui, const ImRect& row, bool ticked, bool enabled) {
    const draw::Palette& p = ui.colours();
    const float side = ui.px(32), x = row.Min.x + ui.px(size::gap),
                y = std::round((row.Min.y + row.Max.y - side) / 2);
    const ImVec2 min{x, y}, max{x + side, y + side};
    const float r = ui.px(5);
    if (ticked) canvas().AddRectFilled(min, max, colour(p.good), r);
    canvas().AddRect(min, max,
                     colour(ticked    ? p.good
                            : enabled ? p.edge
                                      : p.hairline),
                     r, 0, ui.px(size::edge));
    if (!ticked) return;
    const ImVec2 stroke[] = {{x + side * 0.22f, y + side * 0.52f},
                             {x + side * 0.43f, y + side * 0.72f},
                             {x + side * 0.79f, y + side * 0.30f}};
    canvas().AddPolyline(stroke, 3, colour(p.card), 0, ui.px(4));
}

void switch_mark(Ui& ui, const ImRect& row, bool on) {
    const draw::Palette& p = ui.colours();
    const float w = ui.px(60), h = ui.px(32), x = row.Max.x - ui.px(size::gap) - w,
                y = std::round((row.Min.y + row.Max.y - h) / 2);
    canvas().AddRectFilled({x, y}, {x + w, y + h}, colour(on ? p.accent : p.well), h / 2);
    canvas().AddRect({x, y}, {x + w, y + h}, colour(on ? p.accent : p.edge), h / 2, 0, ui.px(size::edge));
    canvas().AddCircleFilled({on ? x + w - h / 2 : x + h / 2, y + h / 2}, h / 2 - ui.px(5),
                             colour(on ? p.on_accent : p.edge));
}

}  // namespace

bool segments(Ui& ui, const char* id, std::span<const std::string> labels, int& chosen, float width) {
    if (labels.empty()) return false;
    const Font font = ui.font(TypeSize::body, Face::strong);
    float natural = 0;
    for (const std::string& label : labels)
        natural = std::max(natural, text_width(ui, label, font) + ui.px(2 * size::pad));
    const int count = static_cast<int>(labels.size());
    const float whole = std::min(width > 0   ? width
                                 : width < 0 ? content_width(ui)
                                             : natural * static_cast<float>(count),
                                 content_width(ui));
    const int rows = rows_for(ui, labels, font, whole), columns = (count + rows - 1) / rows;
    const int in_last = count - (rows - 1) * columns;
    bool changed = false;
    ImGui::PushID(id);
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, 0));
    for (int i = 0; i < count; ++i) {
        if (i % columns != 0) ImGui::SameLine(0, 0);
        const int row = i / columns,
                  across = row == rows - 1 ? in_last : columns;  // the last row fills the width too
        const Segment s{labels[static_cast<std::size_t>(i)], i == chosen,
                        corners_of(i % columns, across, row, rows)};
        if (segment(ui, s, i, {std::floor(whole / static_cast<float>(across)), ui.px(size::target)}) &&
            chosen != i) {
            chosen = i;
            changed = true;
        }
    }
    ImGui::PopStyleVar();
    ImGui::EndGroup();
    ImGui::PopID();
    return changed;
}

float chip_height(const Ui& ui) { return ui.px(size::least_target + 4); }

bool chip(Ui& ui, const char* label, bool chosen) {
    const Font font = ui.font(TypeSize::body, chosen ? Face::strong : Face::text);
    const draw::Palette& p = ui.colours();
    const std::string words = (chosen ? "\u2713 " : "") + std::string(shown_label(label));
    const float width = std::max(text_width(ui, words, font) + ui.px(2 * size::pad), ui.px(size::target));
    const Press press = press_area(ui, label, {width, chip_height(ui)});
    const float r = press.box.GetHeight() / 2;
    const draw::Rgb ground = chosen || press.held ? p.accent_tint : p.card, ink = chosen ? p.accent : p.ink;
    fill_sheet(ui, canvas(), press.box.Min, press.box.Max, ground, r);
    canvas().AddRect(press.box.Min, press.box.Max, colour(chosen ? p.accent : p.edge), r, 0,
                     ui.px(chosen ? 2.5 : 1.5));
    draw_text(ui, canvas(), {centred_x(ui, press.box, words, font), middle_y(press.box, font)}, words, font,
              colour(ink));
    focus_ring(ui, press);
    LoggedWidget logged = pressable("chip", shown_label(label), em_px(TypeSize::body), ink, ground);
    logged.chosen = chosen;
    log_widget(ui, logged, press.box.Min, press.box.Max);
    return press.pressed;
}

bool tick_row(Ui& ui, const char* label, bool& ticked, std::string_view detail, bool enabled) {
    const Row row = begin_row(ui, label, detail, 32 + size::gap, 0, enabled);
    const draw::Palette& p = ui.colours();
    const draw::Rgb ink = ticked || !enabled ? p.soft_ink : p.ink;
    row_ground(ui, row, false);
    tick_box(ui, row.press.box, ticked, enabled);
    row_words(ui, row, {shown_label(label), detail, ink});
    focus_ring(ui, row.press);
    log_row(ui, "tick", row, label, detail, ink, ticked);
    if (row.press.pressed) ticked = !ticked;
    return row.press.pressed;
}

Tick hold_tick_row(Ui& ui, const char* label, bool ticked, std::string_view detail, double hold_s) {
    const Row row = begin_row(ui, label, detail, 32 + size::gap, 0, true);
    const bool holding = ticked && ImGui::GetCurrentContext()->ActiveId == row.press.id;
    const double held = holding ? held_s(row.press.id) : 0;
    const draw::Palette& p = ui.colours();
    const draw::Rgb ink = ticked ? p.soft_ink : p.ink;
    row_ground(ui, row, false);
    if (holding) {
        const ImRect& box = row.press.box;
        const auto share = static_cast<float>(std::min(held / hold_s, 1.0));
        canvas().AddRectFilled(box.Min, {box.Min.x + share * box.GetWidth(), box.Max.y},
                               colour(p.changed, 0.35f), ui.px(size::radius));
        ui.animate();
    }
    tick_box(ui, row.press.box, ticked, true);
    row_words(ui, row, {shown_label(label), detail, ink});
    focus_ring(ui, row.press);
    log_row(ui, "tick", row, label, detail, ink, ticked);
    if (held >= hold_s) {
        ImGui::ClearActiveID();
        return Tick::taken_away;
    }
    if (!row.press.pressed) return Tick::none;
    return ticked ? Tick::only_tapped : Tick::set;
}

bool toggle_row(Ui& ui, const char* label, bool& on, std::string_view detail) {
    const Row row = begin_row(ui, label, detail, 0, 60 + size::gap, true);
    row_ground(ui, row, false);
    switch_mark(ui, row.press.box, on);
    row_words(ui, row, {shown_label(label), detail, ui.colours().ink});
    focus_ring(ui, row.press);
    log_row(ui, "toggle", row, label, detail, ui.colours().ink, on);
    if (row.press.pressed) on = !on;
    return row.press.pressed;
}

bool list_row(Ui& ui, const char* label, std::string_view detail, bool chosen, Tone tone) {
    const bool marked = *sign(tone) != '\0';
    const Row row = begin_row(ui, label, detail, marked ? 30 : 0, 24, true);
    const draw::Rgb ink_of_row = chosen ? ui.colours().accent : ui.colours().ink;
    row_ground(ui, row, chosen);
    const Font font = ui.font(TypeSize::body, chosen ? Face::strong : Face::text);
    const float y = middle_y(row.press.box, font);
    if (marked)
        draw_text(ui, canvas(), {row.left - ui.px(30), y}, sign(tone), font, colour(ink(ui.theme, tone)));
    const float x = row.press.box.Max.x - ui.px(size::gap + 12),
                mid = (row.press.box.Min.y + row.press.box.Max.y) / 2, h = ui.px(8);
    const ImVec2 chevron[] = {{x, mid - h}, {x + h, mid}, {x, mid + h}};
    canvas().AddPolyline(chevron, 3, colour(ui.colours().soft_ink), 0, ui.px(2.5));
    row_words(ui, row, {shown_label(label), detail, ink_of_row, chosen ? Face::strong : Face::text});
    focus_ring(ui, row.press);
    log_row(ui, "row", row, label, detail, ink_of_row, chosen);
    return row.press.pressed;
}

bool places(Ui& ui, std::span<const std::string> labels, int& current, const PlacesLook& look) {
    const Font strong = ui.font(TypeSize::body, Face::strong);
    const float width = look.width;
    const double height_px = look.height_px;
    const draw::Palette& p = ui.colours();
    const float even = width > 0 ? width / static_cast<float>(labels.size()) : 0;
    bool changed = false;
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const bool here = static_cast<int>(i) == current;
        if (i > 0) ImGui::SameLine(0, 0);
        const float w = std::max(even, text_width(ui, labels[i], strong) + ui.px(2 * look.pad_px));
        const Press press = press_area(ui, labels[i], {w, ui.px(height_px)});
        const ImRect& box = press.box;
        if (press.held && press.hovered)
            canvas().AddRectFilled(box.Min, box.Max, colour(p.accent_tint), ui.px(size::radius));
        const Font font = here ? strong : ui.font(TypeSize::body);
        const draw::Rgb words = here ? p.accent : p.ink;
        draw_text(ui, canvas(), {centred_x(ui, box, labels[i], font), middle_y(box, font)}, labels[i], font,
                  colour(words));
        const float bar = ui.px(5), inset = ui.px(size::gap);
        if (here)
            canvas().AddRectFilled({box.Min.x + inset, box.Max.y - bar}, {box.Max.x - inset, box.Max.y},
                                   colour(p.accent), bar / 2);
        focus_ring(ui, press);
        LoggedWidget logged = pressable("place", labels[i], em_px(TypeSize::body), words, p.paper);
        logged.chosen = here;
        log_widget(ui, logged, box.Min, box.Max);
        if (press.pressed && !here) {
            current = static_cast<int>(i);
            changed = true;
        }
    }
    return changed;
}

}  // namespace kw::window
