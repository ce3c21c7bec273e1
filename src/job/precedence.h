#pragma once
// What must be done before what. Private to this folder.

#include "job/plan.h"

namespace kw {

struct Precedence {
    std::vector<std::pair<int, int>> before;  // indices into setups: first before second
    std::vector<Note> notes;                  // where a rule could not be kept, and what is done instead
};

// Rip, then crosscut, then joints; inserts whose length a joint sets are cut to length when that joint is locked; a back
// under which the bottom slides in is ripped when the groove is locked; bottoms come last, after the dry fit; the setups of
// a group keep their order.
Precedence precedence_of(const Design& design, const std::vector<Setup>& setups);

}  // namespace kw
