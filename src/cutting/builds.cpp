#include "cutting/builds.h"

#include <algorithm>
#include <queue>
#include <unordered_map>

namespace kw::cutting {
namespace {

constexpr std::size_t most_builds = 200'000;  // kept at once

struct Build {
    Ticks length = 0;
    Ticks width = 0;
    std::int64_t value = 0;
    std::int64_t most = 0;  // what a panel with it can be worth
    int piece = -1;         // of one piece alone
    bool is_turned = false;
    bool is_along = false;  // otherwise: its halves lie one behind the other along the length
    std::size_t first = 0;
    std::size_t second = 0;
    bool is_beaten = false;  // another one holds the same and is smaller
};

struct Next {
    std::int64_t most = 0;
    std::int64_t value = 0;
    std::size_t build = 0;
};

// The one that promises most first, then the one that has most already, then the first made.
struct IsLater {
    bool operator()(const Next& a, const Next& b) const {
        if (a.most != b.most) return a.most < b.most;
        return a.value != b.value ? a.value < b.value : a.build > b.build;
    }
};

struct HashCounts {
    std::size_t operator()(const std::vector<int>& counts) const {
        std::size_t hash = 0;
        for (const int n : counts) hash = (hash ^ static_cast<std::size_t>(n)) * 0x9e3779b97f4a7c15ULL + 1;
        return hash;
    }
};

class Building {
public:
    Building(const Packing& panel, const PanelBound& bound, std::int64_t above, const Effort& effort)
        : panel_(panel), bound_(bound), by_area_(panel), effort_(effort), best_value_(above) {
        const Region& region = panel.stocks.front().ways.front().front();
        length_ = region.length;
        width_ = region.width;
    }

    BuiltPanel run() {
        add_pieces();
        while (!queue_.empty() && queue_.top().most > best_value_ && !is_out()) {
            const Next next = queue_.top();
            queue_.pop();
            if (builds_[next.build].is_beaten) continue;
            joined_.push_back(next.build);
            if (!join_with_all(next.build)) queue_.push(next);  // stopped: it stays the bound
        }
        BuiltPanel built;
        built.most_value = best_value_;
        if (!queue_.empty()) built.most_value = std::max(best_value_, queue_.top().most);
        built.value = best_value_;
        if (best_) built.tree = tree_of(*best_);
        return built;
    }

private:
    bool is_out() {
        if (effort_.watch && looks_ >= next_tell_) {
            next_tell_ = looks_ + 200'000;
            is_stopped_ =
                is_stopped_ || effort_.watch(best_value_, queue_.empty() ? best_value_ : queue_.top().most) ==
                                   Searching::stop;
        }
        return is_stopped_ || looks_ >= effort_.looks || builds_.size() >= most_builds;
    }

    void add_pieces() {
        for (std::size_t p = 0; p < panel_.pieces.size(); ++p)
            for (const bool is_turned : {false, true}) {
                const Piece& piece = panel_.pieces[p];
                if (is_turned && !piece.may_turn) break;
                Build build;
                build.length = is_turned ? piece.width : piece.length;
                build.width = is_turned ? piece.length : piece.width;
                if (build.length > length_ || build.width > width_) continue;
                build.value = piece.value;
                build.piece = static_cast<int>(p);
                build.is_turned = is_turned;
                counts_now_.assign(panel_.pieces.size(), 0);
                counts_now_[p] = 1;
                meet(build);
            }
    }

    // False: stopped before all were tried.
    bool join_with_all(std::size_t index) {
        for (std::size_t i = 0; i < joined_.size(); ++i) {
            ++looks_;
            const std::size_t other = joined_[i];
            if (builds_[other].is_beaten || builds_[other].most <= best_value_) continue;
            join(index, other, true);
            join(index, other, false);
            if (builds_[index].is_beaten || builds_[index].most <= best_value_) return true;
            if ((i & 1023) == 1023 && is_out()) return false;
        }
        return true;
    }

    void join(std::size_t a, std::size_t b, bool is_along) {
        const Build& one = builds_[a];
        const Build& two = builds_[b];
        Build joint;
        joint.length = is_along ? one.length + two.length : std::max(one.length, two.length);
        joint.width = is_along ? std::max(one.width, two.width) : one.width + two.width;
        if (joint.length > length_ || joint.width > width_) return;
        joint.value = one.value + two.value;
        if (joint.value + bound_.around(joint.length, joint.width) <= best_value_) return;
        const std::vector<int>& counts_a = *counts_[a];
        const std::vector<int>& counts_b = *counts_[b];
        counts_now_.resize(counts_a.size());
        for (std::size_t p = 0; p < counts_a.size(); ++p) {
            counts_now_[p] = counts_a[p] + counts_b[p];
            if (counts_now_[p] > panel_.pieces[p].count) return;
        }
        joint.is_along = is_along;
        joint.first = a;
        joint.second = b;
        meet(joint);
    }

    // What holds `counts_now_`.
    void meet(Build build) {
        looks_ += 4;
        const double panel = static_cast<double>(length_) * static_cast<double>(width_);
        const double used = static_cast<double>(build.length) * static_cast<double>(build.width);
        build.most = build.value + std::min(bound_.around(build.length, build.width),
                                            by_area_.of(panel - used, counts_now_));
        if (build.value > best_value_) {
            best_value_ = build.value;
            best_ = builds_.size();
        } else if (build.most <= best_value_) {
            return;
        }
        std::vector<std::size_t>& alike = by_counts_[counts_now_];
        for (const std::size_t other : alike)
            if (builds_[other].length <= build.length && builds_[other].width <= build.width) return;
        for (const std::size_t other : alike)
            if (build.length <= builds_[other].length && build.width <= builds_[other].width)
                builds_[other].is_beaten = true;
        alike.erase(std::remove_if(alike.begin(), alike.end(),
                                   [this](std::size_t other) { return builds_[other].is_beaten; }),
                    alike.end());
        alike.push_back(builds_.size());
        queue_.push({build.most, build.value, builds_.size()});
        counts_.push_back(&by_counts_.find(counts_now_)->first);
        builds_.push_back(build);
    }

    PackingTree tree_of(std::size_t index) const {
        PackingTree tree({length_, width_});
        hang(tree, 0, index);
        return tree;
    }

    // Puts a build behind what is in the group already.
    void hang(PackingTree& tree, int group, std::size_t index) const {
        const Build& build = builds_[index];
        const TreeNode parent = tree.nodes()[static_cast<std::size_t>(group)];
        const Region strip =
            parent.is_along ? Region{build.length, parent.width} : Region{parent.length, build.width};
        if (build.piece >= 0) {
            const bool fills = strip.length == build.length && strip.width == build.width;
            if (!fills) group = tree.add_group(group, strip, !parent.is_along);
            tree.add_piece(group, {build.length, build.width}, build.piece, build.is_turned);
            return;
        }
        if (build.is_along != parent.is_along) group = tree.add_group(group, strip, build.is_along);
        hang(tree, group, build.first);
        hang(tree, group, build.second);
    }

    const Packing& panel_;
    const PanelBound& bound_;
    AreaBound by_area_;
    const Effort& effort_;
    Ticks length_ = 0;
    Ticks width_ = 0;
    std::int64_t best_value_ = 0;
    std::optional<std::size_t> best_;
    std::vector<Build> builds_;
    std::vector<const std::vector<int>*> counts_;  // by build: the pieces in it
    std::unordered_map<std::vector<int>, std::vector<std::size_t>, HashCounts> by_counts_;
    std::priority_queue<Next, std::vector<Next>, IsLater> queue_;
    std::vector<std::size_t> joined_;  // each of them with all others
    std::vector<int> counts_now_;
    std::int64_t looks_ = 0;
    std::int64_t next_tell_ = 0;
    bool is_stopped_ = false;
};

}  // namespace

BuiltPanel build_panel(const Packing& panel, const PanelBound& bound, std::int64_t above,
                       const Effort& effort) {
    return Building(panel, bound, above, effort).run();
}

}  // namespace kw::cutting
