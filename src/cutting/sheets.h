#pragma once
// Parts laid out on sheets: as few sheets as possible, or the cheapest, with cuts that go from edge to edge only (guillotine cuts, of any
// number of stages). The problem is Gilmore and Gomory's, Multistage cutting stock problems of two and more dimensions, Oper. Res. 13,
// 1965. How it is solved stands in repack.h, what bounds it in bounds.h and pattern_bound.h.

#include <cstdint>
#include <optional>

#include <tl/expected.hpp>

#include "cutting/cuts.h"
#include "cutting/effort.h"
#include "length/message.h"

namespace kw::cutting {

struct SheetPiece {
    Length length;  // along the grain
    Length width;
    int count = 1;
    bool may_turn = false;  // the grain doesn't matter
};

struct SheetKind {
    Length length;  // along the grain
    Length width;
    std::optional<int> on_hand;           // nothing: as many as are wanted
    std::optional<std::int64_t> price;    // in the least coin there is
    bool is_offcut = false;               // is here already and costs nothing, or its price where it has one
    Length trim;                          // comes off each of the four sides first, its kerf with it
    std::vector<Rectangle> defects = {};  // no piece covers them; from the sheet's corner, before the trim
};

struct SheetJob {
    std::vector<SheetPiece> pieces;
    std::vector<SheetKind> sheets;
    Length kerf;
    // What is smaller than that, either way, is waste and no offcut. Zero: all is kept.
    Length least_offcut_length = {};
    Length least_offcut_width = {};
};

struct SheetPlan {
    std::vector<SheetLayout> sheets;  // in the order of their kinds
    bool is_in_money = false;     // every kind bought has a price: the cheapest plan; else the fewest sheets
    std::int64_t cost = 0;        // in the least coin; else sheets that are no offcuts
    std::int64_t least_cost = 0;  // no plan costs less
    bool proved = false;          // both are the same
    double yield = 0;             // area of the pieces by that of the sheets used, from 0 to 1
};

// Offcuts are taken before anything is bought, wherever that saves a sheet or money. The same job has the same plan, whatever the machine.
// Refuses with the field that is to blame ("pieces.2.length", "sheets.0.trim", "kerf"): what makes no sense, a piece that fits no sheet,
// and pieces for which no place was found on what there is ("sheets").
tl::expected<SheetPlan, Refusal> plan_sheets(const SheetJob& job, const Effort& effort = {});

}  // namespace kw::cutting
