#include "print/sheet.h"

#include "print/text_size.h"

namespace kw::print {
namespace {

constexpr double foot_mm = 5, ruler_mm = 12.5, gap_mm = 2.5;
constexpr TextStyle ruler_text{2.3, false, black};

// Ticks along a line that is `length_mm` long, a longer one at each `long_every`; `up` from the line, or down.
void add_ruler(Block& block, Spot from, double length_mm, int ticks, int long_every, double side) {
    constexpr double line_mm = 0.12, short_mm = 1.6, long_mm = 2.6;
    block.items.emplace_back(Path{{from, {from.x_mm + length_mm, from.y_mm}}, line_mm});
    for (int i = 0; i <= ticks; ++i) {
        const double x = from.x_mm + length_mm * i / ticks;
        const double reach = i % long_every == 0 ? long_mm : short_mm;
        block.items.emplace_back(Path{{{x, from.y_mm}, {x, from.y_mm + side * reach}}, line_mm});
    }
}

}  // namespace

Area inside_margins(Paper paper) {
    const PaperSize size = size_of(paper);
    return {margin_mm, margin_mm, size.width.mm() - margin_mm, size.height.mm() - margin_mm};
}

Area body_of(Paper paper) {
    Area area = inside_margins(paper);
    area.bottom_mm -= foot_mm + ruler_mm + gap_mm;
    return area;
}

Block check_ruler(const Words& words, double width_mm) {
    constexpr double millimetres = 100, inches_mm = 4 * 25.4, left = 0.2, mm_line = 5.4, inch_line = 7;
    Block block{{}, width_mm, ruler_mm};
    add_ruler(block, {left, mm_line}, millimetres, 10, 5, -1);
    add_ruler(block, {left, inch_line}, inches_mm, 16, 4, 1);
    const std::string mm(words.text("unit.mm")), in(words.text("unit.in"));
    const auto number = [&](double x, double y, const std::string& text, Align align) {
        block.items.emplace_back(Text{{x, y}, text, ruler_text, align});
    };
    number(left, mm_line - 3.2, "0", Align::left);
    number(left + 50, mm_line - 3.2, "50", Align::centre);
    number(left + 100, mm_line - 3.2, "100 " + mm, Align::centre);
    number(left, inch_line + 5, "0", Align::left);
    for (int i = 1; i < 4; ++i) number(left + i * 25.4, inch_line + 5, std::to_string(i), Align::centre);
    number(left + inches_mm, inch_line + 5, "4 " + in, Align::centre);
    const double words_left = left + inches_mm + 6;
    const Block note =
        paragraph(words("print.measure_first", mm, in), {2.8, false, black}, width_mm - words_left);
    put(block.items, note, {words_left, (ruler_mm - note.height_mm) / 2});
    return block;
}

std::vector<Page> finished_pages(std::vector<Page> pages, const Words& words, const std::string& job,
                                 const std::string& what) {
    for (std::size_t i = 0; i < pages.size(); ++i) {
        Page& page = pages[i];
        const Area inside = inside_margins(page.paper);
        page.title = job + ": " + what;
        const double foot = inside.bottom_mm - foot_mm + 0.6, ruler = inside.bottom_mm - foot_mm - ruler_mm;
        put(page.items, check_ruler(words, inside.width_mm()), {inside.left_mm, ruler});
        page.items.push_back(
            moved(across(inside.width_mm(), 0.18, grey), inside.left_mm, inside.bottom_mm - foot_mm));
        const std::string number = words("print.page_of", i + 1, pages.size());
        const double number_mm = text_width_mm(number, small_text);
        put(page.items, one_line(number, small_text, inside.width_mm(), Align::right),
            {inside.left_mm, foot});
        put(page.items, one_line(page.title, small_text, inside.width_mm() - number_mm - 6),
            {inside.left_mm, foot});
    }
    return pages;
}

}  // namespace kw::print
