#include <algorithm>
#include <cmath>

#include "window/press.h"
#include "window/text.h"
#include "window/widgets.h"

namespace kw::window {
namespace {

draw::Rgb ground_here(const Ui& ui) { return ui.cards.empty() ? ui.colours().paper : ui.colours().card; }

struct Paragraph {
    std::vector<std::string> lines;
    float width = 0;
    float height = 0;
};

Paragraph set_paragraph(Ui& ui, std::string_view text, const Font& font, float width) {
    Paragraph p;
    p.lines = wrapped(ui, text, font, width);
    for (const std::string& line : p.lines) p.width = std::max(p.width, text_width(ui, line, font));
    p.height = static_cast<float>(p.lines.size()) * font.line;
    return p;
}

void draw_paragraph(Ui& ui, ImVec2 at, const Paragraph& p, const Font& font, draw::Rgb rgb) {
    for (const std::string& line : p.lines) {
        draw_text(ui, canvas(), at, line, font, colour(rgb));
        at.y += font.line;
    }
}

void log_words(Ui& ui, const char* kind, std::string_view text, double size, draw::Rgb ink, draw::Rgb ground,
               ImVec2 min, ImVec2 max, float room) {
    if (!ui.log) return;
    LoggedWidget w;
    w.kind = kind;
    w.label = text;
    w.text_px = size;
    w.contrast = draw::contrast(ink, ground);
    w.cut_off = max.x - min.x > room + 1;
    log_widget(ui, w, min, max);
}

float common_area(const ImVec4& a, const ImVec4& b) {
    const float across = std::min(a.z, b.z) - std::max(a.x, b.x),
                down = std::min(a.w, b.w) - std::max(a.y, b.y);
    return across > 0 && down > 0 ? across * down : 0;
}

constexpr float pressed_over_read = 1000;

// Where a toast of this size covers least of what can be pressed, and after that of what is read: nothing at all, if there is such a
// place. The lowest of the places that are as good, in the middle rather than at a side.
ImVec2 free_place(Ui& ui, ImVec2 size) {
    const float page = ui.px(size::page), step = ui.px(8);
    const float far = std::max(page, ui.page_size.x - page - size.x);
    const float xs[] = {std::floor((ui.page_size.x - size.x) / 2), std::floor(far), page};
    ImVec2 best{xs[0], page};
    float least = -1;
    for (float y = ui.page_size.y - page / 2 - size.y; y >= 0 && least != 0; y -= step) {
        for (const float x : xs) {
            const ImVec4 box{x, std::floor(y), x + size.x, std::floor(y) + size.y};
            float covered = 0;
            for (const ImVec4& taken : ui.taken) covered += pressed_over_read * common_area(box, taken);
            for (const ImVec4& read : ui.read) covered += common_area(box, read);
            if (least >= 0 && covered >= least) continue;
            least = covered;
            best = {box.x, box.y};
        }
    }
    return best;
}

void draw_toast(Ui& ui, const Toast& toast) {
    const Font font = ui.font(TypeSize::body);
    const draw::Palette& p = ui.colours();
    const float pad = ui.px(size::pad), most = std::min(ui.page_size.x - ui.px(4 * size::page), ui.px(720));
    const std::string words =
        *sign(toast.tone) ? std::string(sign(toast.tone)) + "  " + toast.text : toast.text;
    const Paragraph text = set_paragraph(ui, words, font, most - 2 * pad);
    const ImVec2 size{text.width + 2 * pad, text.height + 2 * pad};
    const ImVec2 min = free_place(ui, size), max{min.x + size.x, min.y + size.y};
    ui.taken.push_back({min.x, min.y, max.x, max.y});  // the next one lies elsewhere
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    list.AddRectFilled(min, max, colour(p.ink), ui.px(size::radius));
    ImVec2 at{min.x + pad, min.y + pad};
    for (const std::string& line : text.lines) {
        draw_text(ui, list, at, line, font, colour(p.paper));
        at.y += font.line;
    }
    LoggedWidget w;
    w.kind = "toast";
    w.label = toast.text;
    w.text_px = em_px(TypeSize::body);
    w.contrast = draw::contrast(p.ink, p.paper);
    log_widget(ui, w, min, max);
}

}  // namespace

void say(Ui& ui, std::string_view text, TypeSize size, Tone tone, float width) {
    const Face face = size == TypeSize::heading || size == TypeSize::number || size == TypeSize::huge
                          ? Face::strong
                          : Face::text;
    const Font font = ui.font(size, face);
    const float room = width > 0 ? width : content_width(ui);
    const Paragraph p = set_paragraph(ui, text, font, room);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const draw::Rgb rgb = ink(ui.theme, tone);
    draw_paragraph(ui, at, p, font, rgb);
    ImGui::Dummy({std::ceil(p.width), p.height});
    log_words(ui, "text", text, em_px(size), rgb, ground_here(ui), at, {at.x + p.width, at.y + p.height},
              room);
}

void heading(Ui& ui, std::string_view text) { say(ui, text, TypeSize::heading); }
void caption(Ui& ui, std::string_view text) { say(ui, text, TypeSize::small, Tone::soft); }

void status(Ui& ui, Tone tone, std::string_view text) {
    const Font font = ui.font(TypeSize::body, Face::strong);
    const std::string mark = sign(tone);
    const float before = mark.empty() ? 0 : text_width(ui, mark, font) + ui.px(8),
                room = content_width(ui) - before;
    const Paragraph p = set_paragraph(ui, text, font, room);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const draw::Rgb rgb = ink(ui.theme, tone);
    draw_text(ui, canvas(), at, mark, font, colour(rgb));
    draw_paragraph(ui, {at.x + before, at.y}, p, font, rgb);
    ImGui::Dummy({std::ceil(before + p.width), p.height});
    log_words(ui, "status", text, em_px(TypeSize::body), rgb, ground_here(ui), at,
              {at.x + before + p.width, at.y + p.height}, room + before);
}

void notice(Ui& ui, Tone tone, std::string_view title, std::string_view text) {
    const Font strong = ui.font(TypeSize::body, Face::strong), plain = ui.font(TypeSize::body);
    const float pad = ui.px(size::pad), bar = ui.px(6), mark = ui.px(34);
    const float width = content_width(ui), room = width - 2 * pad - bar - mark;
    const Paragraph head = set_paragraph(ui, title, strong, room);
    const Paragraph body = text.empty() ? Paragraph{} : set_paragraph(ui, text, plain, room);
    const float height = head.height + body.height + 2 * ui.px(size::gap);
    const ImVec2 min = ImGui::GetCursorScreenPos(), max{min.x + width, min.y + height};
    const draw::Rgb strong_ink = ink(ui.theme, tone), ground = tint(ui.theme, tone);
    fill_opaque(ui, canvas(), min, max, ground);
    fill_opaque(ui, canvas(), min, {min.x + bar, max.y}, strong_ink);
    const ImVec2 at{min.x + bar + pad, min.y + ui.px(size::gap)};
    draw_text(ui, canvas(), at, sign(tone), strong, colour(strong_ink));
    draw_paragraph(ui, {at.x + mark, at.y}, head, strong, strong_ink);
    draw_paragraph(ui, {at.x + mark, at.y + head.height}, body, plain, ui.colours().ink);
    ImGui::Dummy({width, height});
    log_words(ui, "notice", title, em_px(TypeSize::body), strong_ink, ground, min, max, width);
    if (!text.empty())
        log_words(ui, "text", text, em_px(TypeSize::body), ui.colours().ink, ground, min, max, width);
}

void rule(Ui& ui) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = content_width(ui), h = ui.px(1.5);
    canvas().AddLine({at.x, at.y + h}, {at.x + width, at.y + h}, colour(ui.colours().hairline), h);
    ImGui::Dummy({width, 2 * h});
}

void space(Ui& ui, double height_px) { ImGui::Dummy({1, ui.px(height_px)}); }

void progress(Ui& ui, int done, int of, float width) {
    const float w = width > 0 ? width : content_width(ui), h = ui.px(12);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const draw::Palette& p = ui.colours();
    const float share =
        of > 0 ? std::clamp(static_cast<float>(done) / static_cast<float>(of), 0.0f, 1.0f) : 0;
    canvas().AddRectFilled(at, {at.x + w, at.y + h}, colour(p.well), h / 2);
    if (share > 0)
        canvas().AddRectFilled(at, {at.x + std::max(w * share, h), at.y + h}, colour(p.good), h / 2);
    canvas().AddRect(at, {at.x + w, at.y + h}, colour(p.edge), h / 2, 0, ui.px(1.5));
    ImGui::Dummy({w, h});
}

void draw_toasts(Ui& ui) {
    std::erase_if(ui.toasts, [&](const Toast& toast) { return toast.until_s <= ui.now_s; });
    for (const Toast& toast : ui.toasts) {
        draw_toast(ui, toast);
        ui.pacer.wake_at(toast.until_s);
    }
}

}  // namespace kw::window
