#pragma once
// A locking rabbet cut at one height, as the estimator sees it: the forms are those of the joint's derivation
// (dado [f, f + k] deep h in the side; rabbet in the front deep h, from 0 to f + k - s). Spreads and
// resolutions are common practice, no source. Used by all the tests of the estimator.

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "testcut/model.h"

namespace est {

inline constexpr double endless = std::numeric_limits<double>::infinity();

// Of the normal distribution.
inline double cumulative(double z) { return 0.5 * std::erfc(-z / std::sqrt(2.0)); }

enum Index : std::size_t { fence, height, kerf, spacer, stock };

inline kw::Form form(const char* name, std::vector<double> weights, double constant = 0.0) {
    return {name, std::move(weights), constant};
}

inline kw::Form fit_form() { return form("fit", {0, 1, 1, 0, -1}); }
inline kw::Form gap_form() { return form("shoulder_gap", {1, -1, 1, -1, 0}); }
inline kw::Form step_form() { return form("face_step", {1, -1, 0, 0, 0}); }

// Stock 12.1, dado 6.35 wide, clearance 0.1, end relief 0.4, flush.
inline kw::Model locking_rabbet() {
    constexpr double w = 6.35;
    constexpr double thickness = 12.1;
    constexpr double clearance = 0.1;
    constexpr double relief = 0.4;
    constexpr double h = thickness - w + clearance;
    kw::Model model;
    model.controls = {
        {"fence", h, 0.30, true, 0.05, 0.03, 0.02, 1.0},
        {"height", h, 0.30, true, 0.05, 0.03, 0.02, 1.0},
        {"kerf", w, 0.10, false, 0.0, 0.0, 0.0, 0.0},
        {"spacer", w + relief, 0.05, true, 0.10, 0.01, 0.0, 1.5},
        {"stock", thickness, 0.10, false, 0.0, 0.0, 0.0, 0.0},
    };
    const auto plain = kw::ReadingKind::plain;
    model.readings = {
        {form("dado_width", {0, 0, 1, 0, 0}), 0.05, plain},
        {form("dado_depth", {0, 1, 0, 0, 0}), 0.05, plain},
        {form("lip", {1, 0, 0, 0, 0}), 0.05, plain},
        {form("tongue_thickness", {0, -1, 0, 0, 1}), 0.05, plain},
        {form("tongue_length", {1, 0, 1, -1, 0}), 0.05, plain},
        {form("stock_thickness", {0, 0, 0, 0, 1}), 0.05, plain},
        {fit_form(), 0.03, plain},
        {gap_form(), 0.03, kw::ReadingKind::at_least_zero},
        {step_form(), 0.10, plain},
    };
    model.outcomes = {
        {fit_form(), clearance, 0.1, 0.1},
        {gap_form(), -relief, endless, relief + 0.1},
        {step_form(), 0.0, 0.15, 0.15},
    };
    return model;
}

// All controls stand exactly where they are said to.
inline kw::Belief known(const std::vector<double>& controls) {
    return {controls, std::vector<double>(controls.size() * controls.size(), 0.0)};
}

class Random {
public:
    explicit Random(std::uint64_t seed) : engine_(seed) {}
    double normal(double sd = 1.0) { return sd * normal_(engine_); }
    double uniform(double low, double high) { return low + (high - low) * uniform_(engine_); }
    std::size_t below(std::size_t n) { return std::size_t(uniform(0.0, double(n))); }

private:
    std::mt19937_64 engine_;
    std::normal_distribution<double> normal_;
    std::uniform_real_distribution<double> uniform_;
};

// Where the controls of a shop truly stand.
inline std::vector<double> draw(const kw::Model& shop, Random& random) {
    std::vector<double> truth;
    for (const kw::Control& control : shop.controls)
        truth.push_back(control.set_mm + random.normal(control.spread_mm));
    return truth;
}

inline double read_off(const kw::Reading& reading, const std::vector<double>& truth, Random& random) {
    const double value = kw::value_at(reading.form, truth) + random.normal(reading.spread_mm);
    return reading.kind == kw::ReadingKind::at_least_zero ? std::max(0.0, value) : value;
}

}  // namespace est
