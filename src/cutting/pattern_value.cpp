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

namespace {

constexpr std::size_t at_once = 8;  // values of a row

// More of two rows put together, where that is more.
void take_sums(float* here, const float* one, const float* two, std::size_t count) {
    for (std::size_t b = 0; b < count; b += at_once) {
        float sums[at_once];
        for (std::size_t i = 0; i < at_once; ++i) sums[i] = one[b + i] + two[b + i];
        for (std::size_t i = 0; i < at_once; ++i) here[b + i] = here[b + i] < sums[i] ? sums[i] : here[b + i];
    }
}

// Of one part and what is beside it. Several at a time, so that none waits for the one before.
float most_of_sums(const float* here, const std::size_t* parts, std::size_t count,
                   const std::vector<std::size_t>& rests) {
    float most[4] = {0, 0, 0, 0};
    std::size_t k = 0;
    for (; k + 4 <= count; k += 4)
        for (std::size_t i = 0; i < 4; ++i)
            most[i] = std::max(most[i], here[parts[k + i]] + here[rests[parts[k + i]]]);
    for (; k < count; ++k) most[0] = std::max(most[0], here[parts[k]] + here[rests[parts[k]]]);
    return std::max(std::max(most[0], most[1]), std::max(most[2], most[3]));
}

}  // namespace

PatternValue::Axis PatternValue::axis_of(const std::vector<Ticks>& points, std::vector<std::size_t> parts) {
    Axis axis;
    axis.rests = rests_of(points);
    std::sort(parts.begin(), parts.end());
    parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
    axis.is_part.assign(points.size(), 0);
    for (const std::size_t part : parts) axis.is_part[part] = 1;
    axis.is_part.back() = 1;
    axis.parts = std::move(parts);
    for (std::size_t i = 0; i < points.size(); ++i) {
        axis.halves.push_back(index_below(points, points[i] / 2));
        axis.all.push_back(i + 1);
        axis.parts_before.push_back(static_cast<std::size_t>(
            std::lower_bound(axis.parts.begin(), axis.parts.end(), i) - axis.parts.begin()));
    }
    return axis;
}

PatternValue::PatternValue(const std::vector<Piece>& pieces, std::vector<Ticks> xs, std::vector<Ticks> ys)
    : xs_(std::move(xs)), ys_(std::move(ys)), is_by_x_(xs_.size() >= ys_.size()) {
    std::vector<std::size_t> x_parts;
    std::vector<std::size_t> y_parts;
    for (std::size_t p = 0; p < pieces.size(); ++p)
        for (const bool is_turned : {false, true}) {
            if (is_turned && !pieces[p].may_turn) break;
            const Ticks length = is_turned ? pieces[p].width : pieces[p].length;
            const Ticks width = is_turned ? pieces[p].length : pieces[p].width;
            const auto x = std::lower_bound(xs_.begin(), xs_.end(), length);
            const auto y = std::lower_bound(ys_.begin(), ys_.end(), width);
            if (x == xs_.end() || y == ys_.end()) continue;
            x_parts.push_back(static_cast<std::size_t>(x - xs_.begin()));
            y_parts.push_back(static_cast<std::size_t>(y - ys_.begin()));
            ways_.push_back({p, is_turned, {length, width}, x_parts.back(), y_parts.back()});
        }
    rows_ = is_by_x_ ? axis_of(xs_, x_parts) : axis_of(ys_, y_parts);
    columns_ = is_by_x_ ? axis_of(ys_, y_parts) : axis_of(xs_, x_parts);
    const std::size_t columns = columns_.rests.size();
    stride_ = (columns + at_once - 1) / at_once * at_once;
    values_.resize(rows_.rests.size() * stride_);
    for (std::size_t j = 1; j < columns; ++j)
        if (columns_.is_part[j] != 0) strips_.push_back(j);
    strips_stride_ = (strips_.size() + at_once - 1) / at_once * at_once;
    in_strips_.assign(rows_.rests.size() * strips_stride_, 0.0F);
}

std::int64_t PatternValue::steps(CutsTried cuts) const {
    const auto x = static_cast<std::int64_t>(rows_.rests.size());
    const auto y = static_cast<std::int64_t>(columns_.rests.size());
    const auto x_parts = static_cast<std::int64_t>(rows_.parts.size());
    const auto y_parts = static_cast<std::int64_t>(columns_.parts.size());
    const std::int64_t clear = x * y / 16;
    switch (cuts) {  // between rows four values at once
        case CutsTried::strips: return x_parts * (x * y_parts / 4 + y * y_parts + y * x_parts / 4) + clear;
        case CutsTried::at_pieces: return x * y * (x_parts + 4 * y_parts) / 4 + clear;
        case CutsTried::all: break;
    }
    return x * y * (x + 4 * y) / 16 + clear;
}

std::int64_t PatternValue::most(const std::vector<std::int32_t>& values, CutsTried cuts) {
    std::fill(values_.begin(), values_.end(), 0.0F);
    for (const Way& way : ways_)
        value(way.x, way.y) = std::max(value(way.x, way.y), static_cast<float>(values[way.piece]));
    const bool is_anywhere = cuts == CutsTried::all;
    for (std::size_t i = 1; i < rows_.rests.size(); ++i) {
        if (cuts == CutsTried::strips && rows_.is_part[i] == 0) {
            cut_strips(i);
        } else {
            cut_between_rows(i, is_anywhere);
            cut_within_row(i, is_anywhere);
            if (cuts == CutsTried::strips)
                for (std::size_t s = 0; s < strips_.size(); ++s) strip(i)[s] = row(i)[strips_[s]];
        }
    }
    return static_cast<std::int64_t>(values_[index(xs_.size() - 1, ys_.size() - 1)]);
}

void PatternValue::cut_between_rows(std::size_t i, bool is_anywhere) {
    float* const here = row(i);
    const float* const before = row(i - 1);
    for (std::size_t j = 0; j < stride_; ++j) here[j] = here[j] < before[j] ? before[j] : here[j];
    if (is_anywhere) {
        for (std::size_t k = 1; k <= rows_.halves[i]; ++k)
            take_sums(here, row(k), row(rows_.rests[i][k]), stride_);
    } else {
        for (const std::size_t k : rows_.parts)
            if (k < i) take_sums(here, row(k), row(rows_.rests[i][k]), stride_);
    }
}

void PatternValue::cut_within_row(std::size_t i, bool is_anywhere) {
    float* const here = row(i);
    for (std::size_t j = 1; j < columns_.rests.size(); ++j) {
        const std::vector<std::size_t>& rests = columns_.rests[j];
        const float most = is_anywhere
                               ? most_of_sums(here, columns_.all.data(), columns_.halves[j], rests)
                               : most_of_sums(here, columns_.parts.data(), columns_.parts_before[j], rests);
        here[j] = std::max(std::max(here[j], here[j - 1]), most);
    }
}

// A row that no piece is as long as: only in the columns that are as wide as one, of parts that lie one beside the other.
void PatternValue::cut_strips(std::size_t i) {
    float* const here = strip(i);
    std::copy(strip(i - 1), strip(i - 1) + strips_stride_, here);
    for (const std::size_t k : rows_.parts) {
        if (k >= i) break;
        take_sums(here, strip(k), strip(rows_.rests[i][k]), strips_stride_);
    }
    float most = 0;
    for (std::size_t s = 0; s < strips_.size(); ++s) {
        here[s] = most = std::max(most, here[s]);
        row(i)[strips_[s]] = most;
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
    const float worth = value(x, y);
    if (worth == 0 || take_piece(x, y, values, tree, group)) return;
    const TreeNode room = tree.nodes()[static_cast<std::size_t>(group)];
    const auto in_direction = [&](bool is_along) {
        return room.is_along == is_along ? group : tree.add_group(group, {room.length, room.width}, is_along);
    };
    for (std::size_t k = 1; k < x; ++k)
        if (value(k, y) + value(x_axis().rests[x][k], y) == worth) {
            const int parts = in_direction(true);
            take_part(k, y, values, tree, parts);
            return take_part(x_axis().rests[x][k], y, values, tree, parts);
        }
    for (std::size_t k = 1; k < y; ++k)
        if (value(x, k) + value(x, y_axis().rests[y][k]) == worth) {
            const int parts = in_direction(false);
            take_part(x, k, values, tree, parts);
            return take_part(x, y_axis().rests[y][k], values, tree, parts);
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
        if (way.x > x || way.y > y || static_cast<float>(values[way.piece]) != value(x, y)) continue;
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
