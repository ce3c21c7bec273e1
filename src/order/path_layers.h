#pragma once
// Partial orders of a path, layer by layer.

#include "order/path_floor.h"
#include "order/search.h"

namespace kw::order {

// Keeps the `width` most promising of each length. True if none was left out that could have been better than the best order;
// else bound_s may be raised, to the least bound of those that were left out.
bool search_layers(Search& search, const Path& path, const PathFloor& floor, std::size_t width);

}  // namespace kw::order
