#include "order/revisits.h"

#include <algorithm>

namespace kw::order {

namespace {

template <class Set>
bool is_empty(const Set& set) {
    return std::all_of(set.begin(), set.end(), [](Word word) { return word == 0; });
}

// Which labels have work that must wait for work of label `from`, directly or over other labels.
std::vector<std::vector<bool>> reach_of(const View& view, const std::vector<Bits>& before) {
    const std::size_t labels = view.weight.size();
    std::vector<std::vector<bool>> reach(labels, std::vector<bool>(labels, false));
    for (std::size_t to = 1; to < labels; ++to)
        each(view.asked_by[to], [&](std::size_t operation) {
            for (std::size_t from = 1; from < labels; ++from)
                if (from != to && intersect(before[operation], view.asked_by[from])) reach[from][to] = true;
        });
    for (std::size_t via = 1; via < labels; ++via)
        for (std::size_t from = 1; from < labels; ++from)
            if (reach[from][via])
                for (std::size_t to = 1; to < labels; ++to)
                    if (reach[via][to]) reach[from][to] = true;
    return reach;
}

}  // namespace

std::vector<std::vector<Label>> tangled_labels(const View& view, const std::vector<Bits>& before) {
    const auto reach = reach_of(view, before);
    std::vector<std::vector<Label>> tangles;
    std::vector<bool> seen(reach.size(), false);
    for (std::size_t a = 1; a < reach.size(); ++a) {
        if (seen[a] || !reach[a][a]) continue;
        tangles.emplace_back();
        for (std::size_t b = a; b < reach.size(); ++b) {
            if (!reach[a][b] || !reach[b][a]) continue;
            seen[b] = true;
            tangles.back().push_back(static_cast<Label>(b));
        }
    }
    return tangles;
}

Tangle::Tangle(const View& view, const std::vector<Bits>& before, const std::vector<Label>& labels)
    : waits_for_(before.size()) {
    assert(before.size() <= most_operations);
    for (const Label label : labels) {
        Group group{label, view.weight[label], {}};
        std::copy(view.asked_by[label].begin(), view.asked_by[label].end(), group.asked_by.begin());
        for (std::size_t w = 0; w < all_.size(); ++w) all_[w] |= group.asked_by[w];
        groups_.push_back(group);
    }
    for (const Group& group : groups_)
        each(view.asked_by[group.label], [&](std::size_t operation) {
            const Bits& waits = before[operation];
            for (std::size_t w = 0; w < waits.size(); ++w)
                waits_for_[operation][w] = waits[w] & all_[w] & ~group.asked_by[w];
        });
}

std::size_t Tangle::Hash::operator()(const Set& set) const {
    Word hash = 0;
    for (const Word word : set) {
        hash = (hash ^ word) * 0x9E3779B97F4A7C15U;
        hash ^= hash >> 29;
    }
    return static_cast<std::size_t>(hash);
}

// What can be done with the group's label without changing it. One look is enough: an operation of the same label that comes
// before waits for no more than this one does.
Tangle::Set Tangle::open_work(const Group& group, const Set& left) const {
    Set open{};
    for (std::size_t w = 0; w < left.size(); ++w)
        each_in(group.asked_by[w] & left[w], w * 64, [&](std::size_t operation) {
            const Set& waits = waits_for_[operation];
            Word missing = 0;
            for (std::size_t v = 0; v < left.size(); ++v) missing |= waits[v] & left[v];
            if (missing == 0) open[operation / 64] |= Word{1} << (operation % 64);
        });
    return open;
}

std::int64_t Tangle::once_each(const Set& left) const {
    std::int64_t sum = 0;
    for (const Group& group : groups_) {
        Word asked = 0;
        for (std::size_t w = 0; w < left.size(); ++w) asked |= group.asked_by[w] & left[w];
        if (asked != 0) sum += group.weight;
    }
    return sum;
}

std::int64_t Tangle::search(const Set& left) {
    if (is_empty(left)) return 0;
    if (const auto known = known_.find(left); known != known_.end()) return known->second;
    const std::int64_t floor = once_each(left);
    if (known_.size() >= memory_limit) return floor;
    std::int64_t best = std::numeric_limits<std::int64_t>::max();
    for (const Group& group : groups_) {
        const Set open = open_work(group, left);
        if (is_empty(open)) continue;
        Set rest = left;
        bool all = true;
        for (std::size_t w = 0; w < left.size(); ++w) {
            rest[w] &= ~open[w];
            all = all && (group.asked_by[w] & left[w]) == open[w];
        }
        const std::int64_t cost = group.weight + search(rest);
        // A label that can finish at once is set once more whenever that is: now is as good as later.
        best = all ? cost : std::min(best, cost);
        if (all || best == floor) break;
    }
    known_.emplace(left, best);
    return best;
}

std::int64_t Tangle::least_s(const Bits& done, Label current) {
    Set left = all_;
    for (std::size_t w = 0; w < done.size(); ++w) left[w] &= ~done[w];
    for (const Group& group : groups_) {
        if (group.label != current) continue;
        const Set open = open_work(group, left);
        for (std::size_t w = 0; w < left.size(); ++w) left[w] &= ~open[w];
    }
    return search(left);
}

}  // namespace kw::order
