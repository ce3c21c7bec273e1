#include "setup/make_up.h"

#include <algorithm>
#include <numeric>

#include "setup/shims.h"

namespace kw {
namespace {

constexpr std::size_t most_chippers = 10;  // every set of them is tried

struct Pieces {
    std::vector<Length> in, out;
};

// The set with this number, of all that are owned.
Pieces nth_set(const std::vector<Length>& owned, unsigned number) {
    Pieces set;
    for (std::size_t i = 0; i < owned.size(); ++i)
        ((number >> i) & 1U ? set.in : set.out).push_back(owned[i]);
    return set;
}

// Those of `owned` that are not in `taken`, each taken once.
std::vector<Length> less(std::vector<Length> owned, const std::vector<Length>& taken) {
    for (const Length piece : taken)
        if (const auto found = std::find(owned.begin(), owned.end(), piece); found != owned.end())
            owned.erase(found);
    return owned;
}

std::vector<Length> together(std::vector<Length> a, const std::vector<Length>& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

// The stack on these chippers, with the shims that bring it nearest to the width.
Cutter on_chippers(const Cutter& stack, Length outer, Pieces chippers, Length width) {
    const std::vector<Length> shims = together(stack.shims, stack.spares);
    const Length wanted = width - outer - sum_of(chippers.in);
    Length best;
    for (const Length sum : shim_sums(stack))
        if (abs(sum - wanted) < abs(best - wanted)) best = sum;
    Cutter made = stack;
    made.shims = shims_for(stack, best);
    made.spares = less(shims, made.shims);
    made.chippers = std::move(chippers.in);
    made.spare_chippers = std::move(chippers.out);
    made.kerf = outer + sum_of(made.chippers) + sum_of(made.shims);
    made.known_wider = Length{};  // what was learned is of the other make-up
    return made;
}

bool is_better(const Cutter& a, const Cutter& b, Length width) {
    const Length off_a = abs(a.kerf - width), off_b = abs(b.kerf - width);
    if (abs(off_a - off_b) >= alike) return off_a < off_b;
    return a.chippers.size() + a.shims.size() < b.chippers.size() + b.shims.size();
}

}  // namespace

Length sum_of(const std::vector<Length>& pieces) {
    return std::accumulate(pieces.begin(), pieces.end(), Length{});
}

std::optional<Cutter> made_up_for(const Cutter& stack, Length width) {
    if (stack.kind != CutterKind::dado_stack || (stack.spare_chippers.empty() && stack.spares.empty()))
        return std::nullopt;
    std::vector<Length> owned = together(stack.chippers, stack.spare_chippers);
    owned.resize(std::min(owned.size(), most_chippers));
    const Length outer = stack.kerf - sum_of(stack.chippers) - sum_of(stack.shims);
    std::optional<Cutter> best;
    for (unsigned number = 0; number < (1U << owned.size()); ++number) {
        Cutter made = on_chippers(stack, outer, nth_set(owned, number), width);
        if (abs(made.kerf - width) <= make_up_tolerance && (!best || is_better(made, *best, width)))
            best = std::move(made);
    }
    if (best && best->kerf == stack.kerf) return std::nullopt;
    return best;
}

}  // namespace kw
