#include "cutting/pattern_value.h"

#include <algorithm>
#include <set>

#include "cutting/points.h"

namespace kw::cutting {

std::vector<Ticks> raster_points(const std::vector<Piece>& pieces, Ticks size, bool is_length,
                                 std::size_t most) {
    std::set<Ticks> sizes;
    for (const Piece& piece : pieces) {
        sizes.insert(is_length ? piece.length : piece.width);
        if (piece.may_turn) sizes.insert(is_length ? piece.width : piece.length);
    }
    std::set<Ticks> sums{0};
    // Sums are met in rising order: what is added lies behind.
    for (auto sum = sums.begin(); sum != sums.end(); ++sum) {
        for (const Ticks more : sizes)
            if (*sum + more <= size) sums.insert(*sum + more);
        if (sums.size() > most) return {};
    }
    const std::vector<Ticks> sorted(sums.begin(), sums.end());
    std::set<Ticks> points{0, size};
    for (const Ticks sum : sorted) points.insert(sorted[index_below(sorted, size - sum)]);
    return {points.begin(), points.end()};
}

PatternValue::PatternValue(const std::vector<Piece>& pieces, std::vector<Ticks> xs, std::vector<Ticks> ys)
    : xs_(std::move(xs)), ys_(std::move(ys)), x_rests_(rests_of(xs_)), y_rests_(rests_of(ys_)) {
    for (std::size_t p = 0; p < pieces.size(); ++p)
        for (const bool is_turned : {false, true}) {
            if (is_turned && !pieces[p].may_turn) break;
            const Ticks length = is_turned ? pieces[p].width : pieces[p].length;
            const Ticks width = is_turned ? pieces[p].length : pieces[p].width;
            const auto x = std::lower_bound(xs_.begin(), xs_.end(), length);
            const auto y = std::lower_bound(ys_.begin(), ys_.end(), width);
            if (x == xs_.end() || y == ys_.end()) continue;
            ways_.push_back({p,
                             is_turned,
                             {length, width},
                             static_cast<std::size_t>(x - xs_.begin()),
                             static_cast<std::size_t>(y - ys_.begin())});
        }
}

std::int64_t PatternValue::steps() const {
    const auto x = static_cast<std::int64_t>(xs_.size());
    const auto y = static_cast<std::int64_t>(ys_.size());
    return x * y * (x + y) / 4;
}

std::int64_t PatternValue::most(const std::vector<std::int32_t>& values) {
    values_.assign(xs_.size() * ys_.size(), 0);
    for (const Way& way : ways_) value(way.x, way.y) = std::max(value(way.x, way.y), values[way.piece]);
    for (std::size_t x = 0; x < xs_.size(); ++x) {
        cut_across(x);
        cut_along(x);
    }
    return values_.back();
}

void PatternValue::cut_across(std::size_t x) {
    const std::size_t rows = ys_.size();
    std::int32_t* const here = &values_[x * rows];
    if (x > 0) {
        const std::int32_t* const before = &values_[(x - 1) * rows];
        for (std::size_t y = 0; y < rows; ++y) here[y] = std::max(here[y], before[y]);
    }
    for (std::size_t k = 1; k < x && 2 * xs_[k] <= xs_[x]; ++k) {
        const std::int32_t* const one = &values_[k * rows];
        const std::int32_t* const two = &values_[x_rests_[x][k] * rows];
        for (std::size_t y = 0; y < rows; ++y) here[y] = std::max(here[y], one[y] + two[y]);
    }
}

void PatternValue::cut_along(std::size_t x) {
    for (std::size_t y = 1; y < ys_.size(); ++y) {
        std::int32_t most = std::max(value(x, y), value(x, y - 1));
        for (std::size_t k = 1; k < y && 2 * ys_[k] <= ys_[y]; ++k)
            most = std::max(most, value(x, k) + value(x, y_rests_[y][k]));
        value(x, y) = most;
    }
}

PackingTree PatternValue::pattern(const Values& values) const {
    PackingTree tree({xs_.back(), ys_.back()});
    take_apart(xs_.size() - 1, ys_.size() - 1, values, tree, 0);
    return tree;
}

// The way back through the recursion: whichever choice comes to the value that stands there. The group is no smaller than the points say.
void PatternValue::take_apart(std::size_t x, std::size_t y, const Values& values, PackingTree& tree,
                              int group) const {
    while (x > 0 && value(x - 1, y) == value(x, y)) --x;
    while (y > 0 && value(x, y - 1) == value(x, y)) --y;
    const std::int32_t worth = value(x, y);
    if (worth == 0 || take_piece(x, y, values, tree, group)) return;
    const TreeNode room = tree.nodes()[static_cast<std::size_t>(group)];
    const auto in_direction = [&](bool is_along) {
        return room.is_along == is_along ? group : tree.add_group(group, {room.length, room.width}, is_along);
    };
    for (std::size_t k = 1; k < x; ++k)
        if (value(k, y) + value(x_rests_[x][k], y) == worth) {
            const int parts = in_direction(true);
            take_part(k, y, values, tree, parts);
            return take_part(x_rests_[x][k], y, values, tree, parts);
        }
    for (std::size_t k = 1; k < y; ++k)
        if (value(x, k) + value(x, y_rests_[y][k]) == worth) {
            const int parts = in_direction(false);
            take_part(x, k, values, tree, parts);
            return take_part(x, y_rests_[y][k], values, tree, parts);
        }
}

// One of the parts side by side in a group; nothing where it would be empty.
void PatternValue::take_part(std::size_t x, std::size_t y, const Values& values, PackingTree& tree,
                             int group) const {
    if (value(x, y) == 0) return;
    const TreeNode parent = tree.nodes()[static_cast<std::size_t>(group)];
    const Region size = parent.is_along ? Region{xs_[x], parent.width} : Region{parent.length, ys_[y]};
    take_apart(x, y, values, tree, tree.add_group(group, size, !parent.is_along));
}

bool PatternValue::take_piece(std::size_t x, std::size_t y, const Values& values, PackingTree& tree,
                              int group) const {
    for (const Way& way : ways_) {
        if (way.x > x || way.y > y || values[way.piece] != value(x, y)) continue;
        const TreeNode parent = tree.nodes()[static_cast<std::size_t>(group)];
        const Region strip =
            parent.is_along ? Region{way.size.length, parent.width} : Region{parent.length, way.size.width};
        const bool fills = strip.length == way.size.length && strip.width == way.size.width;
        if (!fills) group = tree.add_group(group, strip, !parent.is_along);
        tree.add_piece(group, way.size, static_cast<int>(way.piece), way.is_turned);
        return true;
    }
    return false;
}

}  // namespace kw::cutting
