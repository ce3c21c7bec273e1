#pragma once
// What the maker wants done first, or last, whatever time it takes.

#include "job/plan.h"

namespace kw {

enum class Pinned { nowhere, first, last };
Pinned pinned_as(const Pins& pins, const std::string& name);

// How a pin names a setup: a joint's by its group's key, which holds when the plan is numbered anew; a rip or a crosscut by its machine and
// the first of its parts. All setups of a group go by one name.
std::string pin_name(const Setup& setup, const Design& design);

// Pairs of setups, first before second, that the pins ask for: what is pinned first comes before all that it does not need itself, in the
// sequence of the pins; what is pinned last after all that does not need it. `before`: all pairs that hold anyhow.
std::vector<std::pair<int, int>> pinned_pairs(const Pins& pins, const Design& design,
                                              const std::vector<Setup>& setups,
                                              const std::vector<std::pair<int, int>>& before);

// By setup: what must be done before this one, and what after it, whatever is pinned. All of its group are in both, since a group is set once.
struct Surroundings {
    std::vector<bool> before, after;
};
Surroundings surroundings_of(const Design& design, const std::vector<Setup>& setups, std::size_t setup);

// The machine that a pin names and that is away: the pin holds again when it is back. Empty where there is none.
std::string away_with(const std::string& pin, const Shop& shop);

// Pins that name nothing in the plan any more.
std::vector<std::string> idle_pins(const Pins& pins, const Design& design, const std::vector<Setup>& setups);

}  // namespace kw
