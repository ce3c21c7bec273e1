#pragma once
// A setup group as the estimator sees it: controls that stand somewhere near where they were set, readings
// and outcomes that are linear in them, and moves. All lengths are doubles in mm.

#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "testcut/gaussian.h"

namespace kw {

struct Control {
    std::string name;
    double set_mm = 0.0;     // where it is believed to stand: the scale, with the machine's known offset
    double spread_mm = 0.0;  // one sigma about that (beside the offset's), before any reading; 0 = known
    bool movable = false;
    double resolution_mm = 0.0;     // the step in which the maker can move it; 0 = continuous
    double move_spread_mm = 0.0;    // one sigma that any move adds, whatever its length
    double move_gain_spread = 0.0;  // one sigma that a move adds, per mm of the move, anew each time
    double effort = 0.0;            // what a move of it costs; see MoveOptions::effort_price
    // The control that holds by how much every move of this one comes out too long, mm per mm. It is the same in
    // every move, so it is learned like any other.
    std::optional<std::size_t> gain = std::nullopt;
    // The control that holds how far this one's scale is off: this one starts that much beyond where it was set, and what is
    // found of it later is learned of the scale.
    std::optional<std::size_t> offset = std::nullopt;
    // Belongs to the test ends and not to the machine: fresh ends have another, of the same spread.
    bool of_test_ends = false;
    // From where it stands now: by no less than this; and by one of these amounts only, where they are few (rising, 0 among
    // them): shims.
    double least_mm = -std::numeric_limits<double>::infinity();
    std::vector<double> amounts_mm = {};
};

enum class ReadingKind {
    plain,
    at_least_zero,  // max(0, form): a gap. Zero says only that the form is not above zero
};

struct Reading {
    Form form;
    double spread_mm = 0.0;  // of the usual tool, one sigma
    ReadingKind kind = ReadingKind::plain;
};

// What the joint must come to: within [target - below, target + above]. An infinite deviation leaves that
// side open.
struct Outcome {
    Form form;
    double target_mm = 0.0;
    double below_mm = 0.0;
    double above_mm = 0.0;

    double low_mm() const { return target_mm - below_mm; }
    double high_mm() const { return target_mm + above_mm; }
    // Half the width allowed, or the closed side's deviation; infinite where both sides are open.
    double tolerance_mm() const;
};

// The chance of fit is integrated over the outcomes, and its cost grows fast with their number.
inline constexpr std::size_t most_outcomes = 4;

struct Model {
    std::vector<Control> controls;
    std::vector<Reading> readings;
    std::vector<Outcome> outcomes;  // at most most_outcomes
    // What must not become less if the test ends that were cut are to be cut again: a cut only removes.
    std::vector<Form> removed;
};

// + fence out, + blade up, + thicker spacer, + wider stack: whatever raises the control's value.
struct Move {
    std::size_t control;  // index in Model::controls
    double by_mm;

    bool operator==(const Move&) const = default;
};

// Every form has one weight for each control, nothing is negative or not a number that may not be, every
// outcome has room, and there are not too many. The functions of this folder assert it.
bool is_sound(const Model& model);

Belief belief_from_priors(const Model& model);

// A move shifts its control by what was asked times (1 + gain), and adds the variance move_spread^2 +
// (move_gain_spread by)^2, independent of everything known. A move by zero was not made, and changes nothing.
Belief predict_move(const Model& model, const Belief& belief, const Move& move);
Belief predict_moves(const Model& model, const Belief& belief, const std::vector<Move>& moves);

// What belongs to the test ends is not known of fresh ones.
Belief predict_fresh_ends(const Model& model, const Belief& belief);

// Whether the same test ends can be cut again after these moves, as far as is believed: nothing that was
// removed would have to come back, but for `alike_mm`.
bool recuts(const Model& model, const Belief& belief, const std::vector<Move>& moves, double alike_mm = 1e-6);

}  // namespace kw
