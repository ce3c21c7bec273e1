#pragma once
// Partial orders of a path, layer by layer.

#include "order/path_floor.h"
#include "order/search.h"

namespace kw::order {

// Whether the assignment relaxation is looked at beside the floor, and how often that was worth it.
struct Assignments {
    bool is_used = true;
    std::int64_t asked = 0;
    std::int64_t pruned = 0;
};

// Keeps the `width` most promising of each length. True if none was left out that could have been better than the best order;
// else bound_s may be raised, to the least bound of those that were left out.
bool search_layers(Search& search, const PathFloor& floor, std::size_t width, Assignments& assigns);

}  // namespace kw::order
