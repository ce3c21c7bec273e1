#pragma once
// The search for work that is a path (see path.h).

#include "order/path.h"
#include "order/search.h"

namespace kw::order {

// Partial orders of equal length side by side (dynamic programming over what is done and what was done last; Held and Karp 1962), ever
// more of them, with local improvement in between. Pruned by PathFloor and Assignment. True if that settled it.
bool search_path(Search& search, const Path& path);

}  // namespace kw::order
