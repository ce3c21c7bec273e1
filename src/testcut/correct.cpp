#include "testcut/correct.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "testcut/chance.h"
#include "testcut/normal.h"

namespace kw {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// A reading that removes less than this part of what is unsure isn't worth asking for.
constexpr double least_told = 0.01;

bool is_left(const Reading& reading, const AdviceOptions& options) {
    const auto& read = options.already_read;
    return std::find(read.begin(), read.end(), reading.form.name) == read.end();
}

// The outcomes' variances, each in units of its tolerance squared.
double unsureness(const Model& model, const Belief& belief) {
    double sum = 0.0;
    for (const Outcome& outcome : model.outcomes) {
        const double sd = marginal(belief, outcome.form).sd_mm / outcome.tolerance_mm();
        sum += sd * sd;
    }
    return sum;
}

const Reading* most_telling(const Model& model, const Belief& belief, const AdviceOptions& options) {
    const Reading* best = nullptr;
    double most = least_told * unsureness(model, belief);
    for (const Reading& reading : model.readings) {
        if (!is_left(reading, options)) continue;
        const double gain = expected_gain(model, belief, reading);
        if (gain > most) {
            most = gain;
            best = &reading;
        }
    }
    return best;
}

// The belief to expect after a reading: its covariance, with the mean where it is (the reading's value isn't
// known yet). Removing the part p of the reading's variance S is what a plain reading of total variance S / p
// does.
Belief expect_reading(const Belief& belief, const Reading& reading) {
    const Marginal form = marginal(belief, reading.form);
    const double form_variance = form.sd_mm * form.sd_mm;
    const double total = form_variance + reading.spread_mm * reading.spread_mm;
    const double noise = total / expected_part_told(belief, reading) - form_variance;
    return observe(belief, reading.form, form.mean_mm, std::sqrt(std::max(0.0, noise)));
}

// The chance to expect when all that is left to read has been read and the best move been made. Where the
// readings will put the mean isn't known yet, but the move will bring it back: so the mean as it is may stand
// for it.
double chance_when_read(const Model& model, const Belief& belief, const AdviceOptions& options) {
    Belief known = belief;
    for (const Reading& reading : model.readings)
        if (is_left(reading, options)) known = expect_reading(known, reading);
    return best_move(model, known, options.move).chance_after;
}

}  // namespace

double expected_part_told(const Belief& belief, const Reading& reading) {
    if (reading.kind == ReadingKind::plain) return 1.0;
    const Marginal form = marginal(belief, reading.form);
    const double sd = std::hypot(form.sd_mm, reading.spread_mm);
    if (std::isinf(sd) || sd * sd < known_variance_mm2) return 1.0;
    const double zero = -form.mean_mm / sd;
    return 1.0 - normal_below(zero) * truncated_moments(-infinity, zero).variance;
}

double expected_gain(const Model& model, const Belief& belief, const Reading& reading) {
    const Marginal form = marginal(belief, reading.form);
    const double total = form.sd_mm * form.sd_mm + reading.spread_mm * reading.spread_mm;
    if (std::isinf(total) || form.sd_mm * form.sd_mm < known_variance_mm2) return 0.0;
    double gain = 0.0;
    for (const Outcome& outcome : model.outcomes) {
        const double shared = covariance(belief, outcome.form, reading.form) / outcome.tolerance_mm();
        gain += shared * shared / total;
    }
    return gain * expected_part_told(belief, reading);
}

Advice advise(const Model& model, const Belief& belief, const AdviceOptions& options) {
    BestMove best = best_move(model, belief, options.move);
    Advice advice{AdviceKind::lock, {}, {}, {}, chance_in_tolerance(model, belief), best.chance_after};
    if (advice.chance_in_tolerance >= options.wanted_chance) return advice;

    if (best.moves.empty() || best.chance_after < options.wanted_chance) {
        const Reading* reading = most_telling(model, belief, options);
        const double promised = best.chance_after + options.reading_worth;
        if (reading && (best.moves.empty() || chance_when_read(model, belief, options) >= promised)) {
            advice.kind = AdviceKind::measure;
            advice.reading = reading->form.name;
            advice.unread = std::move(best.moves);
            return advice;
        }
    }
    if (!best.moves.empty()) {
        advice.kind = AdviceKind::move;
        advice.moves = std::move(best.moves);
    }
    return advice;
}

}  // namespace kw
