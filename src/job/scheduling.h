#pragma once
// The setups as an order-of-work problem. Private to this folder.

#include "job/precedence.h"
#include "order/solve.h"

namespace kw {

order::Problem order_problem(const Job& job, const std::vector<Setup>& setups,
                             const std::vector<std::pair<int, int>>& before);

}  // namespace kw
