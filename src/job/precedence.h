#pragma once
// What must be done before what. Private to this folder.

#include "job/plan.h"

namespace kw {

struct Precedence {
    std::vector<std::pair<int, int>> before;  // indices into setups: first before second
    std::vector<Note> notes;                  // where a rule could not be kept, and what is done instead
};

// What the second of two setups waits for.
enum class Waits {
    group,   // one height, one sequence: each part goes through its group's setups in their order
    part,    // a part has its size before its joints
    drawer,  // a bottom is cut after the dry fit of its drawer
    lock,    // the first sets a size, which is known when it is locked
};
// `part`: one that goes through `then`.
Waits waits_of(const Plan& plan, const Setup& first, const Setup& then, const std::string& part);

// Rip, then crosscut, then joints; inserts whose length a joint sets are cut to length when that joint is locked; a back
// under which the bottom slides in is ripped when the groove is locked; bottoms come last, after the dry fit; the setups of
// a group keep their order.
Precedence precedence_of(const Design& design, const std::vector<Setup>& setups);

}  // namespace kw
