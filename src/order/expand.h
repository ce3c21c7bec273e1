#pragma once
// What may be done next, without what need not be tried.
//
// Two rules leave choices out on machines that are orderly, which is where the following holds. All work that needs an attribute
// also needs what that hangs on. All operations of a group need all that it holds, at the same values, and what a group
// holds hangs only on what it holds. (A group that is begun: the machine stands at those values.) There an operation can be taken
// out of an order without making the rest dearer or against the rules: what it changed is changed later by the next one that
// needs it, and costs no more there. (Where the time of a change hangs on what stands: the direct change never takes longer than
// one by way of another value, nor than from where it was lost. Where that does not hold, the machine is not orderly.) So:
// - work at the machine where we stand that needs no change, and begins no group, is done at once;
// - work v is not tried while work w on the same machine lies on the way to it: all that w changes, v would change alike, and w
//   begins no group that v does not. Between two that lie on each other's way, the lower index goes first.
// Both hold for work that is done in any case, or whose option is decided on: that of an open choice is not done for nothing.
// An option is decided on with its first operation; or before, where other work need not wait then.

#include "order/bound.h"

namespace kw::order {

struct Child {
    Move move;
    std::int64_t bound_s = 0;  // of changes and walks, all told: spent, and the floor of what is left
};

class Expander {
public:
    static constexpr std::size_t no_limit = std::numeric_limits<std::size_t>::max();

    explicit Expander(const Model& model) : model_(model), bound_(model) {}

    // Before the first move, with what is done at once.
    State start(std::vector<std::size_t>* trail = nullptr) const;
    std::int64_t bound_s(const State& state) { return state.spent_s + bound_.floor(state).total_s; }
    // By index; no more than the cheapest `most`. Valid until the next call.
    const std::vector<Child>& children(const State& state, std::size_t most = no_limit);
    std::size_t left_out() const { return left_out_; }  // by `most`, in the last call
    // Takes the move and all that is then done at once; `trail`, if any, gets these operations in order.
    void go(const Move& move, State& state, std::vector<std::size_t>* trail = nullptr) const;

    // Whether an operation that comes next begins no group that would then wait for work that could be done before.
    bool is_patient(const State& state, std::size_t operation) const;

    const Model& model() const { return model_; }

private:
    void collect_moves(const State& state);
    void note_waiting(const State& state, std::size_t operation);
    void settle(State& state, std::vector<std::size_t>* trail) const;
    bool decides(const State& state, const Move& move) const;
    std::int64_t bound_after_deciding_s(const State& state, const Move& move);
    bool begins_a_group(const State& state, std::size_t operation) const;
    bool begins_no_other_group(const State& state, std::size_t w, std::size_t v) const;
    bool lies_on_the_way(const State& state, const Move& w, const Move& v) const;
    std::uint64_t key_of(const Move& move, Mask changed) const;
    void sort_by_key(std::size_t machine);
    bool can_be_skipped(const State& state, const Move& v) const;
    bool goes_before(const State& state, const Move& w, const Move& v) const;
    void leave_out(const State& state);
    void keep_cheapest(std::size_t most);

    const Model& model_;
    Bound bound_;
    std::vector<Move> moves_;
    std::vector<std::size_t> deciding_;                         // moves that only decide on an option
    std::vector<std::size_t> first_move_;                       // by machine, and one more
    std::vector<std::pair<std::uint64_t, std::size_t>> keyed_;  // of one machine: the key, and which move
    std::vector<Mask> masks_;                                   // of one machine: what its moves change
    std::vector<Move> worth_trying_;
    std::size_t left_out_ = 0;
    std::vector<Child> children_;
};

}  // namespace kw::order
