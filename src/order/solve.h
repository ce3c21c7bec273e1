#pragma once
// A good order of the work, with an honest bound. The same on every machine and every run.

#include "order/problem.h"

namespace kw::order {

enum class Status {
    proved,      // no order is faster
    limited,     // the best found; none is faster than the bound
    impossible,  // `before` and `blocks` contradict each other
};

struct Options {
    // About how many steps are looked at in all; wider searches of small problems, narrow ones of large ones.
    std::int64_t effort = 3'000'000;
};

struct Result {
    Status status = Status::impossible;
    std::vector<int> order;
    std::int64_t seconds = 0;
    std::int64_t lower_bound_seconds = 0;
    std::vector<int> culprits;  // of `impossible`: operations none of which can come first
};

// Beam search. States with the same operations done and the same machines are one, the cheaper kept. Where no state had
// to be dropped the search was complete, and the order is proved.
Result solve(const Problem& problem, const Options& options = {});

// Work, plus for each machine and attribute one change for each value that is needed and does not stand already, plus
// one walk to each further machine.
std::int64_t lower_bound(const Problem& problem);

}  // namespace kw::order
