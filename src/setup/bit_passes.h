#pragma once
// A bit on a router table takes a deep cut in passes, each a little higher than the one before: a bit that is fed too deep burns,
// wanders and can break. Common practice, no source; the bit's maker says it better, and then the cutter has it.

#include <vector>

#include "setup/setup.h"

namespace kw {

// A pass thinner than this rubs and does not cut (common practice, no source).
inline constexpr Length least_bit_pass = Length::inches(1, 64);

// The most that this bit takes off in height at once: as its maker or the job says, else half of its width, and a quarter inch at
// most (common practice, no source).
Length most_in_one_pass(const Cutter& bit);

// The heights at which a cut is taken, rising, the last of them `height` itself: that is the one that the joint hangs on, and that is
// locked. Each is above the one before by no more than the bit takes; where too thin a pass would be left for the last, the two last
// share. Only `height` at a saw, or where the bit takes it at once.
std::vector<Length> heights_of_passes(const Machine& machine, const Cutter& cutter, Length height);

// Those of a setup. None where the cut goes through.
std::vector<Length> heights_of(const Shop& shop, const Setup& setup);

}  // namespace kw
