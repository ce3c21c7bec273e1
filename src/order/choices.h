#pragma once
// Which operations are done in any case, and which only with an option of a choice.

#include "order/problem.h"

namespace kw::order {

inline constexpr std::size_t no_choice = static_cast<std::size_t>(-1);

struct OptionOf {
    std::size_t choice = no_choice;  // done in any case
    std::size_t option = 0;
    bool operator==(const OptionOf&) const = default;
};

// By operation.
std::vector<OptionOf> options_of(const Problem& problem);

// Whether no order has both.
inline bool exclude_each_other(const OptionOf& a, const OptionOf& b) {
    return a.choice != no_choice && a.choice == b.choice && a.option != b.option;
}

}  // namespace kw::order
