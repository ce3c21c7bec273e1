#pragma once
// A partial order: what is done, how the machines stand, and what the next operation would change.

#include <optional>

#include "order/model.h"

namespace kw::order {

inline constexpr std::uint8_t open_choice = 0xFF, closed_choice = 0xFE;

struct State {
    Bits done;                 // and what is left out
    std::vector<Label> label;  // by view; 0 where no work that is left asks for how it stands
    std::int64_t spent_s = 0;  // on changes and walks, and all the time of the options that are decided on
    std::vector<std::uint8_t>
        picked;  // by choice: the option, or open; closed where nothing of it is left to do
};

struct Move {
    std::size_t operation = 0;
    Mask changed = 0;         // attributes that are set
    Mask touched = 0;         // those and what is invalidated without being set again
    std::int64_t cost_s = 0;  // changes and walk, and the time of the option that it decides on
};

// Moves are numbered like operations. Beyond these are those that only decide on an option: work that waits for another option's then
// need not wait.
std::size_t deciding_move(const Model& model, const OptionOf& option);
std::optional<OptionOf> decided_by(const Model& model, std::size_t move);

State start_of(const Model& model);

// Of an operation, as if its option were decided on.
Move move_of(const Model& model, const std::vector<Label>& stands, std::size_t operation);
// Of any number, with what it decides on.
Move move_from(const Model& model, const State& state, std::size_t number);

// How the views stand after the move.
void set_labels(const Model& model, const Move& move, std::vector<Label>& stands);

// The move is done, and labels that no work asks for any more are dropped.
void take(const Model& model, const Move& move, State& state);

bool is_open(const Model& model, const State& state,
             std::size_t operation);  // in an option of an open choice
std::vector<std::uint8_t> picked_by(const Model& model, const Bits& done);

bool is_ready(const Model& model, const State& state,
              std::size_t operation);  // not done, and all that comes before it is

// Whether no operation of the group is done, nor was before the problem began.
bool is_untouched(const Model& model, const State& state, std::size_t group);

// The groups of the machine that have begun and are not through.
std::vector<std::size_t> open_groups(const Model& model, const State& state, std::size_t machine);

bool disturbs(const Model& model, const std::vector<std::size_t>& open, const Move& move);

}  // namespace kw::order
