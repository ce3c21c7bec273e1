#include "cutting/repack.h"

#include <algorithm>
#include <numeric>

#include "cutting/repacking.h"

namespace kw::cutting {

bool Sheet::is_empty() const {
    for (const PackingTree& region : regions)
        if (!region.is_empty()) return false;
    return true;
}

Repacking::Repacking(const Packing& packing, const RepackGoal& goal, const Effort& effort)
    : packing_(packing), goal_(goal), effort_(effort), chance_(goal.seed) {
    measure();
    rank();
    used_.assign(packing.stocks.size(), 0);
    for (std::size_t p = 0; p < packing.pieces.size(); ++p)
        for (int i = 0; i < packing.pieces[p].count; ++i) out(static_cast<int>(p));
}

Packed Repacking::run() {
    recreate(0);
    note_best();
    take_if_complete();
    start_history();
    while (!is_done_ && looks_ < effort_.looks) round();
    best_.looks = looks_;
    return std::move(best_);
}

void Repacking::measure() {
    double most_area = 1;
    least_length_ = least_width_ = std::numeric_limits<Ticks>::max();
    double value = 0;
    double area_of_pieces = 0;
    for (const Piece& piece : packing_.pieces) {
        const Ticks shorter = std::min(piece.length, piece.width);
        least_length_ = std::min(least_length_, piece.may_turn ? shorter : piece.length);
        least_width_ = std::min(least_width_, piece.may_turn ? shorter : piece.width);
        value += piece.count * static_cast<double>(piece.value);
        area_of_pieces += piece.count * static_cast<double>(piece.length) * static_cast<double>(piece.width);
    }
    const auto area_of = [](const Stock& stock) {
        double area = 0;
        for (const Region& region : stock.ways.front())
            area += static_cast<double>(region.length) * static_cast<double>(region.width);
        return area;
    };
    std::vector<double> prices;
    for (const Stock& stock : packing_.stocks) {
        const double area = std::max(1.0, area_of(stock));
        most_area = std::max(most_area, area);
        prices.push_back(static_cast<double>(stock.cost) / area);
    }
    per_area_ = 1 / most_area;
    per_value_ = value > 0 ? per_area_ * area_of_pieces / value : 0;
    stocks_by_price_.resize(packing_.stocks.size());
    std::iota(stocks_by_price_.begin(), stocks_by_price_.end(), std::size_t{0});
    std::stable_sort(stocks_by_price_.begin(), stocks_by_price_.end(), [&](std::size_t a, std::size_t b) {
        return prices[a] != prices[b] ? prices[a] < prices[b]
                                      : area_of(packing_.stocks[a]) > area_of(packing_.stocks[b]);
    });
}

void Repacking::rank() {
    const auto key = [this](std::size_t order, std::size_t p) -> double {
        const Piece& piece = packing_.pieces[p];
        const auto length = static_cast<double>(piece.length);
        const auto width = static_cast<double>(piece.width);
        switch (order) {
            case 0: return goal_.must_place_all ? length * width : static_cast<double>(piece.value);
            case 1: return std::max(length, width);
            case 2: return length;
            case 3: return width;
            default: return static_cast<double>(piece.value) / (length * width);
        }
    };
    for (std::size_t order = 0; order < orders; ++order) {
        std::vector<std::size_t> sorted(packing_.pieces.size());
        std::iota(sorted.begin(), sorted.end(), std::size_t{0});
        std::stable_sort(sorted.begin(), sorted.end(),
                         [&](std::size_t a, std::size_t b) { return key(order, a) > key(order, b); });
        std::vector<int> places(sorted.size());
        for (std::size_t i = 0; i < sorted.size(); ++i) places[sorted[i]] = static_cast<int>(i);
        ranks_.push_back(std::move(places));
    }
    tried_.assign(packing_.pieces.size(), 0);
}

void Repacking::note_best() {
    best_.sheets.clear();
    for (const Sheet& sheet : sheets_)
        if (sheet.is_open && !sheet.is_empty()) best_.sheets.push_back(sheet);
    best_.cost = cost_;
    best_.lost = lost_;
    best_.left_over = pool_;
    if (!goal_.must_place_all && lost_ <= goal_.enough_lost) is_done_ = true;
}

void Repacking::take_if_complete() {
    if (!goal_.must_place_all || !pool_.empty()) return;
    note_best();
    if (cost_ <= goal_.enough_cost) {
        is_done_ = true;
        return;
    }
    budget_ = cost_ - 1;
    shrink_to_goal();
    start_history();
}

// Gives up the sheets with the least on them until the rest is within the budget.
void Repacking::shrink_to_goal() {
    touched_.clear();
    while (cost_ > budget_) {
        std::size_t emptiest = sheets_.size();
        double least = std::numeric_limits<double>::max();
        for (std::size_t s = 0; s < sheets_.size(); ++s) {
            if (!sheets_[s].is_open || packing_.stocks[sheets_[s].stock].cost == 0) continue;
            double held = 0;
            for (const PackingTree& region : sheets_[s].regions)
                for (const TreeNode& node : region.nodes())
                    if (node.is_used && !node.is_group())
                        held += static_cast<double>(node.length) * static_cast<double>(node.width);
            held /= static_cast<double>(packing_.stocks[sheets_[s].stock].cost);
            if (held < least) least = held, emptiest = s;
        }
        ruin_sheet(emptiest, unlimited);
        touched_.assign(1, emptiest);
        while (!sheets_[emptiest].is_empty()) ruin_sheet(emptiest, unlimited);
        close_empty();
    }
}

// Before the first round: what is on the sheets is no longer out.
void Repacking::begin_with(const std::vector<PackingTree>& begun) {
    std::vector<int> left(packing_.pieces.size(), 0);
    for (const int piece : pool_) ++left[static_cast<std::size_t>(piece)];
    for (const PackingTree& tree : begun) {
        if (used_.front() >= packing_.stocks.front().supply) break;
        Sheet sheet{0, 0, {tree}, true};
        PackingTree& region = sheet.regions.front();
        region.set_least(least_length_, least_width_);
        for (std::size_t n = 0; n < region.nodes().size(); ++n) {
            const TreeNode& node = region.nodes()[n];
            if (!node.is_used || node.is_group()) continue;
            int& count = left[static_cast<std::size_t>(node.piece)];
            std::vector<int> too_many;
            if (count > 0) --count;
            else region.remove(static_cast<int>(n), too_many);
        }
        if (sheet.is_empty()) continue;
        region.list_places();
        sheets_.push_back(std::move(sheet));
        worths_.push_back(0);
        largest_.emplace_back();
        measure_places(sheets_.size() - 1);
        ++used_.front();
        cost_ += packing_.stocks.front().cost;
    }
    pool_.clear();
    lost_ = 0;
    for (std::size_t p = 0; p < left.size(); ++p)
        for (int i = 0; i < left[p]; ++i) out(static_cast<int>(p));
}

Packed repack(const Packing& packing, const RepackGoal& goal, const Effort& effort,
              const std::vector<PackingTree>& begun) {
    Repacking search(packing, goal, effort);
    if (!begun.empty()) search.begin_with(begun);
    return search.run();
}

}  // namespace kw::cutting
