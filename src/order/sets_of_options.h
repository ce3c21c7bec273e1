#pragma once
// Where there are few choices: each set of options as a problem of its own.

#include <limits>

#include "order/solve.h"

namespace kw::order {

inline constexpr std::size_t most_sets_to_solve = 256;
inline constexpr std::int64_t whatever_it_takes = std::numeric_limits<std::int64_t>::max();

// How many ways there are to take one option of each choice; beyond most_sets_to_solve it is not counted on.
std::size_t sets_of_options(const Problem& problem);

// The sets with the least bounds come first, until no bound of the rest is below the best order; each gets up to a quarter of what is left
// of the node limit.
Result solve_each_set(const Problem& problem, const Options& options);

// All in one search (in solve.cpp). Only orders that take less than `below_s`: where there is none, order and seconds are empty, and
// `proved` says that there is none.
Result solve_below(const Problem& problem, const Options& options, std::int64_t below_s);

}  // namespace kw::order
