#include "job/breaking_down.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "job/on_hand.h"

namespace kw {
namespace {

constexpr std::size_t edges_of_sheet = 4, ends_of_board = 2;

BreakingSetting made_at(const LaidStock& laid, const LaidSetting& setting) {
    BreakingSetting made{setting, {}, 0, {}};
    for (const CutPlace& place : setting.cuts) {
        const LaidPiece& piece = laid.pieces[place.piece];
        const LaidCut& cut = piece.cuts[place.cut];
        for (const std::size_t part : cut.frees) made.frees.push_back(piece.parts[part].part);
        made.in_strips += cut.strip_for.size();
        if (cut.too_short) made.too_short = min(*cut.too_short, made.too_short.value_or(*cut.too_short));
    }
    return made;
}

std::size_t trims_of(const std::vector<StockSize>& sizes, const LaidStock& laid) {
    std::size_t trims = 0;
    for (const LaidPiece& piece : laid.pieces)
        if (sizes.at(piece.size).trim > Length{}) trims += laid.is_in_sheets ? edges_of_sheet : ends_of_board;
    return trims;
}

std::int64_t takes_s(const WorkTimes& times, std::size_t settings, std::size_t cuts) {
    return times.fence_s * static_cast<std::int64_t>(settings) +
           times.rough_cut_s * static_cast<std::int64_t>(cuts);
}

BreakingStock stock_broken_down(const Job& job, const LaidStock& laid) {
    BreakingStock stock{laid.stock, {}, {}};
    BreakingCount& count = stock.count;
    for (const LaidSetting& setting : laid.settings) stock.settings.push_back(made_at(laid, setting));
    count.settings = laid.settings.size();
    count.least_settings = laid.least_settings;
    for (const LaidPiece& piece : laid.pieces) count.cuts += piece.cuts.size();
    count.trims = trims_of(job.stock_named(laid.stock)->sizes, laid);
    count.seconds = takes_s(job.times, count.settings, count.cuts + count.trims);
    count.lower_bound_seconds = takes_s(job.times, count.least_settings, count.cuts + count.trims);
    return stock;
}

void add(const BreakingCount& one, BreakingCount& all) {
    all.settings += one.settings;
    all.least_settings += one.least_settings;
    all.cuts += one.cuts;
    all.trims += one.trims;
    all.seconds += one.seconds;
    all.lower_bound_seconds += one.lower_bound_seconds;
}

// Along and across the grain, as the parts lie on their sheet. A board is as wide as its parts at least, and no cut gives them their width.
struct CutOut {
    Length length;
    std::optional<Length> width;
};

std::map<std::string, CutOut> cut_out_of(const Job& job, const LayOut& layout) {
    std::map<std::string, CutOut> all;
    for (const LaidStock& laid : layout.stocks)
        for (const LaidPiece& piece : laid.pieces)
            for (const LaidPart& part : piece.parts) {
                CutOut out{part.area.length, part.area.width};
                if (part.is_turned) std::swap(out.length, *out.width);
                if (!laid.is_in_sheets) out.width.reset();
                all.emplace(part.part, out);
            }
    for (const FreedOf& one : layout.freed) {
        CutOut out{one.freed.length, one.freed.width};
        const Stock* const stock = job.stock_named(one.freed.stock);
        if (!stock || !is_in_sheets(*stock)) out.width.reset();
        all.emplace(one.part, out);
    }
    return all;
}

std::vector<AtSizeAlready> at_size_already(const Job& job, const Plan& plan, const LayOut& layout) {
    const std::map<std::string, CutOut> cut_out = cut_out_of(job, layout);
    std::vector<AtSizeAlready> all;
    for (const Setup& setup : plan.setups) {
        if (setup.stage == Stage::joint) continue;
        AtSizeAlready one{setup.id, {}};
        for (const Pass& pass : setup.passes) {
            const auto found = cut_out.find(pass.part);
            if (found == cut_out.end()) continue;
            const std::optional<Length> size =
                setup.stage == Stage::rip ? found->second.width : found->second.length;
            if (size == setup.fence) one.parts.push_back(pass.part);
        }
        if (!one.parts.empty()) all.push_back(std::move(one));
    }
    return all;
}

}  // namespace

BreakingDown breaking_down(const Job& job, const Plan& plan, const LayOut& layout) {
    BreakingDown down;
    for (const LaidStock& laid : layout.stocks) {
        if (laid.cannot) continue;
        down.stocks.push_back(stock_broken_down(job, laid));
        add(down.stocks.back().count, down.all);
    }
    down.at_size = at_size_already(job, plan, layout);
    return down;
}

}  // namespace kw
