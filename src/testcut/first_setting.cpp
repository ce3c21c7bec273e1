#include "testcut/first_setting.h"

#include <algorithm>
#include <cmath>

#include "testcut/joint_model.h"
#include "testcut/normal.h"

namespace kw {

namespace {

// A setting other than the planned one must save this part of a test cut: a second or two.
constexpr double worth_setting = 0.005;

// Setting a scale for the first time adds no error but the setting's own, which is in the belief already.
Model as_set_afresh(Model model) {
    for (Control& control : model.controls) {
        control.move_spread_mm = control.move_gain_spread = 0.0;
        control.gain.reset();
        // A stack is put on with the shims that it needs: dearer than turning a wheel, cheaper than taking it off again.
        control.effort = std::min(control.effort, 1.5);
        // A second pass is for a slot that was found too narrow, not for one that may be.
        if (control.least_mm == 0.0) control.movable = false;
    }
    return model;
}

// Whether some single control can raise (or lower) the outcome without giving back wood that was cut away.
bool can_recut(const Model& model, const Outcome& outcome, double direction) {
    for (std::size_t c = 0; c < model.controls.size(); ++c) {
        const double effect = outcome.form.weights[c];
        if (!model.controls[c].movable || effect == 0.0) continue;
        const double way = direction * effect > 0.0 ? 1.0 : -1.0;
        const bool keeps = std::all_of(model.removed.begin(), model.removed.end(),
                                       [&](const Form& form) { return form.weights[c] * way >= 0.0; });
        if (keeps) return true;
    }
    return false;
}

// What a first cut from this belief is expected to cost beyond itself, in test cuts; outcomes taken one by one.
double cost_of_first(const Model& model, const Belief& belief, const AdviceCosts& costs) {
    double fits = 1.0, on_the_right_side = 1.0;
    for (const Outcome& outcome : model.outcomes) {
        const Marginal now = marginal(belief, outcome.form);
        const double sd = std::max(now.sd_mm, 1e-6);
        const double low = normal_below((outcome.low_mm() - now.mean_mm) / sd);
        const double high = normal_below((now.mean_mm - outcome.high_mm()) / sd);
        fits *= 1.0 - low - high;
        double lost = 0.0;
        if (!can_recut(model, outcome, 1.0)) lost += low;
        if (!can_recut(model, outcome, -1.0)) lost += high;
        on_the_right_side *= 1.0 - lost;
    }
    return (1.0 - fits) + costs.fresh_ends * (1.0 - on_the_right_side);
}

Belief moved(Belief belief, const std::vector<double>& by) {
    for (std::size_t c = 0; c < by.size(); ++c) belief.mean[c] += by[c];
    return belief;
}

}  // namespace

std::vector<Move> first_moves(const Model& asked, const AdviceCosts& costs) {
    const Model model = as_set_afresh(asked);
    const Belief prior = belief_from_priors(model);
    MoveOptions options;
    options.effort_price = costs.move;
    // What a scale is known to be off by is taken off, whether the joint needs it or not: the number is set anyway.
    std::vector<double> by(model.controls.size(), 0.0);
    for (std::size_t c = 0; c < by.size(); ++c) {
        const Control& control = model.controls[c];
        if (!control.movable || !control.offset || control.resolution_mm <= 0.0 || control.effort > 1.0)
            continue;
        by[c] = -control.resolution_mm * std::round(prior.mean[*control.offset] / control.resolution_mm);
    }
    for (const Move& move : best_move(model, moved(prior, by), options).moves) by[move.control] += move.by_mm;

    // Then a step at a time to the safe side, while that pays.
    double least = cost_of_first(model, moved(prior, by), costs);
    for (bool better = true; better;) {
        better = false;
        for (std::size_t c = 0; c < by.size(); ++c) {
            const Control& control = model.controls[c];
            if (!control.movable || control.resolution_mm <= 0.0 || control.effort > 1.0) continue;
            for (const double step : {control.resolution_mm, -control.resolution_mm}) {
                std::vector<double> trial = by;
                trial[c] += step;
                const double cost = cost_of_first(model, moved(prior, trial), costs);
                if (cost >= least - worth_setting) continue;
                least = cost;
                by = trial;
                better = true;
            }
        }
    }
    std::vector<Move> moves;
    for (std::size_t c = 0; c < by.size(); ++c)
        if (by[c] != 0.0) moves.push_back({c, by[c]});
    return moves;
}

Settings first_dial(const Model& model, const Settings& designed, const AdviceCosts& costs) {
    return turned(designed, model, first_moves(model, costs));
}

}  // namespace kw
