#pragma once
// The setups as an order-of-work problem. Private to this folder.

#include "job/plan.h"
#include "job/precedence.h"
#include "order/solve.h"

namespace kw {

// Of a machine, as the maker calls it: "cutter", "shims", "fence", "height", "spacer"; empty for what nobody sets by hand.
std::string_view name_of_attribute(std::size_t attribute);

// For order::Options: tells `watch`, and stops when it has enough.
std::function<bool(const order::Progress&)> watched(const Watch& watch);

order::Problem order_problem(const Job& job, const std::vector<Setup>& setups,
                             const std::vector<std::pair<int, int>>& before);

}  // namespace kw
