// Large numbers: digits of one width, so that they do not jump when they change, and fractions set one over the other.

#include <algorithm>
#include <cmath>

#include "window/figure_parts.h"
#include "window/press.h"
#include "window/text.h"
#include "window/widgets.h"

namespace kw::window {
namespace {

constexpr float cap_height_em = 0.727f;  // of Inter's digits
constexpr float fraction_em = 0.54f;
constexpr float bar_em = 0.055f;
constexpr float bar_gap_em = 0.075f;
constexpr float part_gap_em = 0.10f;
constexpr float mark_em = 0.50f;
constexpr float unit_em = 0.40f;
constexpr float top_em = 0.46f;      // of the fraction above the middle of the digits, with its gap
constexpr float tighter_em = 0.03f;  // large type is set closer
constexpr float least_em_px = 24;

bool is_digit(std::string_view c) { return c.size() == 1 && c[0] >= '0' && c[0] <= '9'; }

float glyph_width(const Font& font, std::string_view c) {
    return font.font->CalcTextSizeA(font.size, 1e9f, 0, c.data(), c.data() + c.size()).x;
}

float cell_width(const Font& font) {
    float widest = 0;
    for (char c = '0'; c <= '9'; ++c) widest = std::max(widest, glyph_width(font, {&c, 1}));
    return std::round(widest - font.em * tighter_em);
}

std::string_view next_character(std::string_view text, std::size_t at) {
    std::size_t end = at + 1;
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xc0u) == 0x80u) ++end;
    return text.substr(at, end - at);
}

// Sets digits in cells of one width; draws if a list is given. base: the base line. Returns the width.
float set_digits(ImDrawList* list, const Font& font, ImVec2 base, std::string_view text, ImU32 ink) {
    const float cell = cell_width(font);
    float x = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::string_view c = next_character(text, at);
        const float own = glyph_width(font, c), room = is_digit(c) ? cell : own;
        if (list) {
            const ImVec2 corner{std::round(base.x + x + (room - own) / 2), std::round(base.y - font.ascent)};
            list->AddText(font.font, font.size, corner, ink, c.data(), c.data() + c.size());
        }
        x += room;
        at += c.size();
    }
    return x;
}

struct FigureFonts {
    Font whole, small, mark, unit;
};

FigureFonts fonts_at(Ui& ui, float em) {
    const auto at = [&](Face face, float size) { return ui.fonts.get(face, static_cast<double>(size)); };
    return {at(Face::figures, em), at(Face::figures, em * fraction_em), at(Face::figures, em * mark_em),
            at(Face::figures, std::max(em * unit_em, ui.px(18)))};
}

// The whole value on one base line; draws if a list is given. Returns the width.
float set_value(Ui& ui, ImDrawList* list, const FigureFonts& fonts, ImVec2 base, const FigureParts& parts,
                std::string_view unit, ImU32 ink, ImU32 soft) {
    const float em = fonts.whole.em, gap = em * part_gap_em;
    float x = set_digits(list, fonts.whole, base, parts.before, ink);
    if (!parts.numerator.empty()) {
        if (x > 0) x += gap;
        const float top = set_digits(nullptr, fonts.small, base, parts.numerator, ink);
        const float foot = set_digits(nullptr, fonts.small, base, parts.denominator, ink);
        const float width = std::max(top, foot) + em * 0.06f, bar_y = base.y - em * cap_height_em / 2;
        if (list) {
            const float half = std::max(em * bar_em / 2, 1.0f), away = half + em * bar_gap_em;
            const float small_cap = fonts.small.em * cap_height_em;
            list->AddRectFilled({std::round(base.x + x), std::round(bar_y - half)},
                                {std::round(base.x + x + width), std::round(bar_y + half)}, ink);
            set_digits(list, fonts.small, {base.x + x + (width - top) / 2, bar_y - away}, parts.numerator,
                       ink);
            set_digits(list, fonts.small, {base.x + x + (width - foot) / 2, bar_y + away + small_cap},
                       parts.denominator, ink);
        }
        x += width;
    }
    if (!parts.after.empty()) {
        x += gap;
        const float raised = em * cap_height_em / 2 - fonts.mark.em * cap_height_em / 2;
        x += set_digits(list, fonts.mark, {base.x + x, base.y - raised}, parts.after, ink);
    }
    if (!unit.empty()) {
        x += gap * 1.6f;
        if (list) draw_text(ui, *list, {base.x + x, base.y - fonts.unit.ascent}, unit, fonts.unit, soft);
        x += text_width(ui, unit, fonts.unit);
    }
    return x;
}

float fitting_em(Ui& ui, const FigureParts& parts, std::string_view unit, float em, float room) {
    while (em > ui.px(static_cast<double>(least_em_px))) {
        const float width = set_value(ui, nullptr, fonts_at(ui, em), {}, parts, unit, 0, 0);
        if (width <= room) break;
        em =
            std::max(ui.px(static_cast<double>(least_em_px)), std::floor(em * std::min(room / width, 0.97f)));
    }
    return em;
}

void log_figure(Ui& ui, const Figure& figure, float em, const Press& press) {
    if (!ui.log) return;
    const draw::Palette& p = ui.colours();
    LoggedWidget w = pressable("number", figure.caption, static_cast<double>(em) / ui.pixel_ratio,
                               figure.changed_from.empty() ? p.ink : p.changed, p.card);
    w.pressable = figure.pressable;
    w.value = figure.value;
    if (!figure.unit.empty()) w.value += " " + std::string(figure.unit);
    log_widget(ui, w, press.box.Min, press.box.Max);
}

std::string change_words(const Ui& ui, const Figure& figure) {
    return std::string(sign(Tone::changed)) + " " + ui.text("figure.was", figure.changed_from);
}

struct Small {
    std::vector<std::string> lines;
    Tone tone;
};

std::vector<Small> small_lines(Ui& ui, const Figure& figure, float room) {
    const Font font = ui.font(TypeSize::small);
    std::vector<Small> all;
    if (!figure.changed_from.empty())
        all.push_back({wrapped(ui, change_words(ui, figure), font, room), Tone::changed});
    if (!figure.note.empty()) all.push_back({wrapped(ui, figure.note, font, room), Tone::soft});
    return all;
}

// What is said of a value, set to its right, if it fits there.
struct Beside {
    std::vector<Small> all;
    float height = 0;
    bool fits = false;
};

Beside lines_beside(Ui& ui, const Figure& figure, float room, float most_height) {
    const Font small = ui.font(TypeSize::small);
    Beside beside;
    if (room < ui.px(84)) return beside;
    beside.all = small_lines(ui, figure, room);
    beside.fits = true;
    for (const Small& s : beside.all) {
        beside.height += static_cast<float>(s.lines.size()) * small.line;
        for (const std::string& line : s.lines)
            beside.fits = beside.fits && text_width(ui, line, small) <= room;
    }
    beside.fits = beside.fits && beside.height <= most_height + ui.px(4);
    return beside;
}

}  // namespace

void ask_for_figure_type(Ui& ui, TypeSize size) { fonts_at(ui, ui.px(em_px(size))); }

bool figure(Ui& ui, const Figure& figure) {
    const float width = figure.width > 0 ? figure.width : content_width(ui),
                inset = ui.px(figure.pressable ? size::pad : size::gap);
    const float room = width - 2 * inset;
    const FigureParts parts = figure_parts(figure.value);
    const float wanted = ui.px(figure.value_px > 0 ? figure.value_px : em_px(figure.size));
    const float em = fitting_em(ui, parts, figure.unit, wanted, room);
    const FigureFonts fonts = fonts_at(ui, em);
    const Font small = ui.font(TypeSize::small);
    const auto head = wrapped(ui, figure.caption, small, room);
    const auto below = small_lines(ui, figure, room);
    float lines = static_cast<float>(head.size());
    for (const Small& s : below) lines += static_cast<float>(s.lines.size());
    const float digits = em * (cap_height_em + 2 * (top_em - cap_height_em / 2)) + ui.px(16);
    const float value_width = set_value(ui, nullptr, fonts, {}, parts, figure.unit, 0, 0) + ui.px(size::gap);
    const Beside beside = figure.compact ? lines_beside(ui, figure, room - value_width, digits) : Beside{};
    if (beside.fits) lines = static_cast<float>(head.size());
    const float pad = ui.px(figure.compact     ? 5
                            : figure.pressable ? 10
                                               : 2),
                height = lines * small.line + digits + 2 * pad;
    const Press press =
        press_area(ui, figure.caption, {width, std::max(height, ui.px(size::target))}, figure.pressable);
    const draw::Palette& p = ui.colours();
    const bool changed = !figure.changed_from.empty();
    const ImRect& box = press.box;
    if (figure.pressable) {
        if (press.held) canvas().AddRectFilled(box.Min, box.Max, colour(p.accent_tint), ui.px(size::radius));
        canvas().AddRect(box.Min, box.Max, colour(p.edge), ui.px(size::radius), 0, ui.px(1.5));
    }
    if (changed)
        canvas().AddRectFilled({box.Min.x, box.Min.y + pad}, {box.Min.x + ui.px(5), box.Max.y - pad},
                               colour(p.changed));
    float y = box.Min.y + pad;
    for (const std::string& line : head) {
        draw_text(ui, canvas(), {box.Min.x + inset, y}, line, small, colour(p.soft_ink));
        y += small.line;
    }
    const float base = y + ui.px(8) + em * (top_em + cap_height_em / 2);
    set_value(ui, &canvas(), fonts, {box.Min.x + inset, base}, parts, figure.unit,
              colour(changed ? p.changed : p.ink), colour(p.soft_ink));
    const float left = box.Min.x + inset + (beside.fits ? value_width : 0);
    y += beside.fits ? std::round((digits - beside.height) / 2) : digits;
    for (const Small& s : beside.fits ? beside.all : below) {
        for (const std::string& line : s.lines) {
            draw_text(ui, canvas(), {left, y}, line, small, colour(ink(ui.theme, s.tone)));
            y += small.line;
        }
    }
    focus_ring(ui, press);
    log_figure(ui, figure, em, press);
    return press.pressed;
}

void filling_figure(Ui& ui, const Figure& figure, ImVec2 room) {
    const FigureParts parts = figure_parts(figure.value);
    const float tallest = room.y / (2 * top_em + 0.08f);
    const float em = std::min(tallest, fitting_em(ui, parts, figure.unit, tallest, room.x));
    const FigureFonts fonts = fonts_at(ui, em);
    const Press press = press_area(ui, figure.caption, room, figure.pressable);
    const draw::Palette& p = ui.colours();
    const float width = set_value(ui, nullptr, fonts, {}, parts, figure.unit, 0, 0);
    const ImVec2 base{press.box.Min.x + (room.x - width) / 2,
                      press.box.Min.y + room.y / 2 + em * cap_height_em / 2};
    set_value(ui, &canvas(), fonts, base, parts, figure.unit,
              colour(figure.changed_from.empty() ? p.ink : p.changed), colour(p.soft_ink));
    log_figure(ui, figure, em, press);
}

}  // namespace kw::window
