#pragma once
// The most valuable pieces that can be cut from one panel, with cuts from edge to edge, any number of stages, and no more of a piece than are
// wanted (the guillotine knapsack with demands: Christofides and Whitlock, Oper. Res. 25, 1977). What bounds it is in panel_bound.h,
// how it is proved in builds.h.

#include <cstdint>
#include <vector>

#include <tl/expected.hpp>

#include "cutting/cuts.h"
#include "cutting/effort.h"
#include "length/message.h"

namespace kw::cutting {

struct PanelPiece {
    Length length;  // along the grain
    Length width;
    std::int64_t value = 0;  // of one; in any unit
    int count = 1;           // no more are wanted
    bool may_turn = false;
};

struct PanelJob {
    Length length;  // along the grain; what is left after the trim
    Length width;
    std::vector<PanelPiece> pieces;
    Length kerf = {};
};

struct PanelPlan {
    SheetLayout layout;           // its offcuts are all that is left
    std::int64_t value = 0;       // of the pieces in it
    std::int64_t most_value = 0;  // no layout is worth more
    bool proved = false;          // both are the same
};

// Pieces too large for the panel are left out. The same job has the same plan. Refuses what makes no sense, by field ("pieces.2.value", "length").
tl::expected<PanelPlan, Refusal> most_valuable(const PanelJob& job, const Effort& effort = {});

}  // namespace kw::cutting
