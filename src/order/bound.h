#pragma once
// A floor under what the changes and walks that are left must cost.

#include <map>

#include "order/revisits.h"
#include "order/state.h"

namespace kw::order {

// View by view, as if nothing else took time. A label is set at least as often as a chain of precedences leads to it and away to
// other labels; once less if it stands now and the longest chains start with work that can be done at once. Tangled
// labels (see revisits.h) are looked into deeper. Different labels and different views pay for different changes, so that the sum
// is a floor, too. Groups count only as far as precedence.h has turned them into precedences.
//
// Work of open choices does not count; but each open choice takes the time of one of its options, and what is set for that alone.
class Bound {
public:
    // With at most Tangle::most_operations operations, tangles are looked into.
    explicit Bound(const Model& model);

    struct Floor {
        std::int64_t total_s = 0;
        std::vector<std::int64_t> standing_s;  // by view: the part that hangs on how things stand
    };

    Floor floor(const State& state);

    // The total after one more operation that decides on no option; `before` is the floor of `state`, and the last that was asked for.
    std::int64_t after_s(const State& state, const Move& move, const Floor& before);

private:
    // What was found last of a label's chains of some length: with all of `clear_when` done, nothing that starts one of them waits; or
    // `waiting` does. Nothing comes to wait because more is done: so this mostly answers for the next partial order, too.
    struct Seen {
        std::size_t clear_chain = 0;  // its length; 0: none was found
        Bits clear_when;
        std::size_t waiting_chain = 0;
        std::size_t waiting = 0;
    };
    struct Extra {
        std::vector<Tangle> tangles;
        std::vector<std::vector<Parts>>
            chains;    // by label, then by length: work that starts a chain of so many visits or more;
                       // none for tangled labels
        Bits waiting;  // work that must wait for another label's
        std::vector<Seen> seen;  // by label
    };
    struct Frame {                  // for the options that are decided on
        std::vector<Parts> before;  // without work that is left out, or may be
        std::vector<Extra> extras;  // by view
        Bits hidden;                // that work
        bool is_possible = true;    // nothing that is left waits for itself
    };

    Frame frame_without(const Bits& hidden) const;
    Extra extra_of(const View& view, const std::vector<Bits>& before, const std::vector<Parts>& parts,
                   const std::vector<Bits>& after) const;
    void look_at(const State& state);
    std::int64_t open_choices_s(const State& state) const;

    std::int64_t visits_s(std::size_t view, Label label, const Bits& done) const;
    std::int64_t saved_s(std::size_t view, Label label, const Bits& done);
    bool waits(std::size_t view, Label label, std::size_t length, const Bits& done);
    std::int64_t standing_s(std::size_t view, Label label, const Bits& done);
    std::int64_t with_label_s(std::size_t view, Label label, const Bits& done);
    std::int64_t step_s(const State& state, const Move& move, std::size_t view);

    const Model& model_;
    std::map<std::vector<std::uint8_t>, Frame> frames_;  // by what is picked
    Frame* frame_ = nullptr;                             // of the state that is looked at
    Bits done_;                                          // in it, or hidden
};

}  // namespace kw::order
