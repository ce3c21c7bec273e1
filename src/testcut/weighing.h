#pragma once
// What locking, moving and reading are expected to cost after a test cut, in test cuts. Private to this folder.
// Chances are taken here as if the outcomes were independent: that ranks the choices, and what is reported is
// reckoned exactly by the caller.

#include <array>

#include "testcut/chance.h"
#include "testcut/correct.h"

namespace kw {

class Weighing {
public:
    Weighing(const Model& model, const Belief& belief, const BestMove& best, const AdviceOptions& options);

    double lock_cost(double chance) const { return options_.costs.bad_lock * (1.0 - chance); }
    // Of the moves found; infinite where there are none.
    double move_cost() const { return move_cost_from(belief_); }

    struct Asked {
        const Reading* reading = nullptr;  // nullptr: nothing worth asking for
        double cost = 0.0;
    };
    Asked best_asked() const;

private:
    using OfOutcomes = std::array<double, most_outcomes>;
    using Square = std::array<OfOutcomes, most_outcomes>;
    struct Direction;

    Square outcome_square(const Belief& belief) const;
    double chance_about(const OfOutcomes& mean, const Square& covariance) const;
    double chance_to_lock_next(const Belief& moved) const;
    double move_cost_from(const Belief& belief) const;
    double cost_when_read(const Belief& read) const;

    const Model& model_;
    const Belief& belief_;
    const BestMove& best_;
    const AdviceOptions& options_;
    std::size_t count_;
    OfOutcomes mean_{};
    Square covariance_{};
    double margin_sigmas_;  // how far inside its tolerance a single outcome must be believed, to be locked
    double round_;          // what one more round costs
};

}  // namespace kw
