#pragma once
// What must come before what: as asked, and as follows from the groups.

#include <variant>

#include "order/bits.h"
#include "order/problem.h"

namespace kw::order {

// Whether the operation, which is not of the group but of its machine, disturbs it wherever it comes between
// its first and its last: it needs a held attribute at a value that no operation of the group leaves it at.
bool would_disturb(const Problem& problem, const Group& group, const Operation& operation);

// Operations that can't all keep the rules, and the groups that make it so.
struct Contradiction {
    std::vector<std::size_t> operations;
    std::vector<std::size_t> groups;
};

// For every operation all those that must be done before it; or why that can't be.
//
// An operation that would disturb a group and must come before one of its operations must come before all,
// and likewise after.
std::variant<std::vector<Bits>, Contradiction> all_before(const Problem& problem);

}  // namespace kw::order
