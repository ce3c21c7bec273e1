#pragma once
// A problem with less in it.

#include "order/problem.h"

namespace kw::order {

// The problem without these operations: the others keep their sequence and are numbered anew. What an operation that is gone came between
// no longer has to wait. An option of which nothing is left goes as well, and where one alone is left there is no choice.
Problem without(const Problem& problem, const std::vector<std::size_t>& operations);

}  // namespace kw::order
