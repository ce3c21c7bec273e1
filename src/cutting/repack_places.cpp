// Where pieces are put: the place that leaves the largest free places, or a new sheet.

#include <algorithm>

#include "cutting/repacking.h"

namespace kw::cutting {

void Repacking::measure_places(std::size_t s) {
    worths_[s] = 0;
    largest_[s] = {};
    if (!sheets_[s].is_open) return;
    for (const PackingTree& region : sheets_[s].regions)
        for (const FreePlace& free : region.places()) {
            worths_[s] += worth(free.length, free.width);
            largest_[s].length = std::max(largest_[s].length, free.length);
            largest_[s].width = std::max(largest_[s].width, free.width);
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

void Repacking::look(std::size_t s, int p, double& least, PlaceFor& best) {
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

void Repacking::put(const PlaceFor& place, int p) {
    const Piece& piece = packing_.pieces[static_cast<std::size_t>(p)];
    const Region size{place.is_turned ? piece.width : piece.length,
                      place.is_turned ? piece.length : piece.width};
    touch(place.sheet);
    looks_ += 15;  // takes about as long as so many
    Sheet& sheet = sheets_[place.sheet];
    sheet.regions[place.region].insert(place.free, p, size, place.is_turned, place.cut);
    measure_places(place.sheet);
}

bool Repacking::place(int piece) {
    if (tried_[static_cast<std::size_t>(piece)] == recreation_) return false;
    const Piece& asked = packing_.pieces[static_cast<std::size_t>(piece)];
    double least = std::numeric_limits<double>::max();
    PlaceFor best;
    for (std::size_t s = 0; s < sheets_.size(); ++s)
        if (asked.fits(largest_[s].length, largest_[s].width)) look(s, piece, least, best);
    looks_ += static_cast<std::int64_t>(sheets_.size() / 8);
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
                largest_.emplace_back();
            }
            touch(slot);
            sheets_[slot] = std::move(sheet);
            measure_places(slot);
            ++used_[k];
            cost_ += stock.cost;
            double least = std::numeric_limits<double>::max();
            PlaceFor best;
            while (least == std::numeric_limits<double>::max()) look(slot, p, least, best);
            put(best, p);
            return true;
        }
    return false;
}

}  // namespace kw::cutting
