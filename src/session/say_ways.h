#pragma once
// Cutters as they are put on, and why a joint is cut the way it is.

#include <string>
#include <vector>

#include "job/work.h"

namespace kw {

// "quarter stack"; where the stack is put on with other chippers than usual "quarter stack made up to 0.512 in (chippers 1/8 in + 1/8 in, shims
// 0.008 in + 0.004 in)".
std::string say_cutter(const Job& job, const Cutter& cutter);
// Of a setup, the same.
std::string say_cutter(const Work& work, const Setup& setup);

// "2 passes with quarter stack", "1 pass with quarter stack made up to 0.512 in (...)".
std::string say_way(const Job& job, const ChosenJoint& way);

// "back dado (twine, hand tools): 2 passes with quarter stack: 6 min; 1 pass with ...: 19 min". What each adds to the time of all other work, the
// way that was picked first.
std::string say_reason(const Job& job, const WayReason& reason);

}  // namespace kw
