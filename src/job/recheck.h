#pragma once
// Whether what went through is still as it must be. Private to this folder.

#include <optional>

#include "job/plan.h"
#include "job/standing.h"

namespace kw {

// A part whose joint or size was cut as it is no longer to be; nothing where all is well. `ran` is one of the standing's.
std::optional<Affected> recheck(const Job& job, const Design& design, const Plan& plan,
                                const Standing& standing, const Ran& ran);

// Whether its joint differs from how it is to be by no more than what further passes of its slot take away: depth and first wall are as
// they are to be.
bool differs_in_width_only(const Job& job, const Design& design, const Ran& ran);

}  // namespace kw
