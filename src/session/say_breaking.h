#pragma once
// The breaking-down of boards and sheets in the maker's words: how much of it there is, at which settings, and what is left for the setups.

#include <string>
#include <vector>

#include "job/breaking_down.h"

namespace kw {

// "23 cuts at 9 settings of fence and stop, about 24 min; no order of these cuts has fewer settings".
std::string say_breaking(const Job& job, const BreakingCount& count);

// One for each setting: "rip, fence 4 1/8 in: 2 cuts (1.1, 2.1)". By the numbers of the layout: 1.2 is the second cut of number 1.
std::string say_setting(const Job& job, const BreakingSetting& setting);
// The same with what comes of it: "...; frees `twine.1.front` and `twine.1.back`; strips for 6 parts". `names`: of the parts that it frees.
std::string say_setting(const Job& job, const BreakingSetting& setting,
                        const std::vector<std::string>& names);

// "WARNING 1 1/4 in long, shorter than is safe at `saw` ...": of what is held at it; empty where all is long enough.
std::string say_too_short(const Job& job, const BreakingSetting& setting);

// How much larger than finished parts are cut out; and of setups whose parts come at their size already, what that means. `setups`: what
// these are called, in the order of `down.at_size`. Whole sentences; none where nothing is laid out.
std::vector<std::string> say_sizes_cut(const Job& job, const Plan& plan, const BreakingDown& down,
                                       const std::vector<std::string>& setups);

}  // namespace kw
