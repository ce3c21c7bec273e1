#pragma once
// What pieces cost of which no two can lie on one sheet. Private to this folder.

#include "cutting/packing.h"

namespace kw::cutting {

// No layout costs less: two pieces lie on one sheet only beside each other or one above the other, so that pieces of which no two can do
// so on any stock want a sheet each. Of such pieces a set is sought, from the largest down; those are many that are large. Holds for
// every layout, guillotine or not, and whatever defects there are.
std::int64_t least_cost_apart(const Packing& packing);

// Whether such pieces are more than the sheets that there are.
bool are_too_many_apart(const Packing& packing);

}  // namespace kw::cutting
