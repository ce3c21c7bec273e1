#pragma once
// What no layout costs less than, by patterns. Private to this folder.

#include "cutting/packing_tree.h"

namespace kw::cutting {

struct PatternBound {
    std::int64_t cost = 0;
    std::vector<PackingTree>
        whole;  // patterns that the linear program uses in whole numbers: a good beginning of a layout
};

// With prices for the pieces such that no pattern of a sheet is worth more than the sheet, all pieces together cost no more than the sheets
// (Gilmore and Gomory's linear program by columns, Oper. Res. 9, 1961, its bound at any prices by Farley, Oper. Res. 38, 1990; from memory).
// For one kind of sheet without defects, and sizes with few enough sums that `looks` last; else zero. Ends when `enough` is reached.
PatternBound least_cost_by_patterns(const Packing& packing, std::int64_t enough, std::int64_t looks);

}  // namespace kw::cutting
