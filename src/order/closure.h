#pragma once
// What comes before what, over any number of arrows.

#include <vector>

#include "order/bits.h"
#include "order/problem.h"

namespace kw::order {

using Nexts = std::vector<std::vector<std::size_t>>;  // by operation: those that must come after it

// From first to last; shorter than `next` where arrows make a ring.
std::vector<std::size_t> sequence(const Nexts& next);

// By operation: what must come before it, where both are done. Over operations that are done whenever both ends are, that is such as are
// done in any case or belong to the option of one end. An operation of a ring comes before itself.
std::vector<Bits> close(const Problem& problem, const Nexts& next);

}  // namespace kw::order
