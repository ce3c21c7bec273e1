#include "cutting/pattern_bound.h"

#include <algorithm>

#include "cutting/covering.h"
#include "cutting/pattern_value.h"

namespace kw::cutting {
namespace {

constexpr std::size_t most_kinds = 150;    // of pieces: the linear program grows with the square
constexpr std::size_t most_sums = 4000;    // of sizes
constexpr std::int64_t steps_a_look = 40;  // of the recursion, in the time of a look
constexpr double price_unit = 1 << 18;     // prices are rounded down to such parts of a sheet's
constexpr double most_on_a_sheet = 8000;   // pieces: their prices add up within 32 bits

std::vector<double> alone_on(const Region& sheet, const std::vector<Piece>& pieces) {
    std::vector<double> alone;
    for (const Piece& piece : pieces) {
        Ticks most = (sheet.length / piece.length) * (sheet.width / piece.width);
        if (piece.may_turn)
            most = std::max(most, (sheet.length / piece.width) * (sheet.width / piece.length));
        alone.push_back(static_cast<double>(std::min<Ticks>(most, piece.count)));
    }
    return alone;
}

std::vector<double> counts_in(const PackingTree& tree, std::size_t pieces) {
    std::vector<double> counts(pieces, 0);
    for (const TreeNode& node : tree.nodes())
        if (node.is_used && !node.is_group()) counts[static_cast<std::size_t>(node.piece)] += 1;
    return counts;
}

bool are_too_small(const Region& sheet, const std::vector<Piece>& pieces) {
    const double area = static_cast<double>(sheet.length) * static_cast<double>(sheet.width);
    return std::any_of(pieces.begin(), pieces.end(), [area](const Piece& piece) {
        return most_on_a_sheet * static_cast<double>(piece.length) * static_cast<double>(piece.width) < area;
    });
}

// Whole numbers from here on: the bound holds for any prices, so that nothing hangs on what was rounded before.
std::int64_t bound_at(const std::vector<Piece>& pieces, const std::vector<std::int32_t>& prices,
                      std::int64_t most) {
    std::int64_t sum = 0;
    for (std::size_t p = 0; p < pieces.size(); ++p) sum += std::int64_t{pieces[p].count} * prices[p];
    return most > 0 ? (sum + most - 1) / most : 0;
}

}  // namespace

PatternBound least_cost_by_patterns(const Packing& packing, std::int64_t enough, std::int64_t looks) {
    if (packing.stocks.size() != 1 || packing.pieces.empty() || packing.pieces.size() > most_kinds) return {};
    const Stock& stock = packing.stocks.front();
    if (stock.ways.size() != 1 || stock.ways.front().size() != 1 ||
        are_too_small(stock.outer, packing.pieces))
        return {};
    std::vector<Ticks> xs = raster_points(packing.pieces, stock.outer.length, true, most_sums);
    std::vector<Ticks> ys = raster_points(packing.pieces, stock.outer.width, false, most_sums);
    if (xs.empty() || ys.empty()) return {};
    PatternValue values(packing.pieces, std::move(xs), std::move(ys));
    std::vector<double> demand;
    for (const Piece& piece : packing.pieces) demand.push_back(piece.count);
    Covering covering(demand, alone_on(stock.outer, packing.pieces));
    std::int64_t sheets = 0;
    std::vector<PackingTree> patterns;
    for (std::int64_t left = looks * steps_a_look; left >= values.steps();) {
        const auto rows = static_cast<std::int64_t>(demand.size());
        left -= values.steps() + 4 * rows * rows + 1000;
        std::vector<std::int32_t> prices;
        for (const double price : covering.prices())
            prices.push_back(static_cast<std::int32_t>(std::min(1.0, std::max(0.0, price)) * price_unit));
        const std::int64_t most = values.most(prices);
        sheets = std::max(sheets, bound_at(packing.pieces, prices, most));
        const bool is_best = static_cast<double>(most) <= price_unit * (1 + 1e-4);
        if (sheets * stock.cost >= enough || is_best) break;
        patterns.push_back(values.pattern(prices));
        if (!covering.improve(counts_in(patterns.back(), demand.size()),
                              static_cast<int>(patterns.size()) - 1))
            break;
    }
    PatternBound bound{sheets * stock.cost, {}};
    for (const Covering::Use& use : covering.uses())
        bound.whole.insert(bound.whole.end(), static_cast<std::size_t>(use.amount + 1e-6),
                           patterns[static_cast<std::size_t>(use.name)]);
    return bound;
}

}  // namespace kw::cutting
