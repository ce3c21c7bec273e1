// A round of the search: ruin, recreate, and taking it back.

#include <algorithm>

#include "cutting/repacking.h"

namespace kw::cutting {

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
        measure_places(touched_[i]);
    }
    sheets_.resize(sheets_before_);
    worths_.resize(sheets_before_);
    largest_.resize(sheets_before_);
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
    measure_places(s);
    for (const int piece : taken) out(piece);
}

void Repacking::close_empty() {
    for (const std::size_t s : touched_) {
        Sheet& sheet = sheets_[s];
        if (!sheet.is_open || !sheet.is_empty()) continue;
        sheet.is_open = false;
        measure_places(s);
        --used_[sheet.stock];
        cost_ -= packing_.stocks[sheet.stock].cost;
    }
}

}  // namespace kw::cutting
