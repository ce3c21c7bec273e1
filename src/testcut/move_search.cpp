#include "testcut/move_search.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

#include "testcut/trial.h"

namespace kw {

namespace {

// A trial that the quick judge puts this far below the best isn't worth the exact chance: what correlation between the outcomes
// changes is much the same for neighbours.
constexpr double hopeless = 0.004;
constexpr std::size_t finalists = 2;
constexpr std::size_t neighbours_weighed = 3;
constexpr int most_steps = 12;

using Choice = std::vector<std::size_t>;  // indices of levers

struct Trial {
    Amounts by{};
    double worth = -std::numeric_limits<double>::infinity();
};

// The best, to the quick judge, of rounding each amount down or up to what can be made.
Trial best_rounding(const Judge& judge, const Choice& choice) {
    const Amounts amounts = judge.least_squares(choice);
    std::array<std::pair<double, double>, most_levers> about;
    for (const std::size_t lever : choice)
        about[lever] = makeable_about(judge.levers()[lever], amounts[lever]);
    Trial best;
    const unsigned roundings = 1U << choice.size();
    for (unsigned up = 0; up < roundings; ++up) {
        Trial trial;
        for (std::size_t a = 0; a < choice.size(); ++a)
            trial.by[choice[a]] = (up >> a) & 1U ? about[choice[a]].second : about[choice[a]].first;
        trial.worth = judge.guess(trial.by);
        if (trial.worth > best.worth) best = trial;
    }
    return best;
}

// Calls `see` with all trials one step away, in one lever or in two at once (the joint's couplings), and with those
// that leave one lever out.
template <class See>
void each_neighbour(const std::vector<Lever>& levers, const Amounts& by, See see) {
    const auto with = [](Amounts trial, std::size_t lever, double amount) {
        trial[lever] = amount;
        return trial;
    };
    for (std::size_t a = 0; a < levers.size(); ++a) {
        if (by[a] != 0.0) see(with(by, a, 0.0));
        for (const double up : {1.0, -1.0}) {
            const Amounts one = with(by, a, next_makeable(levers[a], by[a], up));
            see(one);
            for (std::size_t b = 0; b < a; ++b)
                for (const double too : {1.0, -1.0}) see(with(one, b, next_makeable(levers[b], by[b], too)));
        }
    }
}

std::size_t moved_levers(const Amounts& by) {
    return by.size() - std::size_t(std::count(by.begin(), by.end(), 0.0));
}

// Goes to a better neighbour while there is one, as the quick judge sees it.
Trial climb(const Judge& judge, std::size_t most_moves, Trial trial) {
    trial.worth = judge.guess(trial.by);
    bool better = true;
    for (int step = 0; better && step < most_steps; ++step) {
        better = false;
        each_neighbour(judge.levers(), Trial(trial).by, [&](const Amounts& by) {
            if (moved_levers(by) > most_moves) return;
            const double worth = judge.guess(by);
            if (worth <= trial.worth) return;
            trial = {by, worth};
            better = true;
        });
    }
    return trial;
}

// The best, by the exact chance, of a trial and the few of its neighbours that look best.
Trial best_about(const Judge& judge, std::size_t most_moves, const Trial& climbed) {
    std::vector<Trial> near;
    each_neighbour(judge.levers(), climbed.by, [&](const Amounts& by) {
        if (moved_levers(by) > most_moves) return;
        const double worth = judge.guess(by);
        if (worth >= climbed.worth - hopeless) near.push_back({by, worth});
    });
    const auto few = near.begin() + std::ptrdiff_t(std::min(near.size(), neighbours_weighed));
    std::partial_sort(near.begin(), few, near.end(),
                      [](const Trial& a, const Trial& b) { return a.worth > b.worth; });
    Trial best{climbed.by, judge.worth(climbed.by)};
    for (auto trial = near.begin(); trial != few; ++trial) {
        const double worth = judge.worth(trial->by);
        if (worth > best.worth) best = {trial->by, worth};
    }
    return best;
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
std::vector<Trial> promising(const Judge& judge, std::size_t most_moves) {
    std::vector<Trial> all;
    for (const Choice& choice : choices(judge.levers().size(), most_moves))
        all.push_back(best_rounding(judge, choice));
    std::stable_sort(all.begin(), all.end(),
                     [](const Trial& a, const Trial& b) { return a.worth > b.worth; });
    all.resize(std::min(all.size(), finalists));
    return all;
}

}  // namespace

BestMove best_move(const Model& model, const Belief& belief, const MoveOptions& options) {
    assert(is_sound(model) && belief.size() == model.controls.size());
    const Judge judge(model, belief, options);
    Trial best;
    best.worth = judge.worth(best.by);
    Trial climbed;
    for (const Trial& start : promising(judge, options.most_moves)) {
        const Trial trial = climb(judge, options.most_moves, start);
        if (trial.worth > climbed.worth) climbed = trial;
    }
    const Trial trial = best_about(judge, options.most_moves, climbed);
    if (trial.worth > best.worth) best = trial;

    BestMove result;
    for (std::size_t l = 0; l < judge.levers().size(); ++l)
        if (best.by[l] != 0.0) result.moves.push_back({judge.levers()[l].control, best.by[l]});
    result.chance_after = chance_in_tolerance(model, predict_moves(model, belief, result.moves));
    return result;
}

}  // namespace kw
