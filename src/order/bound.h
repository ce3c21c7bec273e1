#pragma once
// A floor under what the changes and walks that are left must cost.

#include "order/revisits.h"
#include "order/state.h"

namespace kw::order {

// View by view, as if nothing else took time: each label that is still asked for is set once more; the one that stands is not,
// unless some of its work must wait for another label's; tangled labels (see revisits.h) as often as precedence forces
// them. Different views pay for different changes, so that their sum is a floor, too. Groups count only as far as precedence.h has
// turned them into precedences.
class Bound {
public:
    // With at most Tangle::most_operations operations, tangles are looked into.
    explicit Bound(const Model& model);

    struct Floor {
        std::int64_t total_s = 0;
        std::vector<std::int64_t> standing_s;  // by view: the part that hangs on how things stand
    };

    Floor floor(const State& state);

    // The total after one more operation; `before` is the floor of `state`, which is left as it was.
    std::int64_t after_s(State& state, const Move& move, const Floor& before);

private:
    std::int64_t once_each_s(std::size_t view, const Bits& done) const;
    std::int64_t standing_s(std::size_t view, const Bits& done, Label label);
    std::int64_t for_label_s(std::size_t view, const Bits& done, Label label);
    bool must_return(std::size_t view, const Bits& done, Label label) const;
    std::int64_t view_after_s(const State& state, const Move& move, std::size_t view);

    struct Extra {
        std::vector<bool> tangled;     // by label
        std::vector<Tangle> tangles;
        Bits waits_for_others;         // operations that wait for another label's
    };

    const Model& model_;
    std::vector<Extra> extras_;        // by view
};

}  // namespace kw::order
