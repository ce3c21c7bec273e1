#include "cutting/repack.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "cutting/random.h"

namespace kw::cutting {

bool Sheet::is_empty() const {
    for (const PackingTree& region : regions)
        if (!region.is_empty()) return false;
    return true;
}

namespace {

constexpr std::size_t orders = 5;  // in which pieces are put in again
constexpr std::size_t memory =
    200;                           // rounds after which a layout must be better than it was (late acceptance)
constexpr double tidiness = 0.02;  // what large free places are worth beside a sheet's area of pieces

struct Place {
    std::size_t sheet = 0;
    std::size_t region = 0;
    FreePlace free;
    bool is_turned = false;
    FirstCut cut = FirstCut::across;
};

class Repacking {
public:
    Repacking(const Packing& packing, const RepackGoal& goal, const Effort& effort)
        : packing_(packing), goal_(goal), effort_(effort), chance_(goal.seed) {
        measure();
        rank();
        used_.assign(packing.stocks.size(), 0);
        for (std::size_t p = 0; p < packing.pieces.size(); ++p)
            for (int i = 0; i < packing.pieces[p].count; ++i) out(static_cast<int>(p));
    }

    Packed run() {
        recreate(0);
        note_best();
        take_if_complete();
        start_history();
        while (!is_done_ && looks_ < effort_.looks) round();
        best_.looks = looks_;
        return std::move(best_);
    }

private:
    void measure();
    void rank();
    void round();
    void ruin();
    void ruin_sheet(std::size_t sheet, std::size_t count);
    void recreate(std::size_t order);
    bool place(int piece);
    bool open_for(int piece);
    void look(std::size_t sheet, int piece, double& least, Place& best);
    void put(const Place& place, int piece);
    void out(int piece) {
        pool_.push_back(piece);
        lost_ += packing_.pieces[static_cast<std::size_t>(piece)].value;
    }
    void touch(std::size_t sheet);
    void undo();
    void close_empty();
    void note_best();
    void take_if_complete();
    void shrink_to_goal();
    void start_history() { history_.assign(memory, objective()); }
    double objective() const;
    double worth(Ticks length, Ticks width) const {
        if (length < least_length_ || width < least_width_) return 0;
        const double area = static_cast<double>(length) * static_cast<double>(width) * per_area_;
        return area * std::sqrt(area);
    }
    double worth_of(const Sheet& sheet) const;

    const Packing& packing_;
    const RepackGoal& goal_;
    const Effort& effort_;
    Chance chance_;
    Ticks least_length_ = 1;
    Ticks least_width_ = 1;
    double per_area_ = 1;
    double per_value_ = 1;
    std::vector<std::vector<int>> ranks_;       // by order: each piece's place in it
    std::vector<std::size_t> stocks_by_price_;  // least cost for its area first
    std::vector<Sheet> sheets_;                 // closed ones among them
    std::vector<double> worths_;                // of the free places, by sheet
    std::vector<int> used_;                     // sheets of each stock
    std::vector<int> pool_;                     // pieces that are out
    std::int64_t lost_ = 0;
    std::int64_t cost_ = 0;
    std::int64_t budget_ = std::numeric_limits<std::int64_t>::max();
    std::int64_t looks_ = 0;
    std::int64_t next_tell_ = 0;
    bool is_done_ = false;
    Packed best_;
    std::vector<double> history_;
    std::size_t rounds_ = 0;

    // Before this round: what it has touched, to be put back.
    std::vector<std::size_t> touched_;
    std::vector<Sheet> before_;
    std::vector<int> pool_before_;
    std::vector<int> used_before_;
    std::int64_t lost_before_ = 0;
    std::int64_t cost_before_ = 0;
    std::size_t sheets_before_ = 0;
    std::vector<int> waiting_;
    std::vector<int> tried_;  // by piece: the last recreation in which it found no place
    int recreation_ = 0;
};

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

double Repacking::worth_of(const Sheet& sheet) const {
    double sum = 0;
    for (const PackingTree& region : sheet.regions)
        for (const FreePlace& free : region.places()) sum += worth(free.length, free.width);
    return sum;
}

double Repacking::objective() const {
    double tidy = 0;
    for (std::size_t s = 0; s < sheets_.size(); ++s)
        if (sheets_[s].is_open) tidy += worths_[s];
    return static_cast<double>(lost_) * per_value_ - tidiness * tidy;
}

void Repacking::touch(std::size_t sheet) {
    if (std::find(touched_.begin(), touched_.end(), sheet) != touched_.end()) return;
    touched_.push_back(sheet);
    if (before_.size() < touched_.size()) before_.emplace_back();
    before_[touched_.size() - 1] = sheets_[sheet];
}

void Repacking::undo() {
    for (std::size_t i = 0; i < touched_.size(); ++i) {
        if (touched_[i] >= sheets_before_) continue;
        std::swap(sheets_[touched_[i]], before_[i]);
        worths_[touched_[i]] = worth_of(sheets_[touched_[i]]);
    }
    sheets_.resize(sheets_before_);
    worths_.resize(sheets_before_);
    pool_ = pool_before_;
    used_ = used_before_;
    lost_ = lost_before_;
    cost_ = cost_before_;
}

void Repacking::round() {
    touched_.clear();
    pool_before_ = pool_;
    used_before_ = used_;
    lost_before_ = lost_;
    cost_before_ = cost_;
    sheets_before_ = sheets_.size();
    looks_ += static_cast<std::int64_t>(sheets_.size()) + 20;
    const double now = objective();
    ruin();
    close_empty();
    recreate(chance_.below(orders + 1));
    const double then = objective();
    if (lost_ < best_.lost) note_best();
    double& earlier = history_[rounds_ % memory];
    const bool is_taken = then <= now || then < earlier;
    if (!is_taken) undo();
    earlier = std::min(earlier, is_taken ? then : now);
    ++rounds_;
    if (is_taken) take_if_complete();
    if (looks_ >= next_tell_ && effort_.watch) {
        next_tell_ = looks_ + 100'000;
        const bool by_cost = goal_.must_place_all;
        if (effort_.watch(by_cost ? best_.cost : best_.lost,
                          by_cost ? goal_.enough_cost : goal_.enough_lost) == Searching::stop)
            is_done_ = true;
    }
}

void Repacking::ruin() {
    if (sheets_.empty()) return;
    const std::size_t few = 1 + chance_.below(3);
    const std::size_t count = 1 + chance_.below(6);
    for (std::size_t i = 0; i < few; ++i) {
        const std::size_t sheet = chance_.below(sheets_.size());
        if (!sheets_[sheet].is_open) continue;
        ruin_sheet(sheet, chance_.one_in(20) ? 1000 : count);
    }
}

void Repacking::ruin_sheet(std::size_t s, std::size_t count) {
    touch(s);
    Sheet& sheet = sheets_[s];
    std::vector<int> taken;
    for (std::size_t tries = 0; tries < 3 * count && taken.size() < count && !sheet.is_empty(); ++tries) {
        PackingTree& region = sheet.regions[chance_.below(sheet.regions.size())];
        const std::size_t node = chance_.below(region.nodes().size());
        if (node == 0 || !region.nodes()[node].is_used) continue;
        region.remove(static_cast<int>(node), taken);
    }
    for (PackingTree& region : sheet.regions) region.list_places();
    worths_[s] = worth_of(sheet);
    for (const int piece : taken) out(piece);
}

void Repacking::close_empty() {
    for (const std::size_t s : touched_) {
        Sheet& sheet = sheets_[s];
        if (!sheet.is_open || !sheet.is_empty()) continue;
        sheet.is_open = false;
        worths_[s] = 0;
        --used_[sheet.stock];
        cost_ -= packing_.stocks[sheet.stock].cost;
    }
}

void Repacking::recreate(std::size_t order) {
    waiting_.swap(pool_);
    pool_.clear();
    lost_ = 0;
    ++recreation_;
    if (order < orders) {
        const std::vector<int>& rank = ranks_[order];
        std::sort(waiting_.begin(), waiting_.end(), [&rank](int a, int b) {
            return rank[static_cast<std::size_t>(a)] < rank[static_cast<std::size_t>(b)];
        });
    } else {
        for (std::size_t i = waiting_.size(); i > 1; --i)
            std::swap(waiting_[i - 1], waiting_[chance_.below(i)]);
    }
    for (const int piece : waiting_)
        if (!place(piece)) out(piece);
}

void Repacking::look(std::size_t s, int p, double& least, Place& best) {
    const Piece& piece = packing_.pieces[static_cast<std::size_t>(p)];
    const Sheet& sheet = sheets_[s];
    for (std::size_t r = 0; r < sheet.regions.size(); ++r)
        for (const FreePlace& free : sheet.regions[r].places()) {
            ++looks_;
            for (const bool is_turned : {false, true}) {
                if (is_turned && !piece.may_turn) break;
                const Ticks length = is_turned ? piece.width : piece.length;
                const Ticks width = is_turned ? piece.length : piece.width;
                if (length > free.length || width > free.width || chance_.one_in(100)) continue;
                const double had = worth(free.length, free.width);
                const double across =
                    had - worth(free.length - length, free.width) - worth(length, free.width - width);
                const double along =
                    had - worth(free.length, free.width - width) - worth(free.length - length, width);
                if (across < least) least = across, best = {s, r, free, is_turned, FirstCut::across};
                if (along < least) least = along, best = {s, r, free, is_turned, FirstCut::along};
            }
        }
}

void Repacking::put(const Place& place, int p) {
    const Piece& piece = packing_.pieces[static_cast<std::size_t>(p)];
    const Region size{place.is_turned ? piece.width : piece.length,
                      place.is_turned ? piece.length : piece.width};
    touch(place.sheet);
    looks_ += 15;  // takes about as long as so many
    Sheet& sheet = sheets_[place.sheet];
    sheet.regions[place.region].insert(place.free, p, size, place.is_turned, place.cut);
    worths_[place.sheet] = worth_of(sheet);
}

bool Repacking::place(int piece) {
    if (tried_[static_cast<std::size_t>(piece)] == recreation_) return false;
    double least = std::numeric_limits<double>::max();
    Place best;
    for (std::size_t s = 0; s < sheets_.size(); ++s)
        if (sheets_[s].is_open) look(s, piece, least, best);
    if (least < std::numeric_limits<double>::max()) {
        put(best, piece);
        return true;
    }
    if (open_for(piece)) return true;
    tried_[static_cast<std::size_t>(piece)] = recreation_;
    return false;
}

bool Repacking::open_for(int p) {
    const Piece& piece = packing_.pieces[static_cast<std::size_t>(p)];
    for (std::size_t round = 0; round < 2; ++round)
        for (const std::size_t k : stocks_by_price_) {
            const Stock& stock = packing_.stocks[k];
            if (used_[k] >= stock.supply || stock.cost > budget_ - cost_) continue;
            if (round == 0 && stocks_by_price_.size() > 1 && rounds_ > 0 && chance_.one_in(4)) continue;
            const std::size_t way = rounds_ > 0 ? chance_.below(stock.ways.size()) : 0;
            Sheet sheet{k, way, {}, true};
            bool fits = false;
            for (const Region& region : stock.ways[way]) {
                fits = fits || piece.fits(region.length, region.width);
                sheet.regions.emplace_back(region);
                sheet.regions.back().set_least(least_length_, least_width_);
                sheet.regions.back().list_places();
            }
            if (!fits) continue;
            std::size_t slot = 0;
            while (slot < sheets_.size() && sheets_[slot].is_open) ++slot;
            if (slot == sheets_.size()) {
                sheets_.emplace_back();
                worths_.push_back(0);
            }
            touch(slot);
            sheets_[slot] = std::move(sheet);
            ++used_[k];
            cost_ += stock.cost;
            double least = std::numeric_limits<double>::max();
            Place best;
            while (least == std::numeric_limits<double>::max()) look(slot, p, least, best);
            put(best, p);
            return true;
        }
    return false;
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

}  // namespace

Packed repack(const Packing& packing, const RepackGoal& goal, const Effort& effort) {
    return Repacking(packing, goal, effort).run();
}

}  // namespace kw::cutting
