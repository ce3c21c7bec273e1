#pragma once
// Exact ratios for the reader, so that 1/3 + 1/3 + 1/3 is 1. Private to this folder.

#include <cstdint>
#include <optional>

#include "length/length.h"

namespace kw {

__extension__ typedef __int128 Wide;  // an extension that every compiler in use has, for wasm too

// over / under, with under above zero.
struct Ratio {
    Wide over = 0;
    std::int64_t under = 1;
};

Ratio reduced(Ratio ratio);
Ratio times(Ratio ratio, std::int64_t count);
Ratio negated(Ratio ratio);

// Nothing where the common denominator would leave 10^15: a maker's fractions never come near it.
std::optional<Ratio> sum(Ratio a, Ratio b);

bool exceeds(Ratio ratio, std::int64_t limit);  // |ratio| > limit

// A ratio of ticks, to the nearest; halves go away from zero. |ratio| must fit.
Length nearest_ticks(Ratio ratio);

}  // namespace kw
