#include "print/part_list.h"

#include <algorithm>
#include <array>

#include "print/labels.h"
#include "print/sheet.h"
#include "session/setup_said.h"

namespace kw::print {
namespace {

constexpr double between_mm = 3, row_pad_mm = 1.4;
// Of the width: part, count, size, stock, grain, boxes.
constexpr std::array<double, 6> shares{0.23, 0.08, 0.285, 0.145, 0.12, 0.14};
constexpr TextStyle head_text{3.1, true, black}, cell_text{3.5, false, black};

using Cells = std::array<Block, 6>;

bool is_side(Role role) { return role == Role::side_left || role == Role::side_right; }

bool alike(const EqualParts& a, const Part& b) {
    const bool of_one_kind = a.size.role == b.size.role || (is_side(a.size.role) && is_side(b.size.role));
    return of_one_kind && a.drawer == b.drawer && a.stock == b.stock && a.size.length == b.size.length &&
           a.size.width == b.size.width && a.size.thickness == b.size.thickness && a.band == b.band &&
           a.banded == b.banded;
}

std::string roles_words(const Words& words, const EqualParts& parts) {
    std::vector<std::string> roles;
    for (const Role role : parts.roles) roles.push_back(role_words(words, role));
    return words.list(roles);
}

// A part's length runs with the grain: rips, which bring parts to width, go along it.
std::string grain_words(const Job& job, const EqualParts& parts) {
    const Stock* stock = job.stock_named(parts.stock);
    const bool has_grain = !stock || stock->kind != StockKind::panel;
    return std::string(job.locale.words().text(has_grain ? "print.grain_along" : "print.no_grain"));
}

Block boxes(int count, double width_mm) {
    constexpr double box_mm = 3.8, step_mm = 5.2;
    const int in_a_row = std::max(1, static_cast<int>((width_mm + step_mm - box_mm) / step_mm));
    Block block{{}, width_mm, 0};
    for (int i = 0; i < count; ++i) {
        const int column = i % in_a_row, row = i / in_a_row;
        put(block, tick_box(box_mm), {column * step_mm, 0.3 + row * step_mm});
    }
    return block;
}

std::array<double, 6> widths_in(double width_mm) {
    std::array<double, 6> widths{};
    for (std::size_t i = 0; i < widths.size(); ++i)
        widths[i] = shares[i] * width_mm - (i + 1 < widths.size() ? between_mm : 0);
    return widths;
}

Block row_of(const Cells& cells, double width_mm, double line_mm) {
    Block row{{moved(across(width_mm, line_mm, grey), 0, line_mm / 2)}, width_mm, 0};
    double x = 0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        put(row, cells[i], {x, row_pad_mm});
        x += shares[i] * width_mm;
    }
    row.height_mm += row_pad_mm;
    row.width_mm = width_mm;
    return row;
}

Block head_row(const Words& words, double width_mm) {
    const auto widths = widths_in(width_mm);
    const std::array<const char*, 6> keys{"print.column_part",  "print.column_count", "print.column_size",
                                          "print.column_stock", "print.column_grain", "print.column_made"};
    Cells cells;
    for (std::size_t i = 0; i < cells.size(); ++i)
        cells[i] = paragraph(words.text(keys[i]), head_text, widths[i]);
    return row_of(cells, width_mm, 0.35);
}

Block parts_row(const Job& job, const EqualParts& parts, double width_mm) {
    const Words& words = job.locale.words();
    const auto widths = widths_in(width_mm);
    const Block part = stacked({paragraph(capital(roles_words(words, parts)), strong_text, widths[0]),
                                paragraph(parts.drawer, small_text, widths[0])},
                               0);
    std::vector<Block> size{paragraph(finished_words(job, parts.size), strong_text, widths[2])};
    if (const std::string band = band_words(job, parts.band, parts.banded); !band.empty())
        size.push_back(paragraph(band, small_text, widths[2]));
    return row_of(
        {part, paragraph(std::to_string(parts.count), strong_text, widths[1]), stacked(size, 0),
         paragraph(parts.stock, cell_text, widths[3]),
         paragraph(grain_words(job, parts), {3, false, black}, widths[4]), boxes(parts.count, widths[5])},
        width_mm, 0.15);
}

}  // namespace

std::vector<EqualParts> equal_parts(const Plan& plan) {
    std::vector<EqualParts> all;
    for (const Part& part : plan.parts) {
        auto found =
            std::find_if(all.begin(), all.end(), [&](const EqualParts& one) { return alike(one, part); });
        if (found == all.end()) {
            all.push_back({part.drawer, {}, part.size, part.stock, 0, part.band, part.banded});
            found = all.end() - 1;
        }
        if (std::find(found->roles.begin(), found->roles.end(), part.size.role) == found->roles.end())
            found->roles.push_back(part.size.role);
        ++found->count;
    }
    return all;
}

std::vector<Page> part_list(const Work& work, Paper paper) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    const Area body = body_of(paper);
    const Block title = stacked({paragraph(job.name, {6, true, black}, body.width_mm(), 3),
                                 paragraph(words("print.sizes_are"), small_text, body.width_mm())},
                                1),
                head = head_row(words, body.width_mm());
    std::vector<Page> pages;
    double y = body.bottom_mm;
    for (const EqualParts& parts : equal_parts(work.plan)) {
        const Block row = parts_row(job, parts, body.width_mm());
        if (pages.empty() || y + row.height_mm > body.bottom_mm) {
            pages.push_back({paper, {}, {}});
            y = body.top_mm;
            if (pages.size() == 1) {
                put(pages.back().items, title, {body.left_mm, y});
                y += title.height_mm + 4;
            }
            put(pages.back().items, head, {body.left_mm, y});
            y += head.height_mm;
        }
        put(pages.back().items, row, {body.left_mm, y});
        y += row.height_mm;
    }
    return finished_pages(std::move(pages), words, job.name, words("print.parts"));
}

}  // namespace kw::print
