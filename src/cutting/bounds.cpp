#include "cutting/bounds.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "cutting/sharing.h"

namespace kw::cutting {
namespace {

constexpr double rounding =
    1e-6;  // sums of doubles stay within it, and a bound is only ever rounded down by it
constexpr std::size_t most_steps =
    40;  // parameters tried of each family, evenly among the sizes that there are
constexpr int most_parts = 12;

using Weights = std::vector<double>;  // by piece

double ratio(Ticks a, Ticks b) { return static_cast<double>(a) / static_cast<double>(b); }

// x counts the whole number of parts of 1/(k + 1) that it holds, each as 1/k; an exact multiple as it is.
double weight_by_parts(Ticks x, Ticks capacity, int k) {
    const Ticks scaled = x * (k + 1);
    if (scaled % capacity == 0) return ratio(x, capacity);
    const Ticks parts = scaled / capacity;
    return static_cast<double>(parts) / k;
}

// What is within `step` of the whole counts as the whole, what is smaller than `step` as nothing.
double weight_rounded(Ticks x, Ticks capacity, Ticks step) {
    if (x > capacity - step) return 1;
    return x < step ? 0 : ratio(x, capacity);
}

// Counted in steps, of which `capacity` holds a whole number: more than half as what it leaves of them.
double weight_in_steps(Ticks x, Ticks capacity, Ticks step) {
    const Ticks steps = capacity / step;
    if (2 * x > capacity) return ratio(steps - (capacity - x) / step, steps);
    return x < step ? 0 : ratio(1, steps);
}

std::vector<Ticks> steps_among(const std::vector<Ticks>& sizes, Ticks capacity) {
    std::set<Ticks> all;
    for (const Ticks size : sizes)
        for (const Ticks step : {size, capacity - size, capacity - size + 1})
            if (step > 0 && 2 * step <= capacity) all.insert(step);
    const std::vector<Ticks> sorted(all.begin(), all.end());
    if (sorted.size() <= most_steps) return sorted;
    std::vector<Ticks> some;
    for (std::size_t i = 0; i < most_steps; ++i) some.push_back(sorted[i * sorted.size() / most_steps]);
    return some;
}

std::vector<Weights> all_weights(const std::vector<Ticks>& sizes, Ticks capacity) {
    std::vector<Weights> all;
    const auto add = [&all, &sizes](auto&& weight) {
        Weights weights;
        for (const Ticks size : sizes) weights.push_back(weight(size));
        if (std::find(all.begin(), all.end(), weights) == all.end()) all.push_back(std::move(weights));
    };
    add([capacity](Ticks x) { return ratio(x, capacity); });
    for (int k = 1; k <= most_parts; ++k)
        add([capacity, k](Ticks x) { return weight_by_parts(x, capacity, k); });
    for (const Ticks step : steps_among(sizes, capacity)) {
        add([capacity, step](Ticks x) { return weight_rounded(x, capacity, step); });
        add([capacity, step](Ticks x) { return weight_in_steps(x, capacity, step); });
    }
    return all;
}

struct Capacity {
    double holds = 1;
    std::int64_t cost = 1;
    int supply = unlimited;
};

// The least that holds `demand`, where stock may be had in parts; whole money, so rounded up.
std::int64_t least_cost_of(double demand, std::vector<Capacity> stocks) {
    std::sort(stocks.begin(), stocks.end(), [](const Capacity& a, const Capacity& b) {
        return static_cast<double>(a.cost) * b.holds < static_cast<double>(b.cost) * a.holds;
    });
    double cost = 0;
    for (const Capacity& stock : stocks) {
        if (demand <= rounding) break;
        const double wanted = std::min(demand / stock.holds, static_cast<double>(stock.supply));
        cost += wanted * static_cast<double>(stock.cost);
        demand -= wanted * stock.holds;
    }
    return static_cast<std::int64_t>(std::ceil(cost * (1 - 1e-12) - rounding));
}

struct Outer {
    Ticks length = 0;
    Ticks width = 0;
    double area = 0;
};

Outer outer_of(const Stock& stock) {
    return {stock.outer.length, stock.outer.width,
            static_cast<double>(stock.outer.length) * static_cast<double>(stock.outer.width)};
}

class Bound {
public:
    explicit Bound(const Packing& packing) : packing_(packing) {
        for (const Stock& stock : packing.stocks) {
            length_ = std::max(length_, stock.outer.length);
            width_ = std::max(width_, stock.outer.width);
        }
    }

    std::int64_t by_area() const {
        double demand = 0;
        for (const Piece& piece : packing_.pieces)
            demand += piece.count * static_cast<double>(piece.length) * static_cast<double>(piece.width);
        std::vector<Capacity> stocks;
        const double largest = static_cast<double>(length_) * static_cast<double>(width_);
        for (const Stock& stock : packing_.stocks)
            stocks.push_back({outer_of(stock).area / largest, stock.cost, stock.supply});
        return least_cost_of(demand / largest, stocks);
    }

    std::int64_t by_weights() const {
        std::vector<Capacity> stocks;
        for (const Stock& stock : packing_.stocks) stocks.push_back({1, stock.cost, stock.supply});
        return least_cost_of(std::ceil(most_demand() - rounding), stocks);
    }

    // Whether so much is asked that not all stock together holds it.
    bool is_too_much() const {
        double area = 0, held = 0, sheets = 0;
        for (const Piece& piece : packing_.pieces)
            area += piece.count * static_cast<double>(piece.length) * static_cast<double>(piece.width);
        for (const Stock& stock : packing_.stocks) {
            held += static_cast<double>(stock.supply) * outer_of(stock).area;
            sheets += static_cast<double>(stock.supply);
        }
        return area > held * (1 + rounding) || most_demand() - rounding > sheets;
    }

private:
    // In sheets, by whichever weights ask for most.
    double most_demand() const {
        std::vector<Ticks> lengths;
        std::vector<Ticks> widths;
        for (const Piece& piece : packing_.pieces) {
            lengths.push_back(piece.length);
            widths.push_back(piece.width);
        }
        // A piece that may turn has whichever weight is less, which is looked up behind the others.
        for (const Piece& piece : packing_.pieces) {
            lengths.push_back(std::min(piece.width, length_));
            widths.push_back(std::min(piece.length, width_));
        }
        const std::vector<Weights> of_lengths = all_weights(lengths, length_);
        const std::vector<Weights> of_widths = all_weights(widths, width_);
        double most = 0;
        for (const Weights& f : of_lengths)
            for (const Weights& g : of_widths) most = std::max(most, demand(f, g));
        return most;
    }

    double demand(const Weights& f, const Weights& g) const {
        double sum = 0;
        const std::size_t n = packing_.pieces.size();
        for (std::size_t p = 0; p < n; ++p) {
            const Piece& piece = packing_.pieces[p];
            double weight = f[p] * g[p];
            if (piece.may_turn) weight = std::min(weight, turned(p, f[n + p] * g[n + p], weight));
            sum += piece.count * weight;
        }
        return sum;
    }
    // A piece that can't lie so on any sheet weighs as it must lie, and the other way round.
    double turned(std::size_t p, double weight, double straight) const {
        const Piece& piece = packing_.pieces[p];
        return piece.width <= length_ && piece.length <= width_ ? weight : straight;
    }

    const Packing& packing_;
    Ticks length_ = 1;
    Ticks width_ = 1;
};

std::int64_t least_of(const Packing& packing) {
    const Bound bound(packing);
    return payable(std::max(bound.by_area(), bound.by_weights()), packing);
}

using Takers = std::vector<bool>;  // by stock

Takers takers_of(const Piece& piece, const Packing& packing) {
    Takers takers;
    for (const Stock& stock : packing.stocks) takers.push_back(stock.supply > 0 && stock.takes(piece));
    return takers;
}

bool are_within(const Takers& some, const Takers& others) {
    for (std::size_t k = 0; k < some.size(); ++k)
        if (some[k] && !others[k]) return false;
    return true;
}

// Of the pieces that no stock but these takes, on these: the other stocks cost no less than nothing, and the other pieces neither.
std::int64_t least_on(const Takers& takers, const std::vector<Takers>& by_piece, const Packing& packing) {
    Packing part;
    for (std::size_t p = 0; p < by_piece.size(); ++p)
        if (packing.pieces[p].count > 0 && are_within(by_piece[p], takers))
            part.pieces.push_back(packing.pieces[p]);
    for (std::size_t k = 0; k < takers.size(); ++k)
        if (takers[k]) part.stocks.push_back(packing.stocks[k]);
    if (part.pieces.empty() || part.stocks.empty()) return 0;
    std::int64_t one = part.stocks.front().cost;
    for (const Stock& stock : part.stocks) one = std::min(one, stock.cost);
    return std::max(one, least_of(part));
}

// Where what costs nothing can't hold all of it, one at least is paid for. Such stock is on hand, and there is only so much of it.
std::int64_t least_beyond_free(const Packing& packing) {
    Packing free{packing.pieces, {}};
    std::int64_t one = std::numeric_limits<std::int64_t>::max();
    for (const Stock& stock : packing.stocks) {
        if (stock.supply <= 0) continue;
        if (stock.cost == 0) free.stocks.push_back(stock);
        else one = std::min(one, stock.cost);
    }
    const bool any_paid = one < std::numeric_limits<std::int64_t>::max();
    if (free.stocks.empty() || !any_paid) return 0;
    const bool takes_all = std::all_of(free.pieces.begin(), free.pieces.end(), [&](const Piece& piece) {
        return piece.count <= 0 || std::any_of(free.stocks.begin(), free.stocks.end(),
                                               [&](const Stock& stock) { return stock.takes(piece); });
    });
    return takes_all && !Bound(free).is_too_much() && !are_too_many_apart(free) ? 0 : one;
}

}  // namespace

std::int64_t least_cost(const Packing& packing) {
    std::vector<Takers> by_piece;
    for (const Piece& piece : packing.pieces) by_piece.push_back(takers_of(piece, packing));
    std::int64_t least = least_of(packing);
    if (packing.stocks.size() > 1)
        for (const Takers& takers : std::set<Takers>(by_piece.begin(), by_piece.end()))
            least = std::max(least, least_on(takers, by_piece, packing));
    least = std::max({least, least_cost_apart(packing), least_beyond_free(packing)});
    return payable(least, packing);
}

std::int64_t payable(std::int64_t cost, const Packing& packing) {
    std::int64_t step = 0;
    for (const Stock& stock : packing.stocks) step = std::gcd(step, stock.cost);
    return step > 0 ? (cost + step - 1) / step * step : cost;
}

}  // namespace kw::cutting
