#pragma once
// The value of a panel, proved: rectangles are put together of pieces, two at a time, the most promising first (best-first search
// from below: Wang, Oper. Res. 31, 1983; Viswanathan and Bagchi, Oper. Res. 41, 1993; both from memory). Private to this folder.

#include <optional>

#include "cutting/effort.h"
#include "cutting/packing_tree.h"
#include "cutting/panel_bound.h"

namespace kw::cutting {

struct BuiltPanel {
    std::optional<PackingTree> tree;  // nothing: none worth more than `above` was found
    std::int64_t value = 0;
    std::int64_t most_value = 0;  // no layout is worth more than this or `above`
};

// The packing has one stock with one region.
BuiltPanel build_panel(const Packing& panel, const PanelBound& bound, std::int64_t above,
                       const Effort& effort);

}  // namespace kw::cutting
