#pragma once
// Joints that were begun on a machine that is away now, and so are planned anew on another.

#include "job/design.h"

namespace kw {

struct Elsewhere {
    std::string joint;  // "locking rabbet"
    std::vector<std::string> drawers;
    std::string was, now;  // machines
    bool locked = false;   // there; else it was tested, or parts ran
    bool ran = false;      // something has gone through there
    int entries = 0;       // of the log, that count no more
};

std::vector<Elsewhere> begun_elsewhere(const Job& job, const Design& design);

// What that means, for the plan's notes.
Note note_of(const Elsewhere& one);

}  // namespace kw
