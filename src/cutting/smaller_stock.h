#pragma once
// What costs the same may still be too much: where the pieces of a sheet fit a smaller one that costs no more, the larger stays whole.
// Private to this folder.

#include "cutting/repack.h"

namespace kw::cutting {

// The largest sheets first, each put on the smallest stock that its pieces are found to fit. `looks`: for each try.
void take_smaller_stock(const Packing& packing, Packed& packed, std::int64_t looks);

}  // namespace kw::cutting
