#include "print/block.h"

#include <algorithm>

#include "print/text_size.h"

namespace kw::print {
namespace {

double first_baseline_mm(const TextStyle& style) {
    return (line_height_mm(style) + ascent_mm(style) - descent_mm(style)) / 2;
}

}  // namespace

Block paragraph(std::string_view text, const TextStyle& style, double width_mm, std::size_t most_lines) {
    std::vector<std::string> lines = wrapped(text, style, width_mm);
    if (lines.size() > most_lines) {
        std::string rest = lines[most_lines - 1] + " " + lines[most_lines];
        lines.resize(most_lines - 1);
        lines.push_back(shortened(std::move(rest), style, width_mm));
    }
    Block block{{}, width_mm, 0};
    for (const std::string& line : lines) {
        block.items.emplace_back(Text{{0, block.height_mm + first_baseline_mm(style)}, line, style});
        block.height_mm += line_height_mm(style);
    }
    return block;
}

Block one_line(std::string_view text, const TextStyle& style, double width_mm, Align align) {
    const double x = align == Align::left ? 0 : align == Align::right ? width_mm : width_mm / 2;
    return {
        {Text{{x, first_baseline_mm(style)}, shortened(std::string(text), style, width_mm), style, align}},
        width_mm,
        line_height_mm(style)};
}

Block stacked(const std::vector<Block>& blocks, double gap_mm) {
    Block all;
    for (const Block& block : blocks) {
        if (block.height_mm <= 0) continue;
        put(all, block, {0, all.height_mm > 0 ? all.height_mm + gap_mm : 0});
    }
    return all;
}

void put(std::vector<Item>& onto, const Block& block, Spot at) {
    for (const Item& item : block.items) onto.push_back(moved(item, at.x_mm, at.y_mm));
}

void put(Block& onto, const Block& block, Spot at) {
    put(onto.items, block, at);
    onto.width_mm = std::max(onto.width_mm, at.x_mm + block.width_mm);
    onto.height_mm = std::max(onto.height_mm, at.y_mm + block.height_mm);
}

Path across(double width_mm, double line_mm, const draw::Rgb& ink) {
    return {{{line_mm / 2, 0}, {width_mm - line_mm / 2, 0}}, line_mm, false, false, ink};
}

Block tick_box(double size_mm, bool ticked) {
    constexpr double line_mm = 0.35, in = line_mm / 2;
    Block block{{frame({in, in, size_mm - in, size_mm - in}, line_mm)}, size_mm, size_mm};
    if (ticked)
        block.items.emplace_back(Path{{{0.18 * size_mm, 0.52 * size_mm},
                                       {0.42 * size_mm, 0.78 * size_mm},
                                       {0.84 * size_mm, 0.2 * size_mm}},
                                      0.5});
    return block;
}

}  // namespace kw::print
