#include "testcut/normal.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>

#include "testcut/quadrature.h"

namespace kw {

namespace {

constexpr double root_half = 0.70710678118654752440;
constexpr double density_at_zero = 0.39894228040143267794;

// Beyond this many sigmas, and beyond this many e-foldings from the likeliest point, nothing is left at
// double precision.
constexpr double far_sigmas = 9.0;
constexpr double far_foldings = 40.0;

struct Stretch {
    double from;
    double to;
};

constexpr std::size_t span_panels = 8;
constexpr std::size_t span_points = span_panels * panel_points;

struct WeightedPoints {
    std::array<double, span_points> at;
    std::array<double, span_points> mass;
};

// Points over the span, each with the mass of exp(-anchor t - t^2 / 2) that it stands for.
WeightedPoints weigh(Stretch span, double anchor) {
    WeightedPoints points{};
    std::size_t count = 0;
    const double half = 0.5 * (span.to - span.from) / double(span_panels);
    const auto add = [&](double t, double weight) {
        points.at[count] = t;
        points.mass[count] = weight * std::exp(-t * (anchor + 0.5 * t));
        ++count;
    };
    for (std::size_t panel = 0; panel < span_panels; ++panel) {
        const double middle = span.from + half * double(2 * panel + 1);
        for (const PanelNode& node : panel_nodes) {
            add(middle + half * node.at, node.weight);
            if (node.at > 0.0) add(middle - half * node.at, node.weight);
        }
    }
    return points;
}

TruncatedMoments moments_of(const WeightedPoints& points, double anchor) {
    double mass = 0.0;
    double first = 0.0;
    for (std::size_t i = 0; i < span_points; ++i) {
        mass += points.mass[i];
        first += points.mass[i] * points.at[i];
    }
    const double mean = first / mass;
    double second = 0.0;
    for (std::size_t i = 0; i < span_points; ++i) {
        const double off = points.at[i] - mean;
        second += points.mass[i] * off * off;
    }
    return {anchor + mean, second / mass};
}

// The part of [low, high] that holds any mass, measured from the anchor; high >= 0, anchor = max(low, 0).
Stretch span_with_mass(double low, double high, double anchor) {
    if (low <= 0.0) return {std::max(low, -far_sigmas), std::min(high, far_sigmas)};
    const double reach = 2.0 * far_foldings / (anchor + std::sqrt(anchor * anchor + 2.0 * far_foldings));
    return {0.0, std::min(high - low, reach)};
}

}  // namespace

double normal_density(double z) { return density_at_zero * std::exp(-0.5 * z * z); }

double normal_below(double z) { return 0.5 * std::erfc(-z * root_half); }

double normal_between(double low, double high) {
    if (!(low < high)) return 0.0;
    if (low > 0.0) return normal_below(-low) - normal_below(-high);
    return normal_below(high) - normal_below(low);
}

double normal_quantile(double chance) {
    // The chance is steep and smooth: halving from far out to close, then Newton.
    double low = -40.0, high = 40.0;
    while (high - low > 1e-2) {
        const double middle = 0.5 * (low + high);
        (normal_below(middle) < chance ? low : high) = middle;
    }
    double z = 0.5 * (low + high);
    for (int i = 0; i < 4; ++i) z -= (normal_below(z) - chance) / normal_density(z);
    return z;
}

TruncatedMoments truncated_moments(double low, double high) {
    assert(low <= high && low < infinity && high > -infinity);
    if (low == high) return {low, 0.0};
    if (high < 0.0) {
        const TruncatedMoments mirrored = truncated_moments(-high, -low);
        return {-mirrored.mean, mirrored.variance};
    }
    const double anchor = std::max(low, 0.0);
    return moments_of(weigh(span_with_mass(low, high, anchor), anchor), anchor);
}

}  // namespace kw
