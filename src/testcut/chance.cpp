#include "testcut/chance.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <optional>

#include "testcut/normal.h"
#include "testcut/quadrature.h"
#include "testcut/quick_normal.h"

namespace kw {

namespace {

using Row = std::array<double, most_outcomes>;

// Parts of the accuracy asked for. A side that is all but certain to hold is left out: by Boole's inequality
// that costs no more than its own chance of failing.
constexpr double ignored_part = 1e-3;
constexpr double quadrature_part = 0.1;
constexpr double inner_part = 0.5;  // of the next outer level's tolerance
constexpr int most_halvings = 12;
constexpr double reach_sigmas = 5.0;                      // 6e-7 lies beyond
constexpr double panel_sigmas = 4.0;                      // the widest panel to start from
static_assert(2.0 * reach_sigmas <= 3.0 * panel_sigmas);  // most_ends counts on it

// A side that turns from open to shut within this many sigmas of an outer variable is steep, and has done so
// but for a hundred-thousandth within edge_blurs of its own sigmas.
constexpr double steep_sigmas = 0.2;
constexpr double edge_blurs = 4.0;

// A variable whose variance, given those before it, is below this part of its own, hangs on them. Taking it
// as exact moves its limits by 1e-5 of its sigma.
constexpr double dependent_part = 1e-10;
constexpr double touching_mm = 1e-9;  // a known value this near to an edge lies on it

// One side of the box: low <= loading . z <= high, z independent standard normals.
struct Side {
    Row loading{};
    Row covariance{};  // with the sides, in the order that these have now
    double low = 0.0;
    double high = 0.0;
    double free_variance = 0.0;  // given the z chosen so far
    double own_variance = 0.0;
    std::size_t level = 0;  // index of the last z that it hangs on
};

struct Staircase {
    std::array<Side, most_outcomes> sides{};
    std::size_t count = 0;
    std::size_t rank = 0;
};

using Levels = std::array<double, most_outcomes>;

double shift(const Side& side, const Levels& z, std::size_t levels) {
    double sum = 0.0;
    for (std::size_t j = 0; j < levels; ++j) sum += side.loading[j] * z[j];
    return sum;
}

bool depends(const Side& side) { return side.free_variance <= dependent_part * side.own_variance; }

double chance_given(const Side& side, const Levels& z, std::size_t levels) {
    const double at = shift(side, z, levels);
    const double sd = std::sqrt(side.free_variance);
    return quick_normal().between((side.low - at) / sd, (side.high - at) / sd);
}

// The side that leaves the least, given typical values of the z before; none when all the rest hang on them.
std::optional<std::size_t> most_restrictive(const Staircase& stairs, std::size_t from, const Levels& z) {
    std::optional<std::size_t> best;
    double least = infinity;
    for (std::size_t i = from; i < stairs.count; ++i) {
        if (depends(stairs.sides[i])) continue;
        const double chance = chance_given(stairs.sides[i], z, from);
        if (chance < least) {
            least = chance;
            best = i;
        }
    }
    return best;
}

void swap_sides(Staircase& stairs, std::size_t a, std::size_t b) {
    std::swap(stairs.sides[a], stairs.sides[b]);
    for (Side& side : stairs.sides) std::swap(side.covariance[a], side.covariance[b]);
}

// One column of the Cholesky factor, from the side at `level`.
void eliminate(Staircase& stairs, std::size_t level) {
    Side& pivot = stairs.sides[level];
    const double scale = std::sqrt(pivot.free_variance);
    pivot.loading[level] = scale;
    pivot.free_variance = 0.0;
    for (std::size_t i = level + 1; i < stairs.count; ++i) {
        Side& side = stairs.sides[i];
        double sum = side.covariance[level];
        for (std::size_t j = 0; j < level; ++j) sum -= side.loading[j] * pivot.loading[j];
        side.loading[level] = sum / scale;
        side.free_variance = std::max(0.0, side.free_variance - side.loading[level] * side.loading[level]);
    }
}

// The mean that the side leaves its z; good enough to choose an order by, so nothing is done about far tails.
double typical(const Side& side, const Levels& z, std::size_t level) {
    const double at = shift(side, z, level);
    const double low = (side.low - at) / side.loading[level];
    const double high = (side.high - at) / side.loading[level];
    const double mass = normal_between(low, high);
    if (mass < 1e-9) return std::clamp(0.0, low, high);
    return (normal_density(low) - normal_density(high)) / mass;
}

void find_level(Side& side, std::size_t rank) {
    const double least = std::sqrt(dependent_part * side.own_variance);
    for (std::size_t j = 0; j < rank; ++j) {
        if (std::abs(side.loading[j]) > least) side.level = j;
    }
}

void factor(Staircase& stairs) {
    Levels z{};
    while (stairs.rank < stairs.count) {
        const std::optional<std::size_t> next = most_restrictive(stairs, stairs.rank, z);
        if (!next) break;
        swap_sides(stairs, stairs.rank, *next);
        eliminate(stairs, stairs.rank);
        z[stairs.rank] = typical(stairs.sides[stairs.rank], z, stairs.rank);
        ++stairs.rank;
    }
    for (std::size_t i = 0; i < stairs.count; ++i) find_level(stairs.sides[i], stairs.rank);
}

struct Interval {
    double low = -infinity;
    double high = infinity;
};

// What the sides that end at this level leave of its z.
Interval open_at(const Staircase& stairs, std::size_t level, const Levels& z) {
    Interval open;
    for (std::size_t i = 0; i < stairs.count; ++i) {
        const Side& side = stairs.sides[i];
        if (side.level != level) continue;
        const double at = shift(side, z, level);
        double low = (side.low - at) / side.loading[level];
        double high = (side.high - at) / side.loading[level];
        if (side.loading[level] < 0.0) std::swap(low, high);
        open.low = std::max(open.low, low);
        open.high = std::min(open.high, high);
    }
    return open;
}

// Both ends, what panel_sigmas can cut within the reach, and a pair about each edge of each other side.
constexpr std::size_t most_ends = 4 + 4 * (most_outcomes - 1);

struct PanelEnds {
    std::array<double, most_ends> at{};
    std::size_t count = 0;

    void add(double end) { at[count++] = end; }
};

// Where to start new panels: panel_sigmas apart at most, and about every edge of a deeper side that is steep
// here, which a panel could otherwise step over.
PanelEnds panel_ends(const Staircase& stairs, std::size_t level, const Levels& z, Interval open) {
    PanelEnds ends;
    ends.add(open.high);
    const int panels = int(std::ceil((open.high - open.low) / panel_sigmas));
    for (int i = 0; i < panels; ++i) ends.add(open.low + panel_sigmas * i);
    for (std::size_t i = 0; i < stairs.count; ++i) {
        const Side& side = stairs.sides[i];
        if (side.level <= level || side.loading[level] == 0.0) continue;
        double rest = 0.0;
        for (std::size_t j = level + 1; j < stairs.rank; ++j) rest += side.loading[j] * side.loading[j];
        const double blur = std::sqrt(rest) / std::abs(side.loading[level]);
        if (blur > steep_sigmas) continue;
        for (const double limit : {side.low, side.high}) {
            const double edge = (limit - shift(side, z, level)) / side.loading[level];
            for (const double end : {edge - edge_blurs * blur, edge + edge_blurs * blur})
                if (end > open.low && end < open.high) ends.add(end);
        }
    }
    std::sort(ends.at.begin(), ends.at.begin() + std::ptrdiff_t(ends.count));
    return ends;
}

double chance_from(const Staircase& stairs, std::size_t level, const Levels& z, double tolerance) {
    Interval open = open_at(stairs, level, z);
    if (level + 1 == stairs.rank) return quick_normal().between(open.low, open.high);
    open.low = std::max(open.low, -reach_sigmas);
    open.high = std::min(open.high, reach_sigmas);
    if (open.low >= open.high) return 0.0;

    const auto integrand = [&](double here) {
        Levels next = z;
        next[level] = here;
        return quick_normal().density(here) * chance_from(stairs, level + 1, next, inner_part * tolerance);
    };
    const PanelEnds ends = panel_ends(stairs, level, z, open);
    const double share = tolerance / double(ends.count - 1);
    double sum = 0.0;
    for (std::size_t i = 0; i + 1 < ends.count; ++i)
        sum += integrate_adaptive(integrand, ends.at[i], ends.at[i + 1], share, most_halvings);
    return sum;
}

Side side_of(const std::vector<double>& mean, const std::vector<double>& covariance, const ToleranceBox& box,
             std::size_t i) {
    Side side;
    side.low = box.low[i] - mean[i];
    side.high = box.high[i] - mean[i];
    side.own_variance = side.free_variance = std::max(0.0, covariance[i * (mean.size() + 1)]);
    return side;
}

double chance_alone(const Side& side) {
    if (side.own_variance >= known_variance_mm2) return chance_given(side, {}, 0);
    return side.low <= touching_mm && side.high >= -touching_mm ? 1.0 : 0.0;
}

}  // namespace

double box_chance(const std::vector<double>& mean, const std::vector<double>& covariance,
                  const ToleranceBox& box, double accuracy) {
    const std::size_t m = mean.size();
    assert(m <= most_outcomes && covariance.size() == m * m && box.low.size() == m && box.high.size() == m);
    const double ignored_chance = ignored_part * accuracy;
    std::vector<std::size_t> unsure;
    for (std::size_t i = 0; i < m; ++i) {
        const double chance = chance_alone(side_of(mean, covariance, box, i));
        if (chance <= ignored_chance) return chance;
        if (1.0 - chance > ignored_chance) unsure.push_back(i);
    }
    if (unsure.empty()) return 1.0;

    Staircase stairs;
    for (const std::size_t i : unsure) {
        Side side = side_of(mean, covariance, box, i);
        for (std::size_t j = 0; j < unsure.size(); ++j) side.covariance[j] = covariance[i * m + unsure[j]];
        stairs.sides[stairs.count++] = side;
    }
    factor(stairs);
    return std::clamp(chance_from(stairs, 0, {}, quadrature_part * accuracy), 0.0, 1.0);
}

std::vector<double> outcome_mean(const Model& model, const Belief& belief) {
    std::vector<double> mean;
    for (const Outcome& outcome : model.outcomes) mean.push_back(value_at(outcome.form, belief.mean));
    return mean;
}

std::vector<double> outcome_covariance(const Model& model, const Belief& belief) {
    std::vector<double> all;
    for (const Outcome& a : model.outcomes)
        for (const Outcome& b : model.outcomes) all.push_back(covariance(belief, a.form, b.form));
    return all;
}

ToleranceBox outcome_box(const Model& model) {
    ToleranceBox box;
    for (const Outcome& outcome : model.outcomes) {
        box.low.push_back(outcome.low_mm());
        box.high.push_back(outcome.high_mm());
    }
    return box;
}

double chance_in_tolerance(const Model& model, const Belief& belief) {
    return box_chance(outcome_mean(model, belief), outcome_covariance(model, belief), outcome_box(model));
}

}  // namespace kw
