#include "testcut/trial.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "testcut/quick_normal.h"

namespace kw {

namespace {

// Nearness to the targets decides between equals: it is never worth more than this much chance.
constexpr double nearness_worth = 1e-3;
// The chances compared while searching need only rank the moves.
constexpr double search_accuracy = 1e-3;
// A continuous control is tried in this part of the tightest tolerance.
constexpr double continuous_step = 1.0 / 16.0;
// Keeps the normal equations solvable where two controls do the same to the outcomes.
constexpr double added_to_diagonal = 1e-9;
// What comes back by less than this has not come back.
constexpr double alike_mm = 1e-6;

// Gaussian elimination of a small positive definite system, row after row; the solution replaces `right`.
void solve(std::vector<double>& matrix, std::vector<double>& right) {
    const std::size_t n = right.size();
    for (std::size_t pivot = 0; pivot < n; ++pivot) {
        for (std::size_t i = pivot + 1; i < n; ++i) {
            const double factor = matrix[i * n + pivot] / matrix[pivot * n + pivot];
            for (std::size_t j = pivot; j < n; ++j) matrix[i * n + j] -= factor * matrix[pivot * n + j];
            right[i] -= factor * right[pivot];
        }
    }
    for (std::size_t i = n; i-- > 0;) {
        for (std::size_t j = i + 1; j < n; ++j) right[i] -= matrix[i * n + j] * right[j];
        right[i] /= matrix[i * n + i];
    }
}

// A rounding error, against steps of hundredths.
constexpr double hair_mm = 1e-9;

}  // namespace

std::pair<double, double> makeable_about(const Lever& lever, double by) {
    if (!lever.amounts.empty()) {
        const auto above = std::lower_bound(lever.amounts.begin(), lever.amounts.end(), by - hair_mm);
        if (above == lever.amounts.end()) return {lever.amounts.back(), lever.amounts.back()};
        if (*above <= by + hair_mm || above == lever.amounts.begin()) return {*above, *above};
        return {*(above - 1), *above};
    }
    const double at_least = std::max(by, lever.least);
    if (!lever.whole_steps) return {at_least, at_least};
    const double below = lever.step * std::floor(at_least / lever.step);
    return {std::max(below, lever.least), below + lever.step};
}

double next_makeable(const Lever& lever, double by, double direction) {
    if (!lever.amounts.empty())
        return direction > 0.0 ? makeable_about(lever, by + 2.0 * hair_mm).second
                               : makeable_about(lever, by - 2.0 * hair_mm).first;
    const double next = by + direction * lever.step;
    return std::max(lever.least, lever.whole_steps ? lever.step * std::round(next / lever.step) : next);
}

Lever Judge::lever_of(const Model& model, const Belief& belief, std::size_t control,
                      double tightest_mm) const {
    const Control& from = model.controls[control];
    Lever lever;
    lever.control = control;
    lever.step = from.resolution_mm;
    lever.whole_steps = from.resolution_mm > 0.0;
    lever.least = from.least_mm;
    lever.amounts = from.amounts_mm;
    lever.wobble = from.move_gain_spread;
    lever.jitter_mm = from.move_spread_mm;
    lever.effort = from.effort;
    if (from.gain) lever.gain += belief.mean[*from.gain];
    for (std::size_t i = 0; i < count_; ++i) lever.effect[i] = model.outcomes[i].form.weights[control];
    for (const Form& form : model.removed) lever.removed.push_back(lever.gain * form.weights[control]);
    if (!lever.whole_steps) lever.step = continuous_step * tightest_mm;
    return lever;
}

void Judge::relate_gains(const Model& model, const Belief& belief) {
    const std::size_t n = belief.size();
    for (Lever& lever : levers_) {
        const auto& gain = model.controls[lever.control].gain;
        if (!gain) continue;
        for (std::size_t i = 0; i < count_; ++i)
            for (std::size_t c = 0; c < n; ++c)
                lever.gain_covariance[i] +=
                    model.outcomes[i].form.weights[c] * belief.covariance[c * n + *gain];
        for (std::size_t l = 0; l < levers_.size(); ++l) {
            const auto& other = model.controls[levers_[l].control].gain;
            if (other) lever.gain_with[l] = belief.covariance[*gain * n + *other];
        }
    }
}

Judge::Judge(const Model& model, const Belief& belief, const MoveOptions& options)
    : options_(options), count_(model.outcomes.size()), box_(outcome_box(model)) {
    const std::vector<double> mean = outcome_mean(model, belief);
    const std::vector<double> covariance = outcome_covariance(model, belief);
    std::copy(mean.begin(), mean.end(), mean_.begin());
    std::copy(covariance.begin(), covariance.end(), covariance_.begin());
    double stiffest = 0.0;
    for (std::size_t i = 0; i < count_; ++i) {
        target_[i] = model.outcomes[i].target_mm;
        stiffness_[i] = 1.0 / model.outcomes[i].tolerance_mm();
        stiffest = std::max(stiffest, stiffness_[i]);
    }
    if (stiffest == 0.0) return;  // nothing is asked for: nothing to move
    for (std::size_t c = 0; c < model.controls.size(); ++c)
        if (model.controls[c].movable) levers_.push_back(lever_of(model, belief, c, 1.0 / stiffest));
    assert(levers_.size() <= most_levers);
    relate_gains(model, belief);
}

OfOutcomes Judge::mean_after(const Amounts& by) const {
    OfOutcomes mean = mean_;
    for (std::size_t l = 0; l < levers_.size(); ++l)
        for (std::size_t i = 0; i < count_; ++i) mean[i] += levers_[l].effect[i] * levers_[l].gain * by[l];
    return mean;
}

// Entry (a, b) of the outcomes' covariance: as it is, with the errors of the moves, the gains' among them.
double Judge::variance_after(const Amounts& by, std::size_t a, std::size_t b) const {
    double sum = covariance_[a * count_ + b];
    for (std::size_t l = 0; l < levers_.size(); ++l) {
        if (by[l] == 0.0) continue;
        const Lever& lever = levers_[l];
        const double wobble_mm = lever.wobble * by[l];
        const double own = lever.jitter_mm * lever.jitter_mm + wobble_mm * wobble_mm;
        sum += own * lever.effect[a] * lever.effect[b];
        sum +=
            by[l] * (lever.effect[a] * lever.gain_covariance[b] + lever.effect[b] * lever.gain_covariance[a]);
        for (std::size_t k = 0; k < levers_.size(); ++k)
            if (by[k] != 0.0)
                sum += by[l] * by[k] * lever.gain_with[k] * lever.effect[a] * levers_[k].effect[b];
    }
    return sum;
}

bool Judge::recuts(const Amounts& by) const {
    if (levers_.empty()) return true;
    for (std::size_t f = 0; f < levers_.front().removed.size(); ++f) {
        double more = 0.0;
        for (std::size_t l = 0; l < levers_.size(); ++l) more += levers_[l].removed[f] * by[l];
        if (more < -alike_mm) return false;
    }
    return true;
}

// What a trial costs beside its chance: effort, fresh ends, and distance from the targets.
double Judge::cost(const Amounts& by, const OfOutcomes& mean) const {
    double effort = 0.0;
    for (std::size_t l = 0; l < levers_.size(); ++l)
        if (by[l] != 0.0) effort += levers_[l].effort;
    double miss = 0.0;
    for (std::size_t i = 0; i < count_; ++i) {
        const double off = stiffness_[i] * (mean[i] - target_[i]);
        miss += off * off / double(count_);
    }
    return options_.effort_price * effort + (recuts(by) ? 0.0 : options_.fresh_end_price) +
           nearness_worth * miss / (1.0 + miss);
}

double Judge::guess(const Amounts& by) const {
    const OfOutcomes mean = mean_after(by);
    double all = 1.0;
    for (std::size_t i = 0; i < count_; ++i) {
        const double sd = std::sqrt(std::max(variance_after(by, i, i), known_variance_mm2));
        all *= quick_normal().between((box_.low[i] - mean[i]) / sd, (box_.high[i] - mean[i]) / sd);
    }
    return all - cost(by, mean);
}

double Judge::worth(const Amounts& by) const {
    const OfOutcomes mean = mean_after(by);
    std::vector<double> covariance(count_ * count_);
    for (std::size_t a = 0; a < count_; ++a)
        for (std::size_t b = 0; b < count_; ++b) covariance[a * count_ + b] = variance_after(by, a, b);
    const std::vector<double> at(mean.begin(), mean.begin() + std::ptrdiff_t(count_));
    return box_chance(at, covariance, box_, search_accuracy) - cost(by, mean);
}

Amounts Judge::least_squares(const std::vector<std::size_t>& choice) const {
    const std::size_t n = choice.size();
    std::vector<double> matrix(n * n, 0.0);
    std::vector<double> right(n, 0.0);
    const auto pull = [&](std::size_t l, std::size_t i) { return levers_[l].gain * levers_[l].effect[i]; };
    for (std::size_t i = 0; i < count_; ++i) {
        const double weight = stiffness_[i] * stiffness_[i];
        for (std::size_t a = 0; a < n; ++a) {
            right[a] += weight * pull(choice[a], i) * (target_[i] - mean_[i]);
            for (std::size_t b = 0; b < n; ++b)
                matrix[a * n + b] += weight * pull(choice[a], i) * pull(choice[b], i);
        }
    }
    double trace = 0.0;
    for (std::size_t a = 0; a < n; ++a) trace += matrix[a * n + a];
    Amounts amounts{};
    if (trace == 0.0) return amounts;  // these controls do nothing to the outcomes
    for (std::size_t a = 0; a < n; ++a) matrix[a * n + a] += added_to_diagonal * trace;
    solve(matrix, right);
    for (std::size_t a = 0; a < n; ++a) amounts[choice[a]] = right[a];
    return amounts;
}

}  // namespace kw
