#pragma once
// What to do after a test cut: lock, move, or measure something more, whichever is expected to cost least.

#include <string>
#include <vector>

#include "testcut/move_search.h"

namespace kw {

// What things cost a maker, counted in test cuts. Common practice, no source.
struct AdviceCosts {
    double reading = 0.007;   // a few seconds with the joint in hand, against five minutes and more
    double move = 0.02;       // per unit of effort
    double fresh_ends = 0.1;  // sawn off, and marked anew: half a minute
    double bad_lock = 1.0;    // a part that was run with a joint that did not fit
};

struct AdviceOptions {
    double wanted_chance = 0.9;  // in tolerance, before locking is advised; common practice, no source
    AdviceCosts costs;
    std::vector<std::string> already_read;  // names of the readings taken of this cut, one for each time
    int most_times = 6;                     // that a reading is asked for, of one cut
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
    double expected_cost;        // of the advice followed to a lock, in test cuts
};

// lock: the chance is what is wanted, or neither a move nor a reading would better it (then
// chance_in_tolerance is below what is wanted, and the caller says so). Otherwise move or measure, by the lower expected cost:
//   move      its effort, fresh ends where they are needed, the test cut, and another round if that fails;
//   measure   the reading, and then the mean over what it may say of locking, where that is allowed then, or moving.
// measure names one reading, of those left and of those that may be taken again; where all that is left to read promises
// most together, the one of them that tells most.
Advice advise(const Model& model, const Belief& belief, const AdviceOptions& options = {});

// The part of a reading's own variance that it is expected to remove: 1 for a plain one, less for one that
// is at least zero, as it may come out as zero and then says only that. Error of the reading included.
double expected_part_told(const Belief& belief, const Reading& reading);

// What the outcomes' variances, each in units of its tolerance squared, are expected to lose by a reading.
double expected_gain(const Model& model, const Belief& belief, const Reading& reading);

}  // namespace kw
