#pragma once
// Local improvement of an order.

#include "order/model.h"

namespace kw::order {

// Moves stretches of the order (one operation, all that share its settings, all up to the next walk) next to work on the same machine
// or with the same setting, as long as that takes time off and breaks no rule. `order` must keep the rules. Ends after
// `step_limit` steps of trial orders, if not before.
std::vector<std::size_t> improve(const Model& model, std::vector<std::size_t> order, std::int64_t step_limit);

}  // namespace kw::order
