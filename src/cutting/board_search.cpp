#include "cutting/board_search.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

namespace kw::cutting {
namespace {

constexpr std::size_t most_fills =
    4000;  // of one board: more than that are not all tried, and nothing is proved then
constexpr std::size_t most_states = 300'000;  // remembered as dead ends

struct Fill {
    std::size_t stock = 0;
    Ticks slack = 0;
    std::vector<std::pair<std::size_t, int>> parts;  // type and how many, the longest first
};

class BoardSearch {
public:
    BoardSearch(const Packing& packing, std::int64_t below, std::int64_t enough, const Effort& effort)
        : packing_(packing), below_(below), enough_(enough), effort_(effort) {
        types_.resize(packing.pieces.size());
        std::iota(types_.begin(), types_.end(), std::size_t{0});
        std::stable_sort(types_.begin(), types_.end(), [&packing](std::size_t a, std::size_t b) {
            return packing.pieces[a].length > packing.pieces[b].length;
        });
        for (const std::size_t type : types_) {
            sizes_.push_back(packing.pieces[type].length);
            left_.push_back(packing.pieces[type].count);
        }
        for (const Stock& stock : packing.stocks) {
            supply_.push_back(stock.supply);
            longest_ = std::max(longest_, stock.outer.length);
        }
        sort_stocks();
    }

    FilledBoards run() {
        // Few ways at each board first, so that a good layout is found before all is searched below a bad one.
        const std::int64_t all = effort_.looks;
        for (const std::size_t width :
             {std::size_t{1}, std::size_t{2}, std::size_t{4}, std::size_t{8}, most_fills}) {
            width_ = width;
            most_looks_ = width == most_fills ? all : looks_ + all / 16;
            is_cut_short_ = false;
            dead_ends_.clear();
            descend(0);
            if (is_done_ || !is_cut_short_) break;
        }
        best_.is_exhausted = !is_cut_short_;
        return std::move(best_);
    }

private:
    void sort_stocks();
    void descend(std::int64_t cost);
    void take(const Fill& fill, std::int64_t cost);
    std::int64_t bound() const;
    std::int64_t bound_by_length(Ticks demand) const;
    std::int64_t bound_by_count(std::int64_t boards) const;
    std::int64_t least_boards() const;
    std::vector<Fill> fills();
    void fill(std::size_t type, Fill& so_far, std::vector<Fill>& all);
    bool is_dominated(const Fill& fill) const;
    bool is_dead_end(std::int64_t cost);
    bool is_out() {
        if (!is_stopped_ && effort_.watch && looks_ >= next_tell_) {
            next_tell_ = looks_ + 200'000;
            is_stopped_ = effort_.watch(below_, enough_) == Searching::stop;
        }
        if (is_stopped_ || looks_ >= most_looks_) is_cut_short_ = true;
        return is_done_ || is_stopped_ || looks_ >= most_looks_;
    }

    const Packing& packing_;
    std::int64_t below_;
    std::int64_t enough_;
    const Effort& effort_;
    std::vector<std::size_t> types_;  // the pieces' indices, the longest first; all below is in that order
    std::vector<Ticks> sizes_;
    std::vector<int> left_;
    std::vector<int> supply_;                   // by stock
    std::vector<std::size_t> by_length_price_;  // stocks, cheapest for their length first
    std::vector<std::size_t> by_price_;
    Ticks longest_ = 0;
    std::vector<FilledBoard> path_;
    std::map<std::vector<int>, std::int64_t>
        dead_ends_;  // what is left and on hand -> the least cost it was met at
    FilledBoards best_;
    std::size_t width_ = 1;
    std::int64_t looks_ = 0;
    std::int64_t most_looks_ = 0;
    std::int64_t next_tell_ = 0;
    bool is_cut_short_ = false;
    bool is_stopped_ = false;
    bool is_done_ = false;
};

void BoardSearch::sort_stocks() {
    by_length_price_.resize(packing_.stocks.size());
    std::iota(by_length_price_.begin(), by_length_price_.end(), std::size_t{0});
    by_price_ = by_length_price_;
    const auto price = [this](std::size_t k) {
        return static_cast<double>(packing_.stocks[k].cost) /
               static_cast<double>(packing_.stocks[k].outer.length);
    };
    std::stable_sort(by_length_price_.begin(), by_length_price_.end(), [&](std::size_t a, std::size_t b) {
        return price(a) != price(b) ? price(a) < price(b)
                                    : packing_.stocks[a].outer.length > packing_.stocks[b].outer.length;
    });
    std::stable_sort(by_price_.begin(), by_price_.end(), [this](std::size_t a, std::size_t b) {
        return packing_.stocks[a].cost < packing_.stocks[b].cost;
    });
}

// Stock in parts, the cheapest first. In whole numbers where it matters: rounded up at the end, never before.
std::int64_t BoardSearch::bound_by_length(Ticks demand) const {
    double cost = 0;
    for (const std::size_t k : by_length_price_) {
        if (demand <= 0) break;
        const Stock& stock = packing_.stocks[k];
        const Ticks had =
            demand / stock.outer.length >= supply_[k] ? stock.outer.length * supply_[k] : demand;
        cost += static_cast<double>(stock.cost) * static_cast<double>(had) /
                static_cast<double>(stock.outer.length);
        demand -= had;
    }
    if (demand > 0) return std::numeric_limits<std::int64_t>::max() / 4;  // there is not stock enough
    const auto whole = static_cast<std::int64_t>(cost);
    return cost - static_cast<double>(whole) > 1e-6 ? whole + 1 : whole;
}

std::int64_t BoardSearch::bound_by_count(std::int64_t boards) const {
    std::int64_t cost = 0;
    for (const std::size_t k : by_price_) {
        const std::int64_t taken = std::min<std::int64_t>(boards, supply_[k]);
        cost += taken * packing_.stocks[k].cost;
        boards -= taken;
    }
    return boards > 0 ? std::numeric_limits<std::int64_t>::max() / 4 : cost;
}

// L2 of Martello and Toth, as if all boards were as long as the longest. Pieces down to each `least` are counted: those that
// leave less than `least` beside them, those of more than half a board, and what the rest needs beyond the room beside the latter.
std::int64_t BoardSearch::least_boards() const {
    std::int64_t most = 0;
    std::int64_t large = 0;  // more than half a board
    Ticks large_sum = 0;
    std::size_t t = 0;
    for (; t < sizes_.size() && 2 * sizes_[t] > longest_; ++t) {
        large += left_[t];
        large_sum += sizes_[t] * left_[t];
    }
    most = large;
    std::int64_t alone = large;  // of the large ones, those with less than `least` beside them
    Ticks alone_sum = large_sum;
    std::size_t a = t;
    Ticks small_sum = 0;
    for (; t < sizes_.size(); ++t) {
        if (left_[t] == 0) continue;
        small_sum += sizes_[t] * left_[t];
        while (a > 0 && sizes_[a - 1] <= longest_ - sizes_[t]) {
            --a;
            alone -= left_[a];
            alone_sum -= sizes_[a] * left_[a];
        }
        const Ticks room = (large - alone) * longest_ - (large_sum - alone_sum);
        const Ticks beyond = small_sum - room;
        if (beyond > 0) most = std::max(most, large + (beyond + longest_ - 1) / longest_);
    }
    return most;
}

std::int64_t BoardSearch::bound() const {
    Ticks demand = 0;
    for (std::size_t t = 0; t < sizes_.size(); ++t) demand += sizes_[t] * left_[t];
    return std::max(bound_by_length(demand), bound_by_count(least_boards()));
}

bool BoardSearch::is_dead_end(std::int64_t cost) {
    std::vector<int> key = left_;
    if (packing_.stocks.size() > 1) key.insert(key.end(), supply_.begin(), supply_.end());
    const auto found = dead_ends_.find(key);
    if (found != dead_ends_.end()) {
        if (found->second <= cost) return true;
        found->second = cost;
    } else if (dead_ends_.size() < most_states) {
        dead_ends_.emplace(std::move(key), cost);
    }
    return false;
}

void BoardSearch::descend(std::int64_t cost) {
    if (std::all_of(left_.begin(), left_.end(), [](int n) { return n == 0; })) {
        if (cost >= below_) return;
        best_.boards = path_;
        best_.cost = below_ = cost;
        is_done_ = cost <= enough_;
        return;
    }
    looks_ += static_cast<std::int64_t>(sizes_.size());
    if (is_out() || cost + bound() >= below_ || is_dead_end(cost)) return;
    std::vector<Fill> ways = fills();
    if (ways.size() > width_) {
        ways.resize(width_);
        is_cut_short_ = true;
    }
    for (const Fill& way : ways) {
        take(way, cost);
        if (is_out()) return;
    }
}

void BoardSearch::take(const Fill& fill, std::int64_t cost) {
    FilledBoard board{fill.stock, {}};
    for (const auto& [type, count] : fill.parts) {
        left_[type] -= count;
        board.pieces.insert(board.pieces.end(), static_cast<std::size_t>(count),
                            static_cast<int>(types_[type]));
    }
    --supply_[fill.stock];
    path_.push_back(std::move(board));
    descend(cost + packing_.stocks[fill.stock].cost);
    path_.pop_back();
    ++supply_[fill.stock];
    for (const auto& [type, count] : fill.parts) left_[type] += count;
}

// All fills with the longest piece left that nothing more fits into and no other fill is at least as good as. Fullest first.
std::vector<Fill> BoardSearch::fills() {
    std::size_t longest = 0;
    while (left_[longest] == 0) ++longest;
    std::vector<Fill> all;
    for (const std::size_t k : by_length_price_) {
        if (supply_[k] == 0 || packing_.stocks[k].outer.length < sizes_[longest]) continue;
        Fill first{k, packing_.stocks[k].outer.length - sizes_[longest], {{longest, 1}}};
        --left_[longest];
        std::vector<Fill> of_stock;
        fill(longest, first, of_stock);
        ++left_[longest];
        std::stable_sort(of_stock.begin(), of_stock.end(),
                         [](const Fill& a, const Fill& b) { return a.slack < b.slack; });
        all.insert(all.end(), of_stock.begin(), of_stock.end());
    }
    return all;
}

// `left_` has been lessened by the first piece; the others in `so_far` are still in it.
void BoardSearch::fill(std::size_t type, Fill& so_far, std::vector<Fill>& all) {
    ++looks_;
    if (all.size() > most_fills || looks_ >= most_looks_) {
        is_cut_short_ = true;
        return;
    }
    while (type < sizes_.size() && (left_[type] == 0 || sizes_[type] > so_far.slack)) ++type;
    if (type == sizes_.size()) {
        if (!is_dominated(so_far)) all.push_back(so_far);
        return;
    }
    const auto most = static_cast<int>(std::min<Ticks>(left_[type], so_far.slack / sizes_[type]));
    const bool is_first = so_far.parts.back().first == type;  // one of them was put in at the start
    if (!is_first) so_far.parts.emplace_back(type, 0);
    const int had = so_far.parts.back().second;
    for (int n = most; n > 0; --n) {
        so_far.parts.back().second = had + n;
        so_far.slack -= n * sizes_[type];
        fill(type + 1, so_far, all);
        so_far.slack += n * sizes_[type];
    }
    so_far.parts.back().second = had;
    if (!is_first) so_far.parts.pop_back();
    fill(type + 1, so_far, all);
}

// Something more would fit, or a longer piece in the place of a shorter one: what is put off then is no harder to place.
bool BoardSearch::is_dominated(const Fill& fill) const {
    std::size_t part = 0;
    Ticks longer = 0;  // the next longer one that is left
    Ticks shortest_left = 0;
    for (std::size_t t = fill.parts.front().first; t < sizes_.size(); ++t) {
        int used = 0;
        if (part < fill.parts.size() && fill.parts[part].first == t) {
            used = fill.parts[part].second - (part == 0 ? 1 : 0);  // the first piece is in every fill
            ++part;
        }
        if (used > 0 && longer > 0 && longer - sizes_[t] <= fill.slack) return true;
        if (left_[t] - used > 0) longer = shortest_left = sizes_[t];
    }
    return shortest_left > 0 && shortest_left <= fill.slack;
}

}  // namespace

FilledBoards search_boards(const Packing& packing, std::int64_t below, std::int64_t enough,
                           const Effort& effort) {
    return BoardSearch(packing, below, enough, effort).run();
}

}  // namespace kw::cutting
