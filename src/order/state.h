#pragma once
// A partial order: what is done, how the machines stand, and what the next operation would change.

#include "order/model.h"

namespace kw::order {

struct State {
    Bits done;
    std::vector<Label> label;  // by view; 0 where no work that is left asks for how it stands
    std::int64_t spent_s = 0;  // on changes and walks
};

struct Move {
    std::size_t operation = 0;
    Mask changed = 0;         // attributes that are set
    Mask touched = 0;         // those and what is invalidated without being set again
    std::int64_t cost_s = 0;  // changes and walk
};

State start_of(const Model& model);

Move move_of(const Model& model, const std::vector<Label>& stands, std::size_t operation);

// How the views stand after the move.
void set_labels(const Model& model, const Move& move, std::vector<Label>& stands);

// The move is done, and labels that no work asks for any more are dropped.
void take(const Model& model, const Move& move, State& state);

bool is_ready(const Model& model, const State& state,
              std::size_t operation);  // not done, and all that comes before it is

// Whether no operation of the group is done, nor was before the problem began.
bool is_untouched(const Model& model, const State& state, std::size_t group);

// The groups of the machine that have begun and are not through.
std::vector<std::size_t> open_groups(const Model& model, const State& state, std::size_t machine);

bool disturbs(const Model& model, const std::vector<std::size_t>& open, const Move& move);

}  // namespace kw::order
