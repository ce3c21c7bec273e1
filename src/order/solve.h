#pragma once
// The order that takes least time, or a good one and how far from the least it may be.

#include <chrono>
#include <functional>

#include "order/problem.h"

namespace kw::order {

struct Progress {
    std::int64_t best_seconds =
        0;  // of the best order so far: there always is one by the time of the first report
    std::int64_t bound_seconds = 0;  // no order takes less
    std::int64_t nodes = 0;
};

struct Options {
    std::int64_t node_limit =
        400'000;                   // partial orders looked at; the same count on every machine, unlike time
    std::size_t beam_width = 100;  // partial orders of equal length kept in the first, quick search
    std::function<bool(const Progress&)>
        stop;  // asked every few hundred nodes once there is an order; true ends the search
    std::optional<std::chrono::milliseconds>
        time_limit{};  // with one, the answer hangs on how fast the machine is
};

enum class Status {
    proved,      // no order takes less
    limited,     // a limit or the callback ended the search: the best order found, if any was
    impossible,  // there is no order
};

struct Result {
    Status status = Status::limited;
    std::vector<std::size_t> order;        // empty where none was found
    std::vector<std::size_t> picked;       // by choice: the option that is done; empty likewise
    std::int64_t seconds = 0;              // of that order
    std::int64_t lower_bound_seconds = 0;  // no order takes less; with `proved` the same as seconds
    std::int64_t nodes = 0;

    std::int64_t gap_s() const { return seconds - lower_bound_seconds; }  // of an order that was found
    double gap() const {  // the same as a part of that order's time
        return seconds > 0 ? static_cast<double>(gap_s()) / static_cast<double>(seconds) : 0;
    }

    // Where impossible: the operations that can't all keep the rules, in the order in which one forces the next, and the groups
    // that are in the way. A cycle of precedences alone names no group.
    std::vector<std::size_t> culprits;
    std::vector<std::size_t> culprit_groups;
};

// The problem must be valid (see validate). Without a time limit, the result depends on nothing but the problem
// and the options.
//
// Costs are sums of changes per attribute, so that (see expand.h) work that needs no change is done at once, and work that
// lies on the way to other work is done on the way. A beam search finds a good order; a best-first search, bounded by it and by
// bound.h, proves it or finds the best. Large problems get a narrow beam and local improvement (see improve.h). Where all time
// hangs on what follows what, it is a path, and has a search of its own (see path_search.h).
Result solve(const Problem& problem, const Options& options = {});

}  // namespace kw::order
