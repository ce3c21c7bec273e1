#pragma once
// Cuts of several sheets put in an order in which the fence is set as seldom as possible. A cut comes after the one that its part
// comes from. With one fence alone that is the shortest common supersequence of a forest (NP-hard: Räihä and Ukkonen, Theor. Comput. Sci. 16,
// 1981, from memory).

#include <cstdint>
#include <vector>

#include "cutting/cuts.h"
#include "cutting/effort.h"

namespace kw::cutting {

struct CutToOrder {
    CutDirection direction = CutDirection::rip;
    Length fence;
    int after = -1;  // the cut that comes before it, of a lesser index; -1: none
};

struct FenceSetting {
    CutDirection direction = CutDirection::rip;
    Length fence;
    std::vector<std::size_t> cuts;  // by index, in the order in which they can be made
};

struct FenceOrder {
    std::vector<FenceSetting> settings;
    std::size_t least = 0;  // no order has fewer settings
    bool proved = false;    // there are no more
};

// Branch and bound: whatever can be cut at a setting is cut, since that costs nothing and bars nothing. The bound counts each setting as
// often as it comes anew along one way from a sheet to a part. A look is a cut that is looked at; the watch is told settings. The same cuts have the same order everywhere.
FenceOrder order_by_fence(const std::vector<CutToOrder>& cuts, const Effort& effort = {20'000'000, {}});

}  // namespace kw::cutting
