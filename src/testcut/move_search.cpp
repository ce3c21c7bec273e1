#include "testcut/move_search.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

#include "testcut/chance.h"
#include "testcut/normal.h"

namespace kw {

namespace {

// Nearness to the targets decides between equals: it is never worth more than this much chance.
constexpr double nearness_worth = 1e-3;
// The chances compared while searching need only rank the moves.
constexpr double search_accuracy = 1e-3;
// A trial that the quick judge puts this far below the one at hand isn't worth the exact chance.
constexpr double hopeless = 0.03;
constexpr std::size_t finalists = 2;
constexpr int most_steps = 12;
// A continuous control is tried in this part of the tightest tolerance.
constexpr double continuous_step = 1.0 / 16.0;
// Keeps the normal equations solvable where two controls do the same to the outcomes.
constexpr double ridge = 1e-9;

constexpr double infinity = std::numeric_limits<double>::infinity();

using Numbers = std::vector<double>;
using Choice = std::vector<std::size_t>;  // indices of levers

// A movable control, with what it does to the outcomes.
struct Lever {
    std::size_t control;
    Numbers effect;  // on each outcome, mm per mm
    double step;     // of the search, mm
    bool whole_steps;
    double jitter_mm;
    double gain_spread;
    double effort;
};

struct Search {
    Numbers mean;
    Numbers covariance;
    ToleranceBox box;
    Numbers target;
    Numbers stiffness;  // 1 / tolerance; 0 where an outcome may be anything
    std::vector<Lever> levers;
    double effort_price;

    std::size_t outcomes() const { return mean.size(); }
};

struct Trial {
    Numbers by;  // of each lever, mm
    double worth;
};

Lever lever_of(const Model& model, std::size_t index, double tightest_mm) {
    const Control& control = model.controls[index];
    Lever lever{index,
                {},
                control.resolution_mm,
                control.resolution_mm > 0.0,
                control.move_spread_mm,
                control.move_gain_spread,
                control.effort};
    for (const Outcome& outcome : model.outcomes) lever.effect.push_back(outcome.form.weights[index]);
    if (!lever.whole_steps) lever.step = continuous_step * tightest_mm;
    return lever;
}

Search prepare(const Model& model, const Belief& belief, double effort_price) {
    Search search{outcome_mean(model, belief),
                  outcome_covariance(model, belief),
                  outcome_box(model),
                  {},
                  {},
                  {},
                  effort_price};
    double stiffest = 0.0;
    for (const Outcome& outcome : model.outcomes) {
        search.target.push_back(outcome.target_mm);
        search.stiffness.push_back(1.0 / outcome.tolerance_mm());
        stiffest = std::max(stiffest, search.stiffness.back());
    }
    if (stiffest == 0.0) return search;  // nothing is asked for: nothing to move
    for (std::size_t i = 0; i < model.controls.size(); ++i)
        if (model.controls[i].movable) search.levers.push_back(lever_of(model, i, 1.0 / stiffest));
    return search;
}

Numbers mean_after(const Search& search, const Numbers& by) {
    Numbers mean = search.mean;
    for (std::size_t l = 0; l < by.size(); ++l)
        for (std::size_t i = 0; i < mean.size(); ++i) mean[i] += search.levers[l].effect[i] * by[l];
    return mean;
}

double added_variance(const Lever& lever, double by) {
    if (by == 0.0) return 0.0;
    const double gain_mm = lever.gain_spread * by;
    return lever.jitter_mm * lever.jitter_mm + gain_mm * gain_mm;
}

Numbers covariance_after(const Search& search, const Numbers& by) {
    const std::size_t m = search.outcomes();
    Numbers covariance = search.covariance;
    for (std::size_t l = 0; l < by.size(); ++l) {
        const double added = added_variance(search.levers[l], by[l]);
        const Numbers& effect = search.levers[l].effect;
        for (std::size_t i = 0; i < m; ++i)
            for (std::size_t j = 0; j < m; ++j) covariance[i * m + j] += added * effect[i] * effect[j];
    }
    return covariance;
}

// What a trial costs beside its chance: effort, and distance from the targets.
double cost(const Search& search, const Numbers& by, const Numbers& mean) {
    double effort = 0.0;
    for (std::size_t l = 0; l < by.size(); ++l)
        if (by[l] != 0.0) effort += search.levers[l].effort;
    double miss = 0.0;
    for (std::size_t i = 0; i < mean.size(); ++i) {
        const double off = search.stiffness[i] * (mean[i] - search.target[i]);
        miss += off * off / double(mean.size());
    }
    return search.effort_price * effort + nearness_worth * miss / (1.0 + miss);
}

struct Guess {
    double worth;    // as if the outcomes were independent: ranks trials well
    double ceiling;  // as if all outcomes but the least likely were sure: the worth is never more
};

// The quick judge: a tenth of a microsecond, from each outcome alone.
Guess guess(const Search& search, const Numbers& by) {
    const std::size_t m = search.outcomes();
    const Numbers mean = mean_after(search, by);
    double all = 1.0;
    double least = 1.0;
    for (std::size_t i = 0; i < m; ++i) {
        double variance = search.covariance[i * m + i];
        for (std::size_t l = 0; l < by.size(); ++l) {
            const double effect = search.levers[l].effect[i];
            variance += added_variance(search.levers[l], by[l]) * effect * effect;
        }
        const double sd = std::sqrt(std::max(variance, known_variance_mm2));
        const double chance =
            normal_between((search.box.low[i] - mean[i]) / sd, (search.box.high[i] - mean[i]) / sd);
        all *= chance;
        least = std::min(least, chance);
    }
    const double price = cost(search, by, mean);
    return {all - price, least - price};
}

double true_worth(const Search& search, const Numbers& by) {
    const Numbers mean = mean_after(search, by);
    return box_chance(mean, covariance_after(search, by), search.box, search_accuracy) -
           cost(search, by, mean);
}

// Gaussian elimination of a small positive definite system, row after row; the solution replaces `right`.
void solve(Numbers& matrix, Numbers& right) {
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

// The amounts of the chosen levers that bring the outcomes nearest to their targets, in units of their
// tolerances.
Numbers least_squares(const Search& search, const Choice& choice) {
    const std::size_t n = choice.size();
    Numbers matrix(n * n, 0.0);
    Numbers right(n, 0.0);
    for (std::size_t i = 0; i < search.outcomes(); ++i) {
        const double weight = search.stiffness[i] * search.stiffness[i];
        for (std::size_t a = 0; a < n; ++a) {
            const double effect = weight * search.levers[choice[a]].effect[i];
            right[a] += effect * (search.target[i] - search.mean[i]);
            for (std::size_t b = 0; b < n; ++b)
                matrix[a * n + b] += effect * search.levers[choice[b]].effect[i];
        }
    }
    double trace = 0.0;
    for (std::size_t a = 0; a < n; ++a) trace += matrix[a * n + a];
    if (trace == 0.0) return right;  // these controls do nothing to the outcomes
    for (std::size_t a = 0; a < n; ++a) matrix[a * n + a] += ridge * trace;
    solve(matrix, right);
    return right;
}

// The best, to the quick judge, of rounding each amount down or up to whole steps.
Trial best_rounding(const Search& search, const Choice& choice, const Numbers& amounts) {
    Trial best{Numbers(search.levers.size(), 0.0), -infinity};
    const unsigned roundings = 1U << choice.size();
    for (unsigned up = 0; up < roundings; ++up) {
        Trial trial{Numbers(search.levers.size(), 0.0), 0.0};
        for (std::size_t a = 0; a < choice.size(); ++a) {
            const Lever& lever = search.levers[choice[a]];
            const double steps = std::floor(amounts[a] / lever.step) + double((up >> a) & 1U);
            trial.by[choice[a]] = lever.whole_steps ? steps * lever.step : amounts[a];
        }
        trial.worth = guess(search, trial.by).worth;
        if (trial.worth > best.worth) best = std::move(trial);
    }
    return best;
}

double stepped(const Lever& lever, double by, double direction) {
    const double next = by + direction * lever.step;
    return lever.whole_steps ? lever.step * std::round(next / lever.step) : next;
}

// All trials one step away, in one lever or in two at once (the joint's couplings), and those that leave one
// lever out.
std::vector<Numbers> neighbours(const Search& search, const Numbers& by) {
    std::vector<Numbers> all;
    const auto with = [](Numbers trial, std::size_t lever, double amount) {
        trial[lever] = amount;
        return trial;
    };
    for (std::size_t a = 0; a < by.size(); ++a) {
        if (by[a] != 0.0) all.push_back(with(by, a, 0.0));
        for (const double up : {1.0, -1.0}) {
            const Numbers one = with(by, a, stepped(search.levers[a], by[a], up));
            all.push_back(one);
            for (std::size_t b = 0; b < a; ++b)
                for (const double too : {1.0, -1.0})
                    all.push_back(with(one, b, stepped(search.levers[b], by[b], too)));
        }
    }
    return all;
}

std::size_t moved_levers(const Numbers& by) {
    return by.size() - std::size_t(std::count(by.begin(), by.end(), 0.0));
}

// Goes to a better neighbour while there is one.
Trial polish(const Search& search, std::size_t most_moves, Trial trial) {
    const double hope = guess(search, trial.by).worth - hopeless;
    bool better = true;
    for (int step = 0; better && step < most_steps; ++step) {
        better = false;
        for (Numbers& by : neighbours(search, trial.by)) {
            if (moved_levers(by) > most_moves) continue;
            const Guess quick = guess(search, by);
            if (quick.worth < hope || quick.ceiling <= trial.worth) continue;
            const double worth = true_worth(search, by);
            if (worth <= trial.worth) continue;
            trial = {std::move(by), worth};
            better = true;
        }
    }
    return trial;
}

// Every choice of 1 to `most` levers, in a fixed order.
std::vector<Choice> choices(std::size_t levers, std::size_t most) {
    std::vector<Choice> all;
    std::vector<Choice> last{Choice{}};
    for (std::size_t size = 1; size <= std::min(levers, most); ++size) {
        std::vector<Choice> longer;
        for (const Choice& choice : last) {
            for (std::size_t l = choice.empty() ? 0 : choice.back() + 1; l < levers; ++l) {
                longer.push_back(choice);
                longer.back().push_back(l);
            }
        }
        all.insert(all.end(), longer.begin(), longer.end());
        last = std::move(longer);
    }
    return all;
}

// The best rounding of each choice, as the quick judge ranks them; the first few.
std::vector<Trial> promising(const Search& search, std::size_t most_moves) {
    std::vector<Trial> all;
    for (const Choice& choice : choices(search.levers.size(), most_moves))
        all.push_back(best_rounding(search, choice, least_squares(search, choice)));
    std::stable_sort(all.begin(), all.end(),
                     [](const Trial& a, const Trial& b) { return a.worth > b.worth; });
    all.resize(std::min(all.size(), finalists));
    return all;
}

}  // namespace

BestMove best_move(const Model& model, const Belief& belief, const MoveOptions& options) {
    assert(is_sound(model) && belief.size() == model.controls.size());
    const Search search = prepare(model, belief, options.effort_price);
    const Numbers still(search.levers.size(), 0.0);
    Trial best{still, true_worth(search, still)};
    for (Trial& trial : promising(search, options.most_moves)) {
        trial.worth = true_worth(search, trial.by);
        if (trial.worth > best.worth) best = std::move(trial);
    }
    best = polish(search, options.most_moves, std::move(best));

    BestMove result;
    for (std::size_t l = 0; l < search.levers.size(); ++l)
        if (best.by[l] != 0.0) result.moves.push_back({search.levers[l].control, best.by[l]});
    result.chance_after = chance_in_tolerance(model, predict_moves(model, belief, result.moves));
    return result;
}

}  // namespace kw
