#pragma once
// What a trial of moves is worth: the judge that the move search asks. Private to this folder.

#include <array>
#include <cstddef>
#include <utility>
#include <vector>

#include "testcut/chance.h"
#include "testcut/move_search.h"

namespace kw {

inline constexpr std::size_t most_levers = 8;
using OfOutcomes = std::array<double, most_outcomes>;
using Amounts = std::array<double, most_levers>;  // of each lever, mm as asked of the control; 0: not moved

// A movable control, with what it does to the outcomes.
struct Lever {
    std::size_t control = 0;
    OfOutcomes effect{};  // on each outcome, mm per mm that the control really goes
    double gain = 1.0;    // mm that the control is believed to go, per mm asked
    double step = 0.0;    // of the search, mm
    bool whole_steps = false;
    double least = 0.0;           // amounts below this can't be made
    std::vector<double> amounts;  // the only ones that can be made, rising; empty: whole steps, or any
    double wobble = 0.0;
    double jitter_mm = 0.0;
    double effort = 0.0;
    OfOutcomes gain_covariance{};                 // of each outcome with the gain's error
    std::array<double, most_levers> gain_with{};  // covariance of the gain's error with each lever's
    std::vector<double> removed;                  // what a mm of it adds to each form of Model::removed
};

// The amounts that can be made next below and next above this one; the same one twice where it can be made, or where there is no
// other.
std::pair<double, double> makeable_about(const Lever& lever, double by);

// The next amount that can be made, one step from `by`, which can be; `by` itself at the end of what can.
double next_makeable(const Lever& lever, double by, double direction);

class Judge {
public:
    Judge(const Model& model, const Belief& belief, const MoveOptions& options);

    // A quick look, a tenth of a microsecond: as if the outcomes were independent. Ranks trials well.
    double guess(const Amounts& by) const;

    // Chance in tolerance after the moves, less what they cost.
    double worth(const Amounts& by) const;

    // The amounts of the chosen levers that bring the outcomes nearest to their targets, in units of their
    // tolerances.
    Amounts least_squares(const std::vector<std::size_t>& choice) const;

    const std::vector<Lever>& levers() const { return levers_; }

private:
    OfOutcomes mean_after(const Amounts& by) const;
    double variance_after(const Amounts& by, std::size_t a, std::size_t b) const;
    double cost(const Amounts& by, const OfOutcomes& mean) const;
    bool recuts(const Amounts& by) const;
    Lever lever_of(const Model& model, const Belief& belief, std::size_t control, double tightest_mm) const;
    void relate_gains(const Model& model, const Belief& belief);

    MoveOptions options_;
    std::size_t count_ = 0;
    OfOutcomes mean_{};
    OfOutcomes target_{};
    OfOutcomes stiffness_{};  // 1 / tolerance; 0 where an outcome may be anything
    std::array<double, most_outcomes * most_outcomes> covariance_{};
    ToleranceBox box_;
    std::vector<Lever> levers_;
};

}  // namespace kw
