#include "print/layout_pages.h"

#include <algorithm>

#include "draw/lay_out_view.h"
#include "print/flow.h"
#include "print/place_picture.h"
#include "session/say_layout.h"
#include "session/setup_said.h"
#include "session/words.h"

namespace kw::print {
namespace {

constexpr TextStyle job_text{6, true, black}, stock_text{4.6, true, black};
constexpr double after_block_mm = 4, between_columns_mm = 6, words_px_mm = 0.17;

std::vector<Block> part_lines(const Work& work, const LaidPiece& piece, double width_mm) {
    std::vector<Block> lines;
    int number = 0;
    for (const LaidPart& part : piece.parts)
        lines.push_back(paragraph(std::to_string(++number) + "  " +
                                      part_words(work.job.locale.words(), work.plan, part.part) + ", " +
                                      say_place(work.job, part),
                                  body_text, width_mm, 2));
    for (const cutting::Rectangle& offcut : piece.offcuts)
        lines.push_back(paragraph(work.job.locale.words()("layout.keep", say_rectangle(work.job, offcut)),
                                  small_text, width_mm, 2));
    return lines;
}

// Two lists beside each other, over as many pages as they take.
void add_lists(Flow& flow, const Block& title, const std::vector<Block>& left,
               const std::vector<Block>& right, double column_mm) {
    std::size_t l = 0, r = 0;
    for (;;) {
        Block both{{}, flow.width_mm(), 0};
        const auto fill = [&](const std::vector<Block>& lines, std::size_t& next, double x_mm) {
            double y = 0;
            while (next < lines.size() && y + lines[next].height_mm <= flow.left_mm()) {
                put(both, lines[next], {x_mm, y});
                y += lines[next++].height_mm;
            }
        };
        fill(left, l, 0);
        fill(right, r, column_mm + between_columns_mm);
        if (both.height_mm > 0) flow.add(both, after_block_mm);
        if (l == left.size() && r == right.size()) break;
        flow.new_page();
        flow.add(title, after_block_mm);
    }
}

void add_piece(Flow& flow, const Work& work, const LaidStock& laid, std::size_t index) {
    const Job& job = work.job;
    const LaidPiece& piece = laid.pieces[index];
    const StockSize& size = job.stock_named(laid.stock)->sizes.at(piece.size);
    flow.new_page();
    const Block title = paragraph(capital(laid.stock) + ", " +
                                      job.locale.words()("layout.of_pieces", index + 1, laid.pieces.size()) +
                                      ": " + say_size(job, size),
                                  stock_text, flow.width_mm(), 3);
    flow.add(title, after_block_mm);
    const double picture_mm = laid.is_in_sheets ? 105 : 45;
    const auto picture = fitted_picture(draw::lay_out_view(job, laid, piece),
                                        {0, 0, flow.width_mm(), picture_mm}, words_px_mm);
    Block block{{}, flow.width_mm(), picture_mm};
    block.items.emplace_back(picture);
    flow.add(block, after_block_mm);
    const double column_mm = (flow.width_mm() - between_columns_mm) / 2;
    std::vector<Block> cuts;
    for (const SaidCut& said : say_cuts(job, laid, piece)) {
        cuts.push_back(line_to_tick(capital(said.cut), column_mm));
        if (!said.caution.empty()) cuts.push_back(paragraph(said.caution, small_text, column_mm, 5));
    }
    add_lists(flow, title, part_lines(work, piece, column_mm), cuts, column_mm);
}

// The cuts of all sheets once more, by the setting.
void add_settings(Flow& flow, const Job& job, const LaidStock& laid) {
    const std::vector<std::string> settings = say_settings(job, laid);
    for (std::size_t i = 0; i < settings.size(); ++i)
        flow.add(i == 0 ? stacked({paragraph(capital(laid.stock), stock_text, flow.width_mm(), 2),
                                   paragraph(capital(settings[0]), body_text, flow.width_mm())},
                                  1)
                        : line_to_tick(capital(settings[i]), flow.width_mm()),
                 i + 1 == settings.size() ? after_block_mm : 0.5);
}

}  // namespace

std::vector<Page> layout_pages(const Work& work, const LayOut& layout, Paper paper) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    Flow flow(paper);
    flow.add(paragraph(job.name, job_text, flow.width_mm(), 3), after_block_mm);
    if (const std::string already = say_cut_already(job, layout); !already.empty())
        flow.add(paragraph(capital(already), body_text, flow.width_mm()), after_block_mm);
    for (const std::string& said : say_freed(job, work.plan, layout, SetupNames::steps))
        flow.add(paragraph(capital(said), body_text, flow.width_mm()), after_block_mm);
    for (const LaidStock& laid : layout.stocks) {
        std::vector<Block> lines{paragraph(capital(laid.stock), stock_text, flow.width_mm(), 2)};
        lines.push_back(paragraph(
            laid.cannot ? capital(laid.cannot->why.text(job.locale)) : capital(say_layout(job, laid)),
            body_text, flow.width_mm()));
        if (!laid.cannot)
            for (const std::string& buy : say_to_buy(job, laid))
                lines.push_back(line_to_tick(words("layout.buy", buy), flow.width_mm()));
        flow.add(stacked(lines, 1), after_block_mm);
    }
    for (const std::string& stock : layout.without_size)
        flow.add(paragraph(capital(words("layout.no_size_of", stock)), small_text, flow.width_mm()), 1);
    for (const LaidStock& laid : layout.stocks)
        for (std::size_t i = 0; i < laid.pieces.size(); ++i) add_piece(flow, work, laid, i);
    const auto has_settings = [](const LaidStock& laid) { return !laid.settings.empty(); };
    if (std::any_of(layout.stocks.begin(), layout.stocks.end(), has_settings)) flow.new_page();
    for (const LaidStock& laid : layout.stocks) add_settings(flow, job, laid);
    return finished_pages(flow.take(), words, job.name, words("print.layout"));
}

}  // namespace kw::print
