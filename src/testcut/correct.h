#pragma once
// What to do after a test cut: lock, move, or measure something more.

#include <string>
#include <vector>

#include "testcut/move_search.h"

namespace kw {

struct AdviceOptions {
    double wanted_chance = 0.9;  // in tolerance; common practice, no source
    // Reading all that is left to read on the cut must promise at least this much more chance than the best
    // move, else the move is made. Common practice, no source.
    double reading_worth = 0.05;
    std::vector<std::string> already_read;  // names of readings not to be asked for again
    MoveOptions move;
};

enum class AdviceKind { lock, move, measure };

struct Advice {
    AdviceKind kind;
    std::vector<Move> moves;     // of `move`, else empty
    std::vector<Move> unread;    // of `measure`: the best moves for who can't take that reading; else empty
    std::string reading;         // of `measure`, else empty
    double chance_in_tolerance;  // as it stands
    double chance_after_move;    // after the best move found, taken or not; as it stands where there is none
};

// lock: the chance is what is wanted, or neither a move nor a reading would better it (then
// chance_in_tolerance is below what is wanted, and the caller says so). move: as best_move; when that falls
// short of the wanted chance, and the readings left promise enough, measure comes first. measure: the reading
// after which the outcomes' variances, each in units of its tolerance, are expected to be least.
Advice advise(const Model& model, const Belief& belief, const AdviceOptions& options = {});

// The part of a reading's own variance that it is expected to remove: 1 for a plain one, less for one that
// is at least zero, as it may come out as zero and then says only that. Error of the reading included.
double expected_part_told(const Belief& belief, const Reading& reading);

// What the outcomes' variances, each in units of its tolerance squared, are expected to lose by a reading.
double expected_gain(const Model& model, const Belief& belief, const Reading& reading);

}  // namespace kw
