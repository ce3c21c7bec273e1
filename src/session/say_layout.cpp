#include "session/say_layout.h"

#include <algorithm>
#include <cmath>

#include "job/laid_cuts.h"
#include "session/words.h"
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

// Boards of solid wood and of what has no width; an offcut is neither a board nor a sheet.
const char* count_key(const Job& job, const LaidStock& laid) {
    const Stock& stock = stock_of(job, laid);
    if (std::any_of(laid.pieces.begin(), laid.pieces.end(),
                    [&](const LaidPiece& piece) { return stock.sizes.at(piece.size).is_offcut; }))
        return "layout.pieces";
    return laid.is_in_sheets && stock.kind != StockKind::solid ? "layout.sheets" : "layout.boards";
}

std::string say_cut(const Job& job, const LaidStock& laid, const LaidCut& cut) {
    const Words& words = job.locale.words();
    const std::string fence = show_with_unit(cut.fence, job.locale);
    if (!laid.is_in_sheets) return words("layout.crosscut_next", fence);
    return words(cut.direction == cutting::CutDirection::rip ? "layout.rip" : "layout.crosscut", fence,
                 two_lengths(job, cut.of.length, cut.of.width));
}

// By the numbers that the parts have in the picture.
std::string numbers_of(const Job& job, const std::vector<std::size_t>& parts) {
    std::vector<std::string> numbers;
    for (const std::size_t part : parts) numbers.push_back(std::to_string(part + 1));
    return job.locale.words().list(numbers);
}

std::string say_at_fence(const Job& job, const LaidCut& cut) {
    if (!cut.at_fence) return {};
    const Words& words = job.locale.words();
    const CutSide& side = *cut.at_fence;
    const bool is_rip = cut.direction == cutting::CutDirection::rip;
    const std::string parts = numbers_of(job, side.parts);
    std::string said;
    switch (side.use) {
        case cutting::CutUse::piece: said = words("layout.side.part", parts); break;
        case cutting::CutUse::cut:
            said = words(side.is_strip ? "layout.side.strip" : "layout.side.piece", parts);
            break;
        case cutting::CutUse::offcut: said = words("layout.side.offcut"); break;
        case cutting::CutUse::waste: said = words("layout.side.waste"); break;
    }
    return words(is_rip ? "layout.by_fence" : "layout.by_stop", said);
}

std::string say_beyond(const Job& job, const LaidCut& cut, bool in_sheets) {
    if (!cut.beyond) return {};
    const Words& words = job.locale.words();
    const CutSide& side = *cut.beyond;
    const std::string parts = numbers_of(job, side.parts);
    switch (side.use) {
        case cutting::CutUse::piece: return words("layout.beyond", words("layout.side.part", parts));
        case cutting::CutUse::cut:
            if (side.is_strip) return words("layout.beyond", words("layout.side.strip", parts));
            return in_sheets ? words("layout.goes_on", two_lengths(job, side.area.length, side.area.width))
                             : words("layout.rest_goes_on");
        case cutting::CutUse::offcut: return words("layout.beyond", words("layout.side.offcut"));
        case cutting::CutUse::waste: return words("layout.beyond", words("layout.side.waste"));
    }
    return {};
}

std::string say_sides(const Job& job, const LaidCut& cut, bool in_sheets, const std::string& said) {
    const Words& words = job.locale.words();
    const std::string at_fence = say_at_fence(job, cut), beyond = say_beyond(job, cut, in_sheets);
    if (at_fence.empty()) return said;
    return beyond.empty() ? words("layout.side", said, at_fence)
                          : words("layout.sides", said, at_fence, beyond);
}

}  // namespace

std::string say_layout(const Job& job, const LaidStock& laid) {
    const Words& words = job.locale.words();
    const auto pieces = static_cast<long long>(laid.pieces.size());
    const std::string count = words.counted(count_key(job, laid), pieces);
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

std::vector<SaidCut> say_cuts(const Job& job, const LaidStock& laid, const LaidPiece& piece) {
    const Words& words = job.locale.words();
    const StockSize& size = stock_of(job, laid).sizes.at(piece.size);
    std::vector<SaidCut> out;
    if (size.trim > Length{})
        out.push_back({words(laid.is_in_sheets ? "layout.trim_edges" : "layout.trim_ends",
                             show_with_unit(size.trim, job.locale)),
                       {}});
    const auto safe = safe_length(job);
    for (std::size_t i = 0; i < piece.cuts.size(); ++i) {
        const LaidCut& cut = piece.cuts[i];
        SaidCut said{words("layout.cut_numbered", i + 1,
                           say_sides(job, cut, laid.is_in_sheets, say_cut(job, laid, cut))),
                     {}};
        if (cut.too_short && safe)
            said.caution = words("layout.short_piece", show_with_unit(*cut.too_short, job.locale),
                                 safe->machine, show_with_unit(safe->least, job.locale));
        out.push_back(std::move(said));
    }
    return out;
}

std::vector<std::string> say_settings(const Job& job, const LaidStock& laid) {
    const Words& words = job.locale.words();
    if (laid.settings.empty()) return {};
    const std::string all =
        laid.settings.size() == laid.least_settings
            ? words("layout.settings_proved", laid.settings.size())
            : words("layout.settings_at_least", laid.settings.size(), laid.least_settings);
    std::vector<std::string> out{all + " (" + words("layout.settings_how") + ")"};
    for (const LaidSetting& setting : laid.settings) {
        std::string cuts;
        for (const CutPlace& place : setting.cuts)
            cuts += (cuts.empty() ? "" : ", ") + std::to_string(place.piece + 1) + "." +
                    std::to_string(place.cut + 1);
        out.push_back(words(setting.direction == cutting::CutDirection::rip ? "layout.setting_rip"
                                                                            : "layout.setting_crosscut",
                            show_with_unit(setting.fence, job.locale), cuts));
    }
    return out;
}

std::string say_cut_already(const Job& job, const LayOut& layout) {
    const auto count = static_cast<long long>(layout.cut_already.size() - layout.freed.size());
    return count == 0 ? std::string() : job.locale.words().counted("layout.cut_already", count);
}

std::vector<std::string> say_freed(const Job& job, const Plan& plan, const LayOut& layout, SetupNames names) {
    const Words& words = job.locale.words();
    std::vector<std::string> said;
    if (const auto count = static_cast<long long>(layout.freed.size()); count > 0)
        said.push_back(words.counted("layout.freed", count));
    for (const FreedOf& one : layout.too_small) {
        const Part& part = *plan.part_with_id(one.part);
        const std::string name =
            names == SetupNames::ids ? words("entry.part", one.part) : say_part(words, plan, one.part);
        said.push_back(part.stock != one.freed.stock
                           ? words("layout.freed_of_other", name, one.freed.stock, part.stock)
                           : words("layout.freed_too_small", name,
                                   two_lengths(job, one.freed.length, one.freed.width),
                                   two_lengths(job, part.size.length, part.size.width)));
    }
    return said;
}

std::string say_on_hand(const Job& job, const std::string& stock) {
    const Words& words = job.locale.words();
    const Stock* const of = job.stock_named(stock);
    const bool is_told = std::any_of(job.log.begin(), job.log.end(), [&](const LogEntry& entry) {
        return entry.broken_down && entry.broken_down->stock == stock;
    });
    if (!of || !is_told) return {};
    bool any_counted = false;
    std::vector<std::string> all;
    for (const StockSize& size : of->sizes) {
        any_counted = any_counted || size.count;
        // That is one already: "offcut of 30 × 20 in".
        if (size.is_offcut && size.count == 1) {
            all.push_back(say_size(job, size));
            continue;
        }
        if (size.count.value_or(0) > 0)
            all.push_back(words("layout.to_buy", *size.count, say_size(job, size)));
    }
    if (!any_counted) return {};
    return all.empty() ? words("stock.none_left") : words("stock.left", words.list(all, "list.comma"));
}

std::string say_nothing_laid_out(const Job& job, const LayOut& layout) {
    const Words& words = job.locale.words();
    return layout.without_size.empty() && !layout.cut_already.empty()
               ? words("layout.all_cut")
               : words("layout.no_sizes", words.list(layout.without_size));
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
