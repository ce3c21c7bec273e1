#include "testcut/set_again.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "testcut/normal.h"
#include "testcut/start.h"

namespace kw {
namespace {

// Of settings by hand to a number that is known: that are no better than a first one. Common practice, no source.
constexpr double otherwise_share = 0.1;

enum class Setting { as_meant, as_first };

// What one setting of the control adds, one sigma. A control that is taken as known before any reading, as a stack of shims is, comes
// back no better than after a move.
double spread_set(const Model& model, const Control& control, Setting setting) {
    const double as_meant = std::max(control.spread_mm, control.move_spread_mm);
    const Scales usual = usual_scales();
    const bool is_pin = control.offset && model.controls[*control.offset].name == "pin offset";
    if (setting == Setting::as_first && control.name == "fence")
        return std::hypot(as_meant, is_pin ? usual_pin().spread_mm : usual.fence.spread_mm);
    if (setting == Setting::as_first && control.name == "height")
        return std::hypot(as_meant, usual.height.spread_mm);
    return as_meant;
}

Belief predict_set(const Model& model, Belief belief, const std::vector<std::string>& controls,
                   Setting setting) {
    const std::size_t n = belief.size();
    for (std::size_t c = 0; c < n; ++c) {
        const Control& control = model.controls[c];
        if (std::find(controls.begin(), controls.end(), control.name) == controls.end()) continue;
        // A second pass that there is none of isn't set.
        const bool none = control.name == "shift" && belief.mean[c] == 0.0;
        const double spread = none ? 0.0 : spread_set(model, control, setting);
        belief.covariance[c * n + c] += spread * spread;
    }
    return belief;
}

// The logarithm of how likely all of it was to be read.
double log_likelihood(Belief belief, const std::vector<Observation>& observations) {
    double sum = 0.0;
    for (const bool plain : {true, false})
        for (const Observation& one : observations) {
            if (one.is_plain() != plain) continue;
            const Innovation found = innovation(belief, one);
            const double sd = std::max(found.sd_mm, 1e-6);
            if (plain)
                sum -= 0.5 * found.sigmas * found.sigmas + std::log(sd * std::sqrt(2.0 * std::numbers::pi));
            else
                sum += std::log(std::max(1e-300, normal_between((one.low_mm - found.expected_mm) / sd,
                                                                (one.high_mm - found.expected_mm) / sd)));
            belief = observe_all(belief, {one});
        }
    return sum;
}

// The normal with the mean and covariance of both, `share` of them the second.
Belief joined(const Belief& first, const Belief& second, double share) {
    const std::size_t n = first.size();
    Belief out = first;
    for (std::size_t i = 0; i < n; ++i) out.mean[i] = (1.0 - share) * first.mean[i] + share * second.mean[i];
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j) {
            const auto part = [&](const Belief& one) {
                return one.covariance[i * n + j] + (one.mean[i] - out.mean[i]) * (one.mean[j] - out.mean[j]);
            };
            out.covariance[i * n + j] = (1.0 - share) * part(first) + share * part(second);
        }
    return out;
}

}  // namespace

Belief observe_set_again(const Model& model, const Belief& belief, const std::vector<std::string>& controls,
                         const std::vector<Observation>& observations) {
    if (controls.empty()) return observe_all(belief, observations);
    const Belief as_meant = predict_set(model, belief, controls, Setting::as_meant),
                 as_first = predict_set(model, belief, controls, Setting::as_first);
    // Held within what a double's exponential can take.
    const double log_odds =
        std::clamp(std::log(otherwise_share / (1.0 - otherwise_share)) +
                       log_likelihood(as_first, observations) - log_likelihood(as_meant, observations),
                   -500.0, 500.0);
    return joined(observe_all(as_meant, observations), observe_all(as_first, observations),
                  1.0 / (1.0 + std::exp(-log_odds)));
}

Belief predict_first_setting(const Model& model, const Belief& belief,
                             const std::vector<std::string>& controls) {
    return predict_set(model, belief, controls, Setting::as_first);
}

}  // namespace kw
