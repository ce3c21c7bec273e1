#include "print/card_blocks.h"

#include <algorithm>

#include "print/place_picture.h"
#include "print/text_size.h"

namespace kw::print {
namespace {

constexpr TextStyle what_text{6, true, black}, step_text{4.2, true, black}, title_text{3.2, true, black};

// Large, and smaller behind it the unit and the mark of what is rounded; as large as there is room.
Block large_value(const SetupNumber& number, double width_mm, double size_mm) {
    constexpr double unit_share = 0.42, gap_share = 0.12;
    const std::string value = without_mark(number.value), mark = number.value.substr(value.size()),
                      unit = number.unit + mark;
    const auto width = [&](double size) {
        return text_width_mm(value, {size, true}) + gap_share * size +
               text_width_mm(unit, {unit_share * size});
    };
    const double size = size_mm * std::min(1.0, width_mm / width(size_mm));
    const double height = 1.08 * size_mm, baseline = height - 0.24 * size_mm;
    const double unit_at = text_width_mm(value, {size, true}) + gap_share * size;
    return {{Text{{0, baseline}, value, {size, true}}, Text{{unit_at, baseline}, unit, {unit_share * size}}},
            width_mm,
            height};
}

Block ruled_above(const Block& block, double width_mm) {
    Block all{{across(width_mm, 0.35)}, width_mm, 0};
    put(all, block, {0, 1.2});
    return all;
}

Block marked(const char* mark, const std::string& text, const TextStyle& style, double width_mm) {
    constexpr double hanging_mm = 4.6;
    Block block = paragraph(text, style, width_mm - hanging_mm);
    Block all{{}, width_mm, 0};
    put(all, one_line(mark, style, hanging_mm), {0, 0});
    put(all, block, {hanging_mm, 0});
    return all;
}

// One part: its name, and beneath it or before it a box for each end.
Block part_block(const CardMatter& card, const PartToRun& part, double width_mm) {
    constexpr double box_mm = 3.4, beside_mm = 5, between_mm = 4;
    Block block{{}, width_mm, 0};
    if (!card.common_end.empty()) {
        put(block, tick_box(box_mm, part.ends.front().has_run), {0, 0.6});
        put(block, paragraph(part.part, body_text, width_mm - beside_mm, 4), {beside_mm, 0});
        return block;
    }
    put(block, paragraph(part.part, body_text, width_mm, 4), {0, 0});
    double x = 0, y = block.height_mm;
    for (const EndToRun& end : part.ends) {
        const double wide = std::min(text_width_mm(end.end, body_text), width_mm - beside_mm);
        if (x > 0 && x + beside_mm + wide > width_mm) {
            x = 0;
            y += line_height_mm(body_text);
        }
        put(block, tick_box(box_mm, end.has_run), {x, y + 0.6});
        put(block, one_line(end.end, body_text, wide + 0.01), {x + beside_mm, y});
        x += beside_mm + wide + between_mm;
    }
    block.width_mm = width_mm;
    return block;
}

// Rows of readings to fill in, a column for each test.
Block fields_block(const TestToMake& test, const Words& words, const std::string& unit, double width_mm) {
    constexpr int tests = 3;
    constexpr double row_mm = 5.5, pad_mm = 1.2, line_mm = 0.2;
    const double label_mm = 0.46 * width_mm, cell_mm = (width_mm - label_mm - line_mm) / tests;
    std::vector<std::string> rows{words("print.readings", unit)};
    rows.insert(rows.end(), test.readings.begin(), test.readings.end());
    rows.push_back(words("test.feel"));
    rows.push_back(words("print.moved"));
    Block block{{}, width_mm, 0};
    double y = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const TextStyle style{3.1, i == 0, black};
        const Block label = paragraph(rows[i], style, label_mm - pad_mm);
        const double high = std::max(row_mm, label.height_mm + 0.6);
        put(block, label, {0, y + (high - label.height_mm) / 2});
        for (int k = 0; k < tests; ++k) {
            const double x = label_mm + k * cell_mm;
            if (i == 0) {
                const Block name = one_line(std::to_string(k + 1), style, cell_mm - pad_mm, Align::centre);
                put(block, name, {x, y + (high - name.height_mm) / 2});
            } else {
                block.items.emplace_back(frame({x, y, x + cell_mm, y + high}, line_mm));
            }
        }
        y += high;
        block.height_mm = y;
    }
    return block;
}

constexpr double picture_caption_mm = 4.2;

// The drawing without its words, by the room that it has; or its words have no room.
bool is_small_in(const Picture& picture, const Area& room) {
    constexpr double least_share = 0.33;
    const draw::Box drawn = draw::bounds(picture.drawing);
    if (words_meet(picture)) return true;
    return std::max((drawn.right_mm - drawn.left_mm) / room.width_mm(),
                    (drawn.top_mm - drawn.bottom_mm) / room.height_mm()) *
               picture.scale <
           least_share;
}

// The first of the boards in a row, and how many there are beyond them. False where they would be too small to be of use.
bool put_boards(Block& block, const CardMatter& card, const Words& words, Area room, std::size_t most) {
    constexpr double px_mm = 0.15, gap_mm = 3;
    const std::size_t shown = std::min(card.boards.size(), most);
    if (const std::size_t more = card.boards.size() - shown; more > 0) {
        room.bottom_mm -= picture_caption_mm;
        const std::string text = words.counted("print.more_boards", static_cast<long long>(more));
        put(block, one_line(text, small_text, room.width_mm(), Align::centre),
            {room.left_mm, room.bottom_mm});
    }
    const double each = (room.width_mm() + gap_mm) / static_cast<double>(shown) - gap_mm;
    const double foot = room.bottom_mm - picture_caption_mm;
    for (std::size_t i = 0; i < shown; ++i) {
        const double left = room.left_mm + (each + gap_mm) * static_cast<double>(i);
        const Area its{left, room.top_mm, left + each, foot - 0.6};
        const Picture board = fitted_picture(card.boards[i].drawing, its, px_mm);
        if (is_small_in(board, its)) return false;
        block.items.emplace_back(board);
        put(block, one_line(card.boards[i].caption, small_text, each, Align::centre), {left, foot});
    }
    return true;
}

}  // namespace

Block card_head(const CardMatter& card, double width_mm) {
    const double aside_mm = 0.5 * width_mm;
    const Block aside = one_line(card.id + "  " + card.machine, step_text, aside_mm, Align::right);
    Block first = one_line(card.step, step_text, width_mm - aside_mm - 2);
    put(first, aside, {width_mm - aside_mm, 0});
    return stacked({first, paragraph(card.what, what_text, width_mm, 2),
                    paragraph(card.drawers, small_text, width_mm, 2)},
                   0.4);
}

Block number_block(const SetupNumber& number, const Words& words, double width_mm, double size_mm) {
    std::vector<Block> lines{paragraph(number.caption, title_text, width_mm)};
    if (!number.value.empty()) lines.push_back(large_value(number, width_mm, size_mm));
    if (!number.was.empty())
        lines.push_back(paragraph(words("print.was", number.was), {3.2, true, black}, width_mm));
    lines.push_back(
        paragraph(number.note, number.value.empty() ? body_text : TextStyle{3.1, false, black}, width_mm));
    return ruled_above(stacked(lines, 0.3), width_mm);
}

Block lie_block(const CardMatter& card, double width_mm) {
    std::vector<Block> lines;
    for (const std::string& text : card.lie) lines.push_back(paragraph(text, strong_text, width_mm));
    for (const std::string& text : card.gear) lines.push_back(paragraph(text, body_text, width_mm));
    return stacked(lines, 0.8);
}

Block changes_block(const CardMatter& card, const Words& words, double width_mm) {
    std::vector<Block> lines;
    if (card.test_on_next_page)
        lines.push_back(marked("\u25b2", words("print.test_next"), strong_text, width_mm));
    if (!card.state.empty()) lines.push_back(paragraph(card.state, strong_text, width_mm));
    lines.push_back(paragraph(card.from_where, small_text, width_mm));
    for (const std::string& change : card.changes.change)
        lines.push_back(marked("\u25b2", change, strong_text, width_mm));
    if (!card.changes.leave.empty())
        lines.push_back(marked("\u2713", card.changes.leave, body_text, width_mm));
    return stacked(lines, 0.5);
}

Block cautions_block(const CardMatter& card, double width_mm) {
    std::vector<Block> lines;
    for (const Caution& caution : card.cautions)
        lines.push_back(caution.loud ? marked("\u26a0", caution.text, {3.1, true, black}, width_mm)
                                     : paragraph(caution.text, {3.0, false, black}, width_mm));
    return ruled_above(stacked(lines, 0.4), width_mm);
}

PartsBlock parts_block(const CardMatter& card, const Words& words, std::size_t first, double width_mm,
                       int columns, double most_mm) {
    constexpr double gap_mm = 4, between_mm = 1.3;
    const std::string title =
        card.common_end.empty() ? words("print.run") : words("print.run_end", card.common_end);
    PartsBlock out{paragraph(title, title_text, width_mm), first};
    const double top = out.block.height_mm + 0.8, each_mm = (width_mm - (columns - 1) * gap_mm) / columns;
    int column = 0;
    double y = top;
    for (; out.next < card.parts.size(); ++out.next) {
        const Block part = part_block(card, card.parts[out.next], each_mm);
        if (y > top && y + part.height_mm > most_mm) {
            if (++column == columns) break;
            y = top;
        }
        if (y + part.height_mm > most_mm) break;
        put(out.block, part, {column * (each_mm + gap_mm), y});
        y += part.height_mm + between_mm;
    }
    return out;
}

Block test_block(const TestToMake& test, const Words& words, const std::string& unit, double width_mm) {
    constexpr double gap_mm = 5;
    const double steps_mm = 0.36 * width_mm, fields_mm = width_mm - steps_mm - gap_mm;
    std::vector<Block> lines{paragraph(words("print.test_first"), strong_text, steps_mm)};
    for (std::size_t i = 0; i < test.steps.size(); ++i)
        lines.push_back(
            marked((std::to_string(i + 1) + ".").c_str(), test.steps[i], {3.2, false, black}, steps_mm));
    lines.push_back(paragraph(words("print.tell_readings"), small_text, steps_mm));
    Block block = stacked(lines, 0.9);
    put(block, fields_block(test, words, unit, fields_mm), {steps_mm + gap_mm, 0});
    block.width_mm = width_mm;
    return ruled_above(block, width_mm);
}

std::optional<Block> picture_block(const CardMatter& card, const Words& words, double width_mm,
                                   double height_mm, bool with_boards) {
    constexpr double gap_mm = 4, section_px_mm = 0.155, least_height_mm = 24;
    if (height_mm < least_height_mm) return std::nullopt;
    const bool boards = with_boards && !card.boards.empty();
    // On a high sheet the boards stand in a row under the section, otherwise beside it.
    const bool beneath = boards && height_mm > 105;
    const double section_mm = boards && !beneath ? 0.5 * width_mm : width_mm,
                 section_height_mm = beneath ? 0.56 * height_mm : height_mm;
    const Area room{0, 0, section_mm, section_height_mm - picture_caption_mm};
    const Picture section = fitted_picture(card.section, room, section_px_mm);
    if (is_small_in(section, room)) return std::nullopt;
    Block block{{section}, width_mm, height_mm};
    const std::string scale = words("print.section_at", scale_words(words, section.scale));
    put(block, one_line(scale, small_text, section_mm, Align::centre), {0, room.bottom_mm});
    const Area beside{section_mm + gap_mm, 0, width_mm, height_mm},
        below{0, section_height_mm + gap_mm, width_mm, height_mm};
    if (boards && !put_boards(block, card, words, beneath ? below : beside, beneath ? 4 : 2))
        return std::nullopt;
    return block;
}

}  // namespace kw::print
