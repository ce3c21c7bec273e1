#pragma once
// What each cut of a layout is for, and the order that sets the fence as seldom as possible.

#include <optional>
#include <string>
#include <vector>

#include "cutting/fence_order.h"
#include "job/lay_out.h"

namespace kw {

// What is shorter than that is not run by hand (the machine's own `least_part`). Nothing where the shop has no saw.
struct SafeLength {
    std::string machine;
    Length least;
};
std::optional<SafeLength> safe_length(const Job& job);

// In the order of the saw; parts by their place in the layout's list.
std::vector<LaidCut> laid_cuts(const cutting::SheetLayout& sheet, const std::optional<SafeLength>& safe);

// Of all pieces of one stock. The watch is told what the layout costs, and can cost at least.
void order_by_fence(LaidStock& laid, const cutting::Watch& watch);

}  // namespace kw
