#pragma once
// All setups of one design, with what must come before what. Private to this folder.

#include "job/design.h"

namespace kw {

struct Planned {
    std::vector<Setup> setups;
    std::vector<std::pair<int, int>> before;
    std::vector<std::string>
        names;  // of each setup: the same in every design in which it does the same for the same parts
};

// Nothing where a part can't be brought to size.
std::optional<Planned> planned_of(const Job& job, const Design& design);

}  // namespace kw
