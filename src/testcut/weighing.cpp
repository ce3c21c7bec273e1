#include "testcut/weighing.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "testcut/normal.h"
#include "testcut/quick_normal.h"

namespace kw {

namespace {

// A reading that removes less than this part of what is unsure isn't worth asking for.
constexpr double least_told = 0.01;
// However unlikely a lock is after the next cut, no more rounds than this are reckoned with.
constexpr double least_success = 0.2;

// Gauss-Hermite, seven points, for a standard normal (from memory; the tests integrate with it).
constexpr std::array<std::pair<double, double>, 7> hermite = {{{0.0, 0.457142857142857143},
                                                               {1.15440539473996813, 0.240123178605012714},
                                                               {-1.15440539473996813, 0.240123178605012714},
                                                               {2.36675941073454129, 0.030757123967586500},
                                                               {-2.36675941073454129, 0.030757123967586500},
                                                               {3.75043971772574225, 0.000548268855972218},
                                                               {-3.75043971772574225, 0.000548268855972218}}};

int times_read(const Reading& reading, const AdviceOptions& options) {
    const auto& read = options.already_read;
    return int(std::count(read.begin(), read.end(), reading.form.name));
}

// The belief to expect after a reading was taken `times`: its covariance, with the mean where it is (the reading's
// value isn't known yet). Removing the part p of the reading's variance S is what a plain reading of total variance
// S / p does.
Belief expect_reading(const Belief& belief, const Reading& reading, double times) {
    const Marginal form = marginal(belief, reading.form);
    const double form_variance = form.sd_mm * form.sd_mm;
    const double total = form_variance + reading.spread_mm * reading.spread_mm / times;
    const double noise = total / expected_part_told(belief, reading) - form_variance;
    return observe(belief, reading.form, form.mean_mm, std::sqrt(std::max(0.0, noise)));
}

double unsureness(const Model& model, const Belief& belief) {
    double sum = 0.0;
    for (const Outcome& outcome : model.outcomes) {
        const double sd = marginal(belief, outcome.form).sd_mm / outcome.tolerance_mm();
        sum += sd * sd;
    }
    return sum;
}

double chance_within(double low, double high, double mean, double variance) {
    const double sd = std::sqrt(std::max(variance, known_variance_mm2));
    return quick_normal().between((low - mean) / sd, (high - mean) / sd);
}

}  // namespace

Weighing::Weighing(const Model& model, const Belief& belief, const BestMove& best,
                   const AdviceOptions& options)
    : model_(model),
      belief_(belief),
      best_(best),
      options_(options),
      count_(model.outcomes.size()),
      covariance_(outcome_square(belief)),
      margin_sigmas_(normal_quantile(options.wanted_chance)),
      round_(1.0) {
    for (std::size_t i = 0; i < count_; ++i) mean_[i] = value_at(model.outcomes[i].form, belief.mean);
    for (const Move& move : best.moves) round_ += options.costs.move * model.controls[move.control].effort;
    if (!recuts(model, belief, best.moves)) round_ += options.costs.fresh_ends;
}

Weighing::Square Weighing::outcome_square(const Belief& belief) const {
    Square square{};
    for (std::size_t a = 0; a < count_; ++a)
        for (std::size_t b = 0; b <= a; ++b)
            square[a][b] = square[b][a] =
                covariance(belief, model_.outcomes[a].form, model_.outcomes[b].form);
    return square;
}

double Weighing::chance_about(const OfOutcomes& mean, const Square& covariance) const {
    double all = 1.0;
    for (std::size_t i = 0; i < count_; ++i) {
        const Outcome& outcome = model_.outcomes[i];
        all *= chance_within(outcome.low_mm(), outcome.high_mm(), mean[i], covariance[i][i]);
    }
    return all;
}

// The chance that the next cut, once it is read, can be locked: every outcome must then be believed far enough inside
// its tolerance. Where the readings will put it is as unsure as what they will take away.
double Weighing::chance_to_lock_next(const Belief& moved) const {
    Belief read = moved;
    for (const Reading& reading : model_.readings) read = expect_reading(read, reading, 1.0);
    double all = 1.0;
    for (std::size_t i = 0; i < count_; ++i) {
        const Outcome& outcome = model_.outcomes[i];
        const double before = marginal(moved, outcome.form).sd_mm, after = marginal(read, outcome.form).sd_mm;
        const double margin = margin_sigmas_ * after;
        all *= chance_within(outcome.low_mm() + margin, outcome.high_mm() - margin,
                             value_at(outcome.form, moved.mean), before * before - after * after);
    }
    return all;
}

double Weighing::move_cost_from(const Belief& belief) const {
    if (best_.moves.empty()) return infinity;
    const double success = chance_to_lock_next(predict_moves(model_, belief, best_.moves));
    return round_ / std::max(success, least_success);
}

// The mean, over where the outcomes may lie once this is read, of locking where that is allowed then, or of moving.
// Wherever the readings put them, a move brings them back: so the mean after the best move may stand for that.
double Weighing::cost_when_read(const Belief& read) const {
    const double moved = move_cost_from(read);
    const Square left = outcome_square(read);
    Square lost = covariance_;
    for (std::size_t a = 0; a < count_; ++a)
        for (std::size_t b = 0; b < count_; ++b) lost[a][b] -= left[a][b];

    // The directions in which the readings move the outcomes: the triangular factor of what the covariance loses.
    std::vector<OfOutcomes> directions;
    for (std::size_t j = 0; j < count_; ++j) {
        if (lost[j][j] < known_variance_mm2) continue;
        OfOutcomes direction{};
        const double pivot = std::sqrt(lost[j][j]);
        for (std::size_t i = j; i < count_; ++i) direction[i] = lost[i][j] / pivot;
        for (std::size_t i = j; i < count_; ++i)
            for (std::size_t k = j; k < count_; ++k) lost[i][k] -= direction[i] * direction[k];
        directions.push_back(direction);
    }
    // Gone along one at a time, as far as keeps the whole covariance.
    const double n = std::max<double>(1.0, double(directions.size()));
    if (directions.empty()) directions.push_back({});
    double sum = 0.0;
    for (const OfOutcomes& direction : directions) {
        for (const auto& [at, share] : hermite) {
            OfOutcomes mean = mean_;
            for (std::size_t i = 0; i < count_; ++i) mean[i] += at * std::sqrt(n) * direction[i];
            const double chance = chance_about(mean, left);
            const double lock = lock_cost(chance);
            const bool may_lock = chance >= options_.wanted_chance || std::isinf(moved);
            sum += share / n * (may_lock ? std::min(lock, moved) : moved);
        }
    }
    return sum;
}

Weighing::Asked Weighing::best_asked() const {
    const Reading* most = nullptr;
    double most_gain = least_told * unsureness(model_, belief_);
    Belief all = belief_;
    int readings = 0, left_of_most = 0;
    for (const Reading& reading : model_.readings) {
        const int left = options_.most_times - times_read(reading, options_);
        const double gain = left > 0 ? expected_gain(model_, belief_, reading) : 0.0;
        if (gain <= 0.0) continue;
        all = expect_reading(all, reading, 1.0);
        ++readings;
        if (gain <= most_gain) continue;
        most_gain = gain;
        most = &reading;
        left_of_most = left;
    }
    if (!most) return {nullptr, infinity};
    Asked asked{most, infinity};
    const double price = options_.costs.reading;
    for (int times = 1; times <= left_of_most; times *= 3)
        asked.cost =
            std::min(asked.cost, price * times + cost_when_read(expect_reading(belief_, *most, times)));
    if (readings > 1) asked.cost = std::min(asked.cost, price * readings + cost_when_read(all));
    return asked;
}

}  // namespace kw
