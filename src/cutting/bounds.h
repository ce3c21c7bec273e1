#pragma once
// What no layout costs less than. Private to this folder.

#include "cutting/packing.h"

namespace kw::cutting {

// By area, and by dual feasible functions of lengths and widths multiplied: a function f with f(x1) + f(x2) + ... <= 1 wherever
// x1 + x2 + ... <= 1 lets every piece count f(length) g(width) of a sheet. Lueker 1983; the families here are Fekete and
// Schepers, Math. Program. 91, 2001 (from memory), whose U on one dimension is the bound L2 of Martello and Toth, Knapsack Problems,
// 1990, ch. 8. The same once more of the pieces that only some of the stocks take, on these alone, and of them at least one. Then by pieces that can't share a sheet (sharing.h), and by what stock that costs
// nothing can't hold. Holds for every layout, guillotine or not. Defects are left out of account: the bound holds all the same.
std::int64_t least_cost(const Packing& packing);

// The least that can be paid and is no less than `cost`, by the largest step that all prices are multiples of: of one price, its next
// multiple.
std::int64_t payable(std::int64_t cost, const Packing& packing);

}  // namespace kw::cutting
