#include "session/say_layout.h"

#include <algorithm>
#include <cmath>

#include "words/names.h"

namespace kw {
namespace {

std::string two_lengths(const Job& job, Length a, Length b) {
    return job.locale.words()("layout.size", without_mark(show(a, job.locale)),
                              without_mark(show_with_unit(b, job.locale)));
}

// In hundredths, with the language's mark.
std::string money(const Job& job, std::int64_t hundredths) {
    std::string rest = std::to_string(hundredths % 100);
    if (rest.size() < 2) rest.insert(0, 1, '0');
    return std::to_string(hundredths / 100) + std::string(job.locale.words().text("decimal.mark")) + rest;
}

const Stock& stock_of(const Job& job, const LaidStock& laid) { return *job.stock_named(laid.stock); }

Length widest_on(const LaidStock& laid, std::size_t size) {
    Length widest;
    for (const LaidPiece& piece : laid.pieces)
        if (piece.size == size)
            for (const LaidPart& part : piece.parts) widest = max(widest, part.area.width);
    return widest;
}

std::string how_good(const Job& job, const LaidStock& laid) {
    const Words& words = job.locale.words();
    const Stock& stock = stock_of(job, laid);
    const bool any_here = std::any_of(laid.pieces.begin(), laid.pieces.end(), [&](const LaidPiece& piece) {
        return is_here(stock.sizes.at(piece.size));
    });
    if (laid.proved)
        return words(laid.is_in_money ? "layout.cheapest"
                     : any_here       ? "layout.fewest_bought"
                                      : "layout.fewest");
    return laid.is_in_money ? words("layout.at_least_money", money(job, laid.least_cost))
                            : words("layout.at_least", laid.least_cost);
}

}  // namespace

std::string say_layout(const Job& job, const LaidStock& laid) {
    const Words& words = job.locale.words();
    const auto pieces = static_cast<long long>(laid.pieces.size());
    const std::string count = words.counted(laid.is_in_sheets ? "layout.sheets" : "layout.boards", pieces);
    const std::string percent = std::to_string(std::lround(100.0 * laid.yield));
    const std::string all = words("layout.how_good", count, how_good(job, laid), percent);
    return laid.is_in_money ? words("layout.with_cost", all, money(job, laid.cost)) : all;
}

std::vector<std::string> say_to_buy(const Job& job, const LaidStock& laid) {
    const Stock& stock = stock_of(job, laid);
    std::vector<std::string> out;
    for (std::size_t i = 0; i < stock.sizes.size(); ++i) {
        if (is_here(stock.sizes[i])) continue;
        const auto count = std::count_if(laid.pieces.begin(), laid.pieces.end(),
                                         [&](const LaidPiece& piece) { return piece.size == i; });
        if (count == 0) continue;
        std::string size = say_size(job, stock.sizes[i]);
        if (!laid.is_in_sheets)
            size = job.locale.words()("layout.at_least_wide", size,
                                      show_with_unit(widest_on(laid, i), job.locale));
        out.push_back(job.locale.words()("layout.to_buy", static_cast<long long>(count), size));
    }
    return out;
}

std::string say_size(const Job& job, const StockSize& size) {
    const Words& words = job.locale.words();
    const std::string measures = size.width ? two_lengths(job, size.length, *size.width)
                                            : words("layout.long", show_with_unit(size.length, job.locale));
    return size.is_offcut ? words("layout.offcut_of", measures) : measures;
}

std::vector<std::string> say_cuts(const Job& job, const LaidStock& laid, const LaidPiece& piece) {
    const Words& words = job.locale.words();
    const StockSize& size = stock_of(job, laid).sizes.at(piece.size);
    std::vector<std::string> out;
    if (size.trim > Length{})
        out.push_back(words(laid.is_in_sheets ? "layout.trim_edges" : "layout.trim_ends",
                            show_with_unit(size.trim, job.locale)));
    for (const cutting::Cut& cut : piece.cuts) {
        const std::string fence = show_with_unit(cut.fence, job.locale);
        if (!laid.is_in_sheets) out.push_back(words("layout.crosscut_next", fence));
        else
            out.push_back(
                words(cut.direction == cutting::CutDirection::rip ? "layout.rip" : "layout.crosscut", fence,
                      two_lengths(job, cut.of.length, cut.of.width)));
    }
    return out;
}

std::string say_rectangle(const Job& job, const cutting::Rectangle& area) {
    return two_lengths(job, area.length, area.width);
}

std::string say_place(const Job& job, const LaidPart& part) {
    const std::string size = two_lengths(job, part.is_turned ? part.area.width : part.area.length,
                                         part.is_turned ? part.area.length : part.area.width);
    return part.is_turned ? job.locale.words()("layout.turned", size) : size;
}

}  // namespace kw
