#pragma once
// What no layout costs less than, by patterns. Private to this folder.

#include "cutting/packing.h"

namespace kw::cutting {

// With prices for the pieces such that no pattern of a sheet is worth more than the sheet, all pieces together cost no more than the sheets
// (Gilmore and Gomory's linear program by columns, Oper. Res. 9, 1961, its bound at any prices by Farley, Oper. Res. 38, 1990; from memory).
// For one kind of sheet without defects, and sizes with few enough sums that `looks` last; else zero. Ends when `enough` is reached.
std::int64_t least_cost_by_patterns(const Packing& packing, std::int64_t enough, std::int64_t looks);

}  // namespace kw::cutting
