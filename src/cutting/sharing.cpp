#include "cutting/sharing.h"

#include <algorithm>

namespace kw::cutting {
namespace {

constexpr std::size_t most_kinds = 200;  // of pieces, the largest: every two are looked at

struct Lain {
    Ticks length = 0, width = 0;
};

std::vector<Lain> ways_of(const Piece& piece) {
    std::vector<Lain> ways{{piece.length, piece.width}};
    if (piece.may_turn) ways.push_back({piece.width, piece.length});
    return ways;
}

bool share(const Piece& a, const Piece& b, const Region& sheet) {
    for (const Lain& one : ways_of(a))
        for (const Lain& other : ways_of(b)) {
            const bool beside =
                one.length + other.length <= sheet.length && std::max(one.width, other.width) <= sheet.width;
            const bool above =
                one.width + other.width <= sheet.width && std::max(one.length, other.length) <= sheet.length;
            if (beside || above) return true;
        }
    return false;
}

struct Apart {
    std::int64_t count = 0;
    std::int64_t cost = 0;  // each on the cheapest that takes it, however few of those there are
};

class Sharing {
public:
    explicit Sharing(const Packing& packing) : packing_(packing) {
        for (std::size_t p = 0; p < packing.pieces.size(); ++p)
            if (packing.pieces[p].count > 0) kinds_.push_back(p);
        std::stable_sort(kinds_.begin(), kinds_.end(), [&](std::size_t a, std::size_t b) {
            return area(packing.pieces[a]) > area(packing.pieces[b]);
        });
        if (kinds_.size() > most_kinds) kinds_.resize(most_kinds);
    }

    // The set that begins with each kind in turn, and takes the largest that goes with all it has.
    std::vector<Apart> all() const {
        std::vector<Apart> all;
        for (const std::size_t first : kinds_) all.push_back(from(first));
        return all;
    }

private:
    static double area(const Piece& piece) {
        return static_cast<double>(piece.length) * static_cast<double>(piece.width);
    }

    bool can_share(std::size_t a, std::size_t b) const {
        return std::any_of(packing_.stocks.begin(), packing_.stocks.end(), [&](const Stock& stock) {
            return stock.supply > 0 && share(packing_.pieces[a], packing_.pieces[b], stock.outer);
        });
    }

    Apart from(std::size_t first) const {
        std::vector<std::size_t> taken;
        Apart apart;
        const auto take = [&](std::size_t kind) {
            taken.push_back(kind);
            const std::int64_t count = can_share(kind, kind) ? 1 : packing_.pieces[kind].count;
            apart.count += count;
            apart.cost += count * cheapest_for(kind);
        };
        take(first);
        for (const std::size_t kind : kinds_)
            if (kind != first && std::none_of(taken.begin(), taken.end(),
                                              [&](std::size_t other) { return can_share(kind, other); }))
                take(kind);
        return apart;
    }

    std::int64_t cheapest_for(std::size_t kind) const {
        std::int64_t least = -1;
        for (const Stock& stock : packing_.stocks)
            if (stock.supply > 0 && stock.takes(packing_.pieces[kind]) && (least < 0 || stock.cost < least))
                least = stock.cost;
        return std::max<std::int64_t>(0, least);
    }

    const Packing& packing_;
    std::vector<std::size_t> kinds_;
};

// So many of the cheapest; of all where there are fewer.
std::int64_t cost_of_cheapest(std::int64_t count, const Packing& packing) {
    std::vector<Stock> stocks = packing.stocks;
    std::sort(stocks.begin(), stocks.end(), [](const Stock& a, const Stock& b) { return a.cost < b.cost; });
    std::int64_t cost = 0;
    for (const Stock& stock : stocks) {
        const std::int64_t taken = std::min<std::int64_t>(count, stock.supply);
        cost += taken * stock.cost;
        count -= taken;
    }
    return cost;
}

}  // namespace

std::int64_t least_cost_apart(const Packing& packing) {
    std::int64_t least = 0;
    for (const Apart& apart : Sharing(packing).all())
        least = std::max({least, apart.cost, cost_of_cheapest(apart.count, packing)});
    return least;
}

bool are_too_many_apart(const Packing& packing) {
    std::int64_t supply = 0;
    for (const Stock& stock : packing.stocks) supply += stock.supply;
    const std::vector<Apart> all = Sharing(packing).all();
    return std::any_of(all.begin(), all.end(), [&](const Apart& apart) { return apart.count > supply; });
}

}  // namespace kw::cutting
