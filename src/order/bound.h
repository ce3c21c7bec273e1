#pragma once
// A floor under what the changes and walks that are left must cost.

#include "order/revisits.h"
#include "order/state.h"

namespace kw::order {

// View by view, as if nothing else took time. A label is set at least as often as a chain of precedences leads to it and away to
// other labels; once less if it stands now and the longest chains start with work that can be done at once. Tangled
// labels (see revisits.h) are looked into deeper. Different labels and different views pay for different changes, so that the sum
// is a floor, too. Groups count only as far as precedence.h has turned them into precedences.
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
    std::int64_t visits_s(std::size_t view, Label label, const Bits& done) const;
    std::int64_t saved_s(std::size_t view, Label label, const Bits& done) const;
    std::int64_t standing_s(std::size_t view, Label label, const Bits& done);
    std::int64_t with_label_s(std::size_t view, Label label, const Bits& done);
    std::int64_t step_s(State& state, const Move& move, std::size_t view);

    struct Extra {
        std::vector<Tangle> tangles;
        std::vector<std::vector<Bits>>
            chains;    // by label, then by length: work that starts a chain of so many visits or more;
                       // none for tangled labels
        Bits waiting;  // work that must wait for another label's
    };

    const Model& model_;
    std::vector<Extra> extras_;  // by view
};

}  // namespace kw::order
