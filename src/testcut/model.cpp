#include "testcut/model.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace kw {

namespace {

bool is_amount(double value) { return std::isfinite(value) && value >= 0.0; }

bool is_sound(const Control& control, std::size_t controls) {
    if (control.gain && *control.gain >= controls) return false;
    if (control.offset && *control.offset >= controls) return false;
    return std::isfinite(control.set_mm) && is_amount(control.spread_mm) &&
           is_amount(control.resolution_mm) && is_amount(control.move_spread_mm) &&
           is_amount(control.move_gain_spread) && is_amount(control.effort) && control.least_mm <= 0.0 &&
           std::is_sorted(control.amounts_mm.begin(), control.amounts_mm.end());
}

bool is_sound(const Form& form, std::size_t controls) {
    const auto finite = [](double value) { return std::isfinite(value); };
    return form.weights.size() == controls && finite(form.constant) &&
           std::all_of(form.weights.begin(), form.weights.end(), finite);
}

bool is_sound(const Outcome& outcome, std::size_t controls) {
    return is_sound(outcome.form, controls) && std::isfinite(outcome.target_mm) && outcome.below_mm >= 0.0 &&
           outcome.above_mm >= 0.0 && outcome.below_mm + outcome.above_mm > 0.0;
}

}  // namespace

double Outcome::tolerance_mm() const {
    if (std::isinf(below_mm)) return above_mm;
    if (std::isinf(above_mm)) return below_mm;
    return 0.5 * (below_mm + above_mm);
}

bool is_sound(const Model& model) {
    const std::size_t n = model.controls.size();
    return n > 0 && model.outcomes.size() <= most_outcomes &&
           std::all_of(model.controls.begin(), model.controls.end(),
                       [n](const Control& control) { return is_sound(control, n); }) &&
           std::all_of(model.readings.begin(), model.readings.end(),
                       [n](const Reading& reading) {
                           return is_sound(reading.form, n) && reading.spread_mm >= 0.0;
                       }) &&
           std::all_of(model.outcomes.begin(), model.outcomes.end(),
                       [n](const Outcome& outcome) { return is_sound(outcome, n); }) &&
           std::all_of(model.removed.begin(), model.removed.end(),
                       [n](const Form& form) { return is_sound(form, n); });
}

Belief belief_from_priors(const Model& model) {
    assert(is_sound(model));
    const std::size_t n = model.controls.size();
    Belief belief{std::vector<double>(n), std::vector<double>(n * n, 0.0)};
    for (std::size_t i = 0; i < n; ++i) {
        const Control& control = model.controls[i];
        belief.mean[i] = control.set_mm;
        belief.covariance[i * n + i] = control.spread_mm * control.spread_mm;
    }
    for (std::size_t i = 0; i < n; ++i) {
        const auto& offset = model.controls[i].offset;
        if (!offset) continue;
        const double unsure = belief.covariance[*offset * n + *offset];
        belief.covariance[i * n + i] += unsure;
        belief.covariance[i * n + *offset] = belief.covariance[*offset * n + i] = unsure;
    }
    return belief;
}

Belief predict_move(const Model& model, const Belief& belief, const Move& move) {
    assert(move.control < belief.size() && belief.size() == model.controls.size());
    assert(std::isfinite(move.by_mm));
    if (move.by_mm == 0.0) return belief;
    const Control& control = model.controls[move.control];
    const std::size_t n = belief.size();
    Belief next = belief;
    // Put back to nothing, as a second pass that is left out: then nothing of it is unsure.
    constexpr double hair_mm = 1e-9;
    if (move.by_mm <= control.least_mm + hair_mm) {
        next.mean[move.control] = 0.0;
        for (std::size_t j = 0; j < n; ++j)
            next.covariance[move.control * n + j] = next.covariance[j * n + move.control] = 0.0;
        return next;
    }
    next.mean[move.control] += move.by_mm;
    if (control.gain) {
        // F P F', where F adds `by` times the gain's row to the control's.
        next.mean[move.control] += move.by_mm * belief.mean[*control.gain];
        for (std::size_t j = 0; j < n; ++j)
            next.covariance[move.control * n + j] += move.by_mm * next.covariance[*control.gain * n + j];
        for (std::size_t i = 0; i < n; ++i)
            next.covariance[i * n + move.control] += move.by_mm * next.covariance[i * n + *control.gain];
    }
    const double wobble_mm = control.move_gain_spread * move.by_mm;
    next.covariance[move.control * n + move.control] +=
        control.move_spread_mm * control.move_spread_mm + wobble_mm * wobble_mm;
    return next;
}

Belief predict_moves(const Model& model, const Belief& belief, const std::vector<Move>& moves) {
    Belief next = belief;
    for (const Move& move : moves) next = predict_move(model, next, move);
    return next;
}

Belief predict_fresh_ends(const Model& model, const Belief& belief) {
    const std::size_t n = belief.size();
    Belief next = belief;
    for (std::size_t c = 0; c < n; ++c) {
        const Control& control = model.controls[c];
        if (!control.of_test_ends) continue;
        next.mean[c] = control.set_mm;
        for (std::size_t i = 0; i < n; ++i) next.covariance[c * n + i] = next.covariance[i * n + c] = 0.0;
        next.covariance[c * n + c] = control.spread_mm * control.spread_mm;
    }
    return next;
}

bool recuts(const Model& model, const Belief& belief, const std::vector<Move>& moves, double alike_mm) {
    return std::all_of(model.removed.begin(), model.removed.end(), [&](const Form& form) {
        double more = 0.0;
        for (const Move& move : moves) {
            const auto& gain = model.controls[move.control].gain;
            more += form.weights[move.control] * move.by_mm * (1.0 + (gain ? belief.mean[*gain] : 0.0));
        }
        return more >= -alike_mm;
    });
}

}  // namespace kw
