#pragma once
// What must come before what: as asked, and as follows from the groups.

#include <variant>

#include "order/bits.h"
#include "order/problem.h"

namespace kw::order {

// Operations that can't all keep the rules, and the groups that make it so.
struct Contradiction {
    std::vector<std::size_t> operations;
    std::vector<std::size_t> groups;
};

// For every operation those that must be done before it, where both are done; or why that can't be. All of them, but for what would
// follow only from two choices together. An operation that must come before itself can't be done: nor can its option, then.
//
// An operation that needs another value of a held attribute than every operation of the group does would disturb the group wherever
// it came between them. So if it must come before one of them it must come before all, and likewise after.
std::variant<std::vector<Bits>, Contradiction> all_before(const Problem& problem);

}  // namespace kw::order
