#pragma once
// Cutters as they are put on, and why a joint is cut the way it is.

#include <string>
#include <vector>

#include "job/work.h"

namespace kw {

// "quarter stack"; where the stack is put on with other chippers than usual "quarter stack made up to 0.512 in (chippers 1/8 in + 1/8 in, shims
// 0.008 in + 0.004 in)".
std::string say_cutter(const Job& job, const Cutter& cutter);
// Of a setup, the same, locked or not; without its shims where these are others than planned.
std::string say_cutter(const Work& work, const Setup& setup);
// Both together: "quarter stack made up to 0.258 in (shims 0.008 in)", "half stack put on with shims of 0.3 mm + 0.1 mm".
std::string say_put_on(const Work& work, const Setup& setup);

// "2 passes with quarter stack", "1 pass with quarter stack made up to 0.512 in (...)".
std::string say_way(const Job& job, const ChosenJoint& way);

// A chipper or a shim as the maker wrote it, which is what is stamped on it: "1/8 in" in a job in millimetres, too.
std::string say_piece(const Job& job, const Cutter& cutter, Length piece);

// "10 min"; "at most 10 min", "at least 10 min" or "about 10 min" where not all of it is proved.
std::string say_cost(const WayCost& cost, const Words& words);
// "at most", as JSON has it; empty where it is exact.
std::string say_surety(Surety surety);

// "back dado (twine) was not compared: it shares its setups with another joint; it is cut in 2 passes with quarter stack".
std::string say_not_compared(const Job& job, const NotCompared& one);

// "locking rabbet (twine): 1 pass with wide bit was not compared: with it the joint would have other measures".
std::string say_left_out(const Job& job, const LeftOut& one);

// "back dado (twine, hand tools): 2 passes with quarter stack: 6 min; 1 pass with ...: 19 min". What each adds to the time of all other work, the
// way that was picked first.
std::string say_reason(const Job& job, const WayReason& reason);

}  // namespace kw
