#include "testcut/correct.h"

#include <cmath>
#include <limits>

#include "testcut/chance.h"
#include "testcut/normal.h"
#include "testcut/weighing.h"

namespace kw {

namespace {

// Nobody is sent back to the joint for less than this part of a test cut.
constexpr double worth_asking = 0.001;

// Of a unit of effort, where all that costs its worth leaves the joint as it is. What gains less is no gain.
constexpr double last_resort_price = 0.001;
// From here on a joint that no move is worth its while for is locked, and the maker told how likely it is.
constexpr double good_odds = 0.72;

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
    MoveOptions priced = options.move;
    // Another round costs about one test cut, so a chance given up costs as much of one.
    priced.effort_price = options.costs.move;
    priced.fresh_end_price = options.costs.fresh_ends;
    BestMove best = best_move(model, belief, priced);
    const double chance = chance_in_tolerance(model, belief);
    // What is too dear to be worth its chance is still better than to run parts at odds like these.
    if (best.moves.empty() && chance < std::min(options.wanted_chance, good_odds)) {
        priced.effort_price = last_resort_price;
        best = best_move(model, belief, priced);
    }
    const Weighing weighing(model, belief, best, options);
    Advice advice{AdviceKind::lock, {}, {}, {}, chance, best.chance_after, weighing.lock_cost(chance)};
    const Weighing::Asked asked = weighing.best_asked();
    const bool may_lock = chance >= options.wanted_chance;
    const double move = weighing.move_cost();
    const double without_reading = may_lock ? advice.expected_cost : move;
    if (asked.reading && asked.cost < without_reading - worth_asking) {
        advice.kind = AdviceKind::measure;
        advice.reading = asked.reading->form.name;
        advice.unread = std::move(best.moves);
        advice.expected_cost = asked.cost;
    } else if (!may_lock && !best.moves.empty()) {
        advice.kind = AdviceKind::move;
        advice.moves = std::move(best.moves);
        advice.expected_cost = move;
    }
    return advice;
}

}  // namespace kw
