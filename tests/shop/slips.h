#pragma once
// A maker who makes one mistake in two test cuts, or none: is it asked again?

#include "shop/movers.h"

namespace shop {

enum class SlipMade { none, ten_times, tenth, inches, sign, wrong_way };
inline constexpr SlipMade all_slips[] = {SlipMade::none,   SlipMade::ten_times, SlipMade::tenth,
                                         SlipMade::inches, SlipMade::sign,      SlipMade::wrong_way};
const char* name_of(SlipMade slip);

struct Caught {
    int times = 0;   // that the slip was made; of none: test cuts without one
    int asked = 0;   // that something was asked again
    int named = 0;   // and it was the right thing
    int matter = 0;  // of the times, those that put things off by more than the width of the fit's tolerance
    int asked_that_matter = 0;
};

// Half of the shops make it at the first cut, half at the second, which follows the advised moves.
void try_slip(const Task& task, const KindOfShop& kind, std::uint64_t seed, SlipMade slip, Caught& caught);

}  // namespace shop
