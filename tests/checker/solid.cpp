#include "checker/solid.h"

#include <algorithm>
#include <cstddef>

namespace checker {
namespace {

constexpr std::array<std::size_t, 3> axes{0, 1, 2};

bool has_volume(const Block& block) {
    return std::all_of(axes.begin(), axes.end(), [&](std::size_t i) { return block.low[i] < block.high[i]; });
}

Block common(const Block& one, const Block& other) {
    Block both;
    for (const std::size_t i : axes) {
        both.low[i] = std::max(one.low[i], other.low[i]);
        both.high[i] = std::min(one.high[i], other.high[i]);
    }
    return both;
}

Block grown(Block block, double by_mm) {
    for (const std::size_t i : axes) {
        block.low[i] -= by_mm;
        block.high[i] += by_mm;
    }
    return block;
}

// The up to six blocks around `hole` that make up `block` without it.
void cut_out(const Block& block, const Block& hole, std::vector<Block>& pieces) {
    Block rest = block;
    const Block taken = common(block, hole);
    if (!has_volume(taken)) {
        pieces.push_back(block);
        return;
    }
    for (const std::size_t i : axes) {
        Block below = rest;
        below.high[i] = taken.low[i];
        if (has_volume(below)) pieces.push_back(below);
        Block above = rest;
        above.low[i] = taken.high[i];
        if (has_volume(above)) pieces.push_back(above);
        rest.low[i] = taken.low[i];
        rest.high[i] = taken.high[i];
    }
}

bool line_meets(const Block& block, std::size_t axis, const Point& point) {
    return std::all_of(axes.begin(), axes.end(), [&](std::size_t i) {
        return i == axis || (block.low[i] < point[i] && point[i] < block.high[i]);
    });
}

std::vector<Span> without(const std::vector<Span>& spans, double from, double to) {
    std::vector<Span> kept;
    for (const Span& span : spans) {
        const Span before{span.from, std::min(span.to, from)};
        const Span after{std::max(span.from, to), span.to};
        if (before.from < before.to) kept.push_back(before);
        if (after.from < after.to) kept.push_back(after);
    }
    return kept;
}

std::vector<Span> without_nothings(const std::vector<Span>& spans) {
    std::vector<Span> kept;
    for (const Span& span : spans) {
        if (span.to - span.from < nothing_mm) continue;
        if (!kept.empty() && span.from - kept.back().to < nothing_mm) kept.back().to = span.to;
        else kept.push_back(span);
    }
    return kept;
}

}  // namespace

std::vector<Span> wood_along(const Solid& solid, int axis, const Point& point) {
    const auto a = static_cast<std::size_t>(axis);
    if (!line_meets(solid.hull, a, point)) return {};
    std::vector<Span> spans{{solid.hull.low[a], solid.hull.high[a]}};
    for (const Block& cut : solid.cuts) {
        // A line that runs where two cuts meet is not in the wood, nor in the skin that rounding may leave there.
        if (line_meets(grown(cut, nothing_mm / 2), a, point)) spans = without(spans, cut.low[a], cut.high[a]);
    }
    return without_nothings(spans);
}

std::vector<Block> left_of(const Block& block, const std::vector<Block>& cuts) {
    std::vector<Block> left;
    if (has_volume(block)) left.push_back(block);
    for (const Block& cut : cuts) {
        std::vector<Block> smaller;
        for (const Block& piece : left) cut_out(piece, cut, smaller);
        left = std::move(smaller);
    }
    return left;
}

bool leaves_more_than(const Block& block, const std::vector<Block>& cuts, double edge_mm) {
    // The middles of the cubes that fit are the block less half an edge all round, out of reach of the cuts by the same.
    std::vector<Block> wider;
    for (const Block& cut : cuts) wider.push_back(grown(cut, edge_mm / 2));
    return !left_of(grown(block, -edge_mm / 2), wider).empty();
}

bool overlap_more_than(const Solid& one, const Solid& other, double depth_mm) {
    std::vector<Block> cuts = one.cuts;
    cuts.insert(cuts.end(), other.cuts.begin(), other.cuts.end());
    return leaves_more_than(common(one.hull, other.hull), cuts, depth_mm);
}

Solid placed(const Solid& board, const Placing& placing) {
    const auto moved = [&](const Block& block) {
        Block in_box;
        for (const std::size_t i : axes) {
            const auto to = static_cast<std::size_t>(placing.axis[i]);
            const double corner = placing.corner[to];
            in_box.low[to] = placing.backwards[i] ? corner - block.high[i] : corner + block.low[i];
            in_box.high[to] = placing.backwards[i] ? corner - block.low[i] : corner + block.high[i];
        }
        return in_box;
    };
    Solid result{moved(board.hull), {}};
    for (const Block& cut : board.cuts) result.cuts.push_back(moved(cut));
    return result;
}

}  // namespace checker
