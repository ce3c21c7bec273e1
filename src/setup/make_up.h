#pragma once
// What a dado stack can be put on as, with the chippers and shims that the maker owns.

#include <optional>

#include "setup/shop.h"

namespace kw {

// How far a stack made up for a slot may be from it: half of what a paper shim is thick (common practice, no source).
inline constexpr Length make_up_tolerance = Length::micrometres(50);

// The stack with other chippers and shims, as near to this width as they come; nothing where the maker has listed none to spare, where no
// make-up comes within the tolerance, or where the stack is it as it stands. Of make-ups within a hundredth of a millimetre of each
// other the one with fewer pieces is taken. The stack's name stays, its kerf is the new one.
std::optional<Cutter> made_up_for(const Cutter& stack, Length width);

// Pieces of 1/16 in and the like, in the maker's order of size: how thick they are together.
Length sum_of(const std::vector<Length>& pieces);

}  // namespace kw
