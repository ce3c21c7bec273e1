#pragma once
// What a dado stack can be brought to with the shims that the maker owns.

#include <vector>

#include "setup/shop.h"

namespace kw {

// Thicknesses that differ by less are one.
inline constexpr Length alike = Length::micrometres(10);

// Whether the maker has said which shims there are; where not, nothing is known of what a stack can be brought to.
bool lists_shims(const Cutter& cutter);

// How thick the shims together are for the cutter's own kerf.
Length shims_in(const Cutter& cutter);

// Every thickness that some of the owned shims add up to, none among them, in rising order. Sums that differ by less than a
// hundredth of a millimetre are one, and what is thicker than a chipper is left out: nobody puts that on in shims.
std::vector<Length> shim_sums(const Cutter& cutter);

// The fewest shims that come to this thickness, the thickest first; empty where none do.
std::vector<Length> shims_for(const Cutter& cutter, Length thickness);

}  // namespace kw
