#include "window/text.h"

#include <cmath>

#include "draw/fraction_text.h"
#include "draw/line_breaks.h"

namespace kw::window {
namespace {

using draw::RunKind;
using draw::TextRun;

float plain_width(const Font& font, std::string_view text) {
    return font.font->CalcTextSizeA(font.size, 1e9f, 0, text.data(), text.data() + text.size()).x;
}

bool is_small(const TextRun& run) {
    return run.kind == RunKind::numerator || run.kind == RunKind::denominator;
}

Font digits_of(Ui& ui, const Font& font) {
    return ui.fonts.get(Face::figures, static_cast<double>(font.em) * draw::fraction_digit_size);
}

float raise_of(const TextRun& run) {
    if (run.kind == RunKind::numerator) return static_cast<float>(draw::numerator_raise_em);
    return run.kind == RunKind::denominator ? -static_cast<float>(draw::denominator_drop_em) : 0;
}

// Calls set(run, font, x) for each run from x = 0 on; returns the width.
template <class Set>
float set_runs(Ui& ui, std::string_view text, const Font& font, Set set) {
    float x = 0;
    for (const TextRun& run : draw::text_runs(text)) {
        if (run.kind == RunKind::numerator && x > 0) x += font.em * static_cast<float>(draw::fraction_gap_em);
        const Font used = is_small(run) ? digits_of(ui, font) : font;
        set(run, used, x);
        x += plain_width(used, run.text);
    }
    return x;
}

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string_view word = text.substr(at, end - at);
        if (!words.empty() && draw::of_one_length(words.back(), word)) {
            words.back() += ' ';
            words.back() += word;
        } else {
            words.emplace_back(word);
        }
        at = end + 1;
    }
    return words;
}

void wrap_paragraph(Ui& ui, std::string_view text, const Font& font, float width,
                    std::vector<std::string>& lines) {
    std::string line;
    for (const std::string& word : words_of(text)) {
        const std::string longer = line.empty() ? word : line + " " + word;
        if (!line.empty() && text_width(ui, longer, font) > width) {
            lines.push_back(line);
            line = word;
        } else {
            line = longer;
        }
    }
    lines.push_back(line);
}

}  // namespace

float text_width(Ui& ui, std::string_view text, const Font& font) {
    ui.fonts.need(text);
    return set_runs(ui, text, font, [](const TextRun&, const Font&, float) {});
}

void draw_text(Ui& ui, ImDrawList& list, ImVec2 at, std::string_view text, const Font& font, ImU32 ink) {
    ui.fonts.need(text);
    const float base = std::round(at.y + font.ascent);
    const float width = set_runs(ui, text, font, [&](const TextRun& run, const Font& used, float x) {
        const float y = base - used.ascent - raise_of(run) * font.em;
        const char* begin = run.text.data();
        list.AddText(used.font, used.size, {std::round(at.x + x), std::round(y)}, ink, begin,
                     begin + run.text.size());
    });
    if (&list != ImGui::GetForegroundDrawList())
        add_in_sight(ui.read, list, at, {at.x + width, at.y + font.line});
}

std::vector<std::string> wrapped(Ui& ui, std::string_view text, const Font& font, float width) {
    std::vector<std::string> lines;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        wrap_paragraph(ui, text.substr(at, end - at), font, width, lines);
        at = end + 1;
    }
    return lines;
}

Fitted shortened(Ui& ui, std::string_view text, const Font& font, float width) {
    if (text_width(ui, text, font) <= width + 0.5f) return {std::string(text), false};
    std::string kept(text);
    while (!kept.empty() && text_width(ui, kept + "\u2026", font) > width) {
        while (!kept.empty() && (static_cast<unsigned char>(kept.back()) & 0xc0u) == 0x80u) kept.pop_back();
        if (!kept.empty()) kept.pop_back();
    }
    return {kept + "\u2026", true};
}

}  // namespace kw::window
