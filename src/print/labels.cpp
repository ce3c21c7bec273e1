#include "print/labels.h"

#include <algorithm>

#include "print/place_picture.h"
#include "print/sheet.h"
#include "print/text_size.h"
#include "session/setup_said.h"

namespace kw::print {
namespace {

constexpr int columns = 3;
constexpr double least_height_mm = 46, pad_mm = 2.6;
constexpr TextStyle name_text{4.2, true, black}, size_text{4.2, true, black}, id_text{2.6, false, grey};

// The largest of these sizes in which it goes on one line; shortened in the smallest.
Block line_that_fits(const std::string& text, TextStyle style, double least_size_mm, double width_mm) {
    const double wide = text_width_mm(text, style);
    if (wide > width_mm) style.size_mm = std::max(least_size_mm, style.size_mm * width_mm / wide * 0.999);
    return one_line(text, style, width_mm);
}

// What part of the drawer it is stands at the end, so a long name takes a second line.
Block name_of_part(const std::string& name, double width_mm) {
    constexpr double small_mm = 3.3;
    if (text_width_mm(name, name_text) * small_mm / name_text.size_mm <= width_mm)
        return line_that_fits(name, name_text, small_mm, width_mm);
    return paragraph(name, {small_mm, true, black}, width_mm, 2);
}

Block label_of(const Work& work, const Part& part, double width_mm, double height_mm) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    const double room = width_mm - 2 * pad_mm;
    std::vector<Block> said{name_of_part(part_words(words, work.plan, part.id), room),
                            line_that_fits(part.id, id_text, 2, room),
                            line_that_fits(finished_words(job, part.size), size_text, 2.8, room)};
    if (const std::string band = band_words(job, part.band, part.banded); !band.empty())
        said.push_back(paragraph(band, id_text, room, 2));
    said.push_back(line_that_fits(part.stock, {3.2, false, black}, 2.6, room));
    const Block lines = stacked(said, 0.5);
    Block label{{}, width_mm, height_mm};
    put(label, lines, {pad_mm, pad_mm});
    constexpr double px_mm = 0.13, name_mm = 5;
    const double top = pad_mm + lines.height_mm + name_mm, bottom = height_mm - pad_mm - name_mm;
    draw::Drawing board = label_view(part, words, room, bottom - top);
    const double width = draw::bounds(board).top_mm;
    label.items.emplace_back(picture_at_scale(board, {pad_mm, (top + bottom + width) / 2}, 1, px_mm));
    return label;
}

// Along the edges of all labels, from end to end: a page is cut by them as with a straightedge.
void add_cut_lines(Page& page, const Area& body, int rows, double width_mm, double height_mm) {
    const double bottom = body.top_mm + rows * height_mm, right = body.left_mm + columns * width_mm;
    const auto line = [&](Spot from, Spot to) {
        page.items.emplace_back(Path{{from, to}, 0.2, false, true, grey});
    };
    for (int i = 0; i <= columns; ++i)
        line({body.left_mm + i * width_mm, body.top_mm}, {body.left_mm + i * width_mm, bottom});
    for (int i = 0; i <= rows; ++i)
        line({body.left_mm, body.top_mm + i * height_mm}, {right, body.top_mm + i * height_mm});
}

}  // namespace

std::string finished_words(const Job& job, const PartSize& size) {
    // The mark of what is rounded stands at its number.
    const auto tight = [](std::string value) {
        const std::size_t number = without_mark(value).size();
        if (number < value.size()) value.erase(number, 1);
        return value;
    };
    return job.locale.words()("print.size", tight(show(size.length, job.locale)),
                              tight(show(size.width, job.locale)),
                              tight(show(size.thickness, caliper_locale(job))), unit_words(job));
}

std::vector<Page> part_labels(const Work& work, Paper paper) {
    Area body = body_of(paper);
    // Half a cut line's width stays within the margins.
    body = {body.left_mm + 0.2, body.top_mm + 0.2, body.right_mm - 0.2, body.bottom_mm - 0.2};
    const int most_rows = static_cast<int>(body.height_mm() / least_height_mm);
    const double width_mm = body.width_mm() / columns, height_mm = body.height_mm() / most_rows;
    const auto& parts = work.plan.parts;
    std::vector<Page> pages;
    const auto on_a_page = static_cast<std::size_t>(columns * most_rows);
    for (std::size_t first = 0; first < parts.size(); first += on_a_page) {
        Page page{paper, {}, {}};
        const std::size_t count = std::min(on_a_page, parts.size() - first);
        const int rows = (static_cast<int>(count) + columns - 1) / columns;
        add_cut_lines(page, body, rows, width_mm, height_mm);
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t column = i % columns, row = i / columns;
            put(page.items, label_of(work, parts[first + i], width_mm, height_mm),
                {body.left_mm + static_cast<double>(column) * width_mm,
                 body.top_mm + static_cast<double>(row) * height_mm});
        }
        pages.push_back(std::move(page));
    }
    const Words& words = work.job.locale.words();
    return finished_pages(std::move(pages), words, work.job.name, words("print.labels"));
}

}  // namespace kw::print
