#pragma once
// What must be done before a part can go through a setup: the plan's own precedences, asked of one part.

#include "job/work.h"

namespace kw {

struct ComesFirst {
    std::string part;              // that can't go through yet
    const Setup* setup = nullptr;  // of the plan: what comes first, the earliest of all that does
    bool lock = false;             // it is to be locked; else `through` has still to go through it
    bool torn_down = false;        // it was locked once, and is to be set again, tested and locked
    std::string through = {};      // the part itself, or for a bottom another part of its drawer
};

// Nothing where all of them may go through. `passes`: indices into the setup's passes.
std::optional<ComesFirst> what_comes_first(const Work& work, const Setup& setup,
                                           const std::vector<std::size_t>& passes);

}  // namespace kw
