#include "cutting/pattern_bound.h"

#include <algorithm>
#include <cmath>

namespace kw::cutting {
namespace {

constexpr std::size_t most_kinds = 200;      // of pieces: the linear program grows with the square
constexpr std::size_t most_sums = 4000;      // of sizes
constexpr double most_cells = 4'000'000;     // of the table
constexpr double price_unit = 1 << 20;       // prices are rounded down to such parts of a sheet's
constexpr double kept_of_prices = 0.6;       // how much of the prices with the best bound is kept
constexpr std::int64_t fewest_pricings = 8;  // with all cuts: where so many don't last no bound comes of them
constexpr double least_use = 1e-3;           // of a pattern: rounded up only above it
constexpr std::int64_t looks_between_asks = 100'000;
constexpr double gain = 1e-4;  // a pattern worth less than that above a sheet changes nothing

std::vector<double> alone_on(const Region& sheet, const std::vector<Piece>& pieces) {
    std::vector<double> alone;
    for (const Piece& piece : pieces) {
        Ticks most = (sheet.length / piece.length) * (sheet.width / piece.width);
        if (piece.may_turn)
            most = std::max(most, (sheet.length / piece.width) * (sheet.width / piece.length));
        alone.push_back(static_cast<double>(most));
    }
    return alone;
}

Counts counts_in(const PackingTree& tree, std::size_t pieces) {
    Counts counts(pieces, 0);
    for (const TreeNode& node : tree.nodes())
        if (node.is_used && !node.is_group()) counts[static_cast<std::size_t>(node.piece)] += 1;
    return counts;
}

// Whole numbers: the bound holds for any prices, so that nothing hangs on what was rounded before.
std::int64_t bound_at(const std::vector<Piece>& pieces, const std::vector<std::int32_t>& prices,
                      std::int64_t most) {
    std::int64_t sum = 0;
    for (std::size_t p = 0; p < pieces.size(); ++p) sum += std::int64_t{pieces[p].count} * prices[p];
    return most > 0 ? (sum + most - 1) / most : 0;
}

std::vector<double> counts_of(const std::vector<Piece>& pieces) {
    std::vector<double> counts;
    for (const Piece& piece : pieces) counts.push_back(piece.count);
    return counts;
}

std::vector<double> between(const std::vector<double>& a, const std::vector<double>& b, double of_a) {
    std::vector<double> between;
    for (std::size_t i = 0; i < a.size(); ++i) between.push_back(of_a * a[i] + (1 - of_a) * b[i]);
    return between;
}

}  // namespace

std::optional<Patterns> Patterns::of(const Packing& packing) {
    if (packing.stocks.size() != 1 || packing.pieces.empty() || packing.pieces.size() > most_kinds)
        return std::nullopt;
    const Stock& stock = packing.stocks.front();
    if (stock.ways.size() != 1 || stock.ways.front().size() != 1) return std::nullopt;
    std::vector<Ticks> xs = raster_points(packing.pieces, stock.outer.length, true, most_sums);
    std::vector<Ticks> ys = raster_points(packing.pieces, stock.outer.width, false, most_sums);
    if (xs.empty() || ys.empty() ||
        static_cast<double>(xs.size()) * static_cast<double>(ys.size()) > most_cells)
        return std::nullopt;
    return Patterns(packing, std::move(xs), std::move(ys));
}

Patterns::Patterns(const Packing& packing, std::vector<Ticks> xs, std::vector<Ticks> ys)
    : pieces_(packing.pieces),
      sheet_(packing.stocks.front().outer),
      values_(packing.pieces, std::move(xs), std::move(ys)),
      alone_(alone_on(sheet_, packing.pieces)) {}

// No piece is worth more than its part of a sheet of such pieces alone: that is no less than a quarter of the sheet's part that it covers,
// and no pattern is worth more than four sheets.
std::vector<std::int32_t> Patterns::whole_prices(const std::vector<double>& prices) const {
    std::vector<std::int32_t> whole;
    for (std::size_t i = 0; i < prices.size(); ++i)
        whole.push_back(
            static_cast<std::int32_t>(std::min(1 / alone_[i], std::max(0.0, prices[i])) * price_unit));
    return whole;
}

// The pattern found last; its worth at other prices.
double Patterns::take_pattern(const std::vector<std::int32_t>& prices, const std::vector<double>& at) {
    PackingTree tree = values_.pattern(prices);
    Counts counts = counts_in(tree, pieces_.size());
    const double worth = worth_of(counts, at);
    if (worth > 1 + gain) {
        trees_.push_back(std::move(tree));
        counts_.push_back(std::move(counts));
    }
    return worth;
}

bool Patterns::is_to_end(const BoundWatch& watch) {
    if (!watch || is_stopped_ || steps_ < next_ask_) return is_stopped_;
    next_ask_ = steps_ + looks_between_asks * steps_a_look;
    return is_stopped_ = watch(bound_) == Searching::stop;
}

void Patterns::price(Covering& covering, const std::vector<double>& demand, CutsTried last,
                     std::int64_t enough, std::int64_t until, const BoundWatch& watch) {
    CutsTried cuts = CutsTried::strips;
    std::vector<double> centre;
    double best = 0;
    const auto rows = static_cast<std::int64_t>(demand.size());
    while (true) {
        covering.cover(counts_);
        const std::vector<double> now = covering.prices();
        bool is_held = !centre.empty();
        double worth = 0;
        while (worth <= 1 + gain) {
            const std::int64_t steps = values_.steps(cuts) + 8 * rows * rows + 1000;
            if (steps_ + steps > until || is_to_end(watch)) return;
            steps_ += steps;
            const std::vector<double> at = is_held ? between(centre, now, kept_of_prices) : now;
            const std::vector<std::int32_t> prices = whole_prices(at);
            const std::int64_t most = values_.most(prices, cuts);
            if (cuts == CutsTried::all) bound_ = std::max(bound_, bound_at(pieces_, prices, most));
            if (cuts == CutsTried::all &&
                (bound_ >= enough || static_cast<double>(bound_) >= covering.cost() - gain))
                return;
            const double bound =
                worth_of(demand, at) * price_unit / static_cast<double>(std::max<std::int64_t>(1, most));
            if (bound > best) best = bound, centre = at;
            worth = take_pattern(prices, now);
            if (worth > 1 + gain) break;
            if (is_held) {
                is_held = false;
            } else if (cuts == last) {
                return;
            } else {
                cuts = cuts == CutsTried::strips ? CutsTried::at_pieces : CutsTried::all;
                best = 0;
                is_held = false;
            }
        }
    }
}

std::int64_t Patterns::least_sheets(std::int64_t enough, std::int64_t looks, const BoundWatch& watch) {
    if (values_.steps(CutsTried::all) * fewest_pricings > looks * steps_a_look) return bound_;
    const std::vector<double> demand = counts_of(pieces_);
    Covering covering(demand, alone_);
    price(covering, demand, CutsTried::all, enough, steps_ + looks * steps_a_look, watch);
    return bound_;
}

std::vector<PackingTree> Patterns::round(std::int64_t looks, double few, const BoundWatch& watch) {
    const std::int64_t until = steps_ + looks * steps_a_look;
    std::vector<double> left = counts_of(pieces_);
    std::vector<PackingTree> sheets;
    const auto use = [&](std::size_t pattern) {
        sheets.push_back(trees_[pattern]);
        for (std::size_t i = 0; i < left.size(); ++i) left[i] = std::max(0.0, left[i] - counts_[pattern][i]);
    };
    while (true) {
        Covering covering(left, alone_);
        price(covering, left, CutsTried::strips, 0, until, watch);
        if (covering.cost() <= few || is_stopped_) return sheets;
        const std::vector<Covering::Use> uses = covering.uses();
        bool is_whole = false;
        std::size_t most = 0;
        for (std::size_t u = 0; u < uses.size(); ++u) {
            const auto whole = static_cast<std::size_t>(uses[u].amount + 1e-6);
            is_whole = is_whole || whole > 0;
            for (std::size_t i = 0; i < whole; ++i) use(uses[u].pattern);
            if (uses[u].amount > uses[most].amount) most = u;
        }
        if (is_whole) continue;
        if (uses.empty() || uses[most].amount < least_use) return sheets;
        use(uses[most].pattern);
    }
}

}  // namespace kw::cutting
