#pragma once
// What in a test cut's readings had better be asked again: a reading that contradicts all the others (a slip of the pen, the wrong
// unit, the wrong sign), or a move that does not seem to have been made as told. It is asked, not averaged in.
//
// Each hypothesis of one slip is weighed against none by its likelihood ratio, times how often such a slip happens
// (Bayes). With nothing wrong the mean of a likelihood ratio is one, so by Markov's inequality a false alarm comes no
// more often than all the rates together.

#include <optional>
#include <vector>

#include "testcut/observe.h"

namespace kw {

enum class Slip { none, ten_times, tenth, inches, millimetres, sign };

struct Doubt {
    enum class About { reading, move, setting } about;
    std::size_t which;  // index of the observation, or of the control
    double expected_mm =
        0.0;  // of the reading, by all the others and what was known; where the control was to stand
    double found_mm = 0.0;  // as read; where the control stands by the readings
    double sigmas = 0.0;    // found from expected, in its own sigmas
    Slip looks_like =
        Slip::none;  // of a reading: what it would be right as. `inches`: inches were given for millimetres
    double log_odds = 0.0;  // of this slip against none, by what was read
};

// How often a slip is made, of one reading, one move, one first setting. Common practice, no source; a first setting that is
// off is what a test cut is for, so only one that is far off is asked about.
struct DoubtRates {
    double reading = 0.09;
    double move = 0.1;
    double setting = 0.0001;
};

// The likeliest slip, if one is likelier than none. `before`: the belief when the readings were taken, after `moves`, which were
// made since the cut before; empty for a first cut, whose settings may then be in doubt.
std::optional<Doubt> find_doubt(const Model& model, const Belief& before, const std::vector<Move>& moves,
                                const std::vector<Observation>& observations, const DoubtRates& rates = {});

// Of those that were set by hand and not moved since, the control whose standing otherwise than it was to explains the readings best,
// if any explains them better than that all is as it was to be. None stands at less than nothing. `by_hand`: names; empty: all that move.
std::optional<Doubt> otherwise_set(const Model& model, const Belief& before,
                                   const std::vector<Observation>& observations,
                                   const std::vector<std::string>& by_hand = {});

}  // namespace kw
