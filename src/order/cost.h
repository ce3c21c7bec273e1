#pragma once
// What a given order costs, step by step, for explaining it; and whether it keeps the rules.

#include "order/problem.h"

namespace kw::order {

enum class Cause {
    differs,      // it stood at another value
    not_known,    // nobody knows where it stood
    invalidated,  // another attribute was changed, now or since it was set
};

struct Change {
    std::size_t attribute = 0;
    int from = unknown;  // where it stood last
    int to = 0;
    Cause cause = Cause::differs;
    std::int64_t seconds = 0;
};

struct Step {
    std::size_t operation = 0;
    std::int64_t walk_s = 0;
    std::vector<Change> changes;
    std::int64_t duration_s = 0;

    std::int64_t setting_s() const;  // all its changes
    std::int64_t seconds() const { return walk_s + setting_s() + duration_s; }
};

struct Price {
    std::vector<Step> steps;
    std::int64_t seconds = 0;
    std::vector<std::vector<int>> left;  // how each machine is left: as a problem's start
};

// Any operations of a valid problem in any order, all of them or not.
Price price(const Problem& problem, const std::vector<std::size_t>& order);

enum class Rule { each_once, choice, precedence, group };

// The rule that an order breaks first, and the operation with which it does.
struct Breach {
    Rule rule = Rule::each_once;
    std::size_t position = 0;  // in the order; its length where operations are missing
    std::size_t index =
        0;  // of the operation that is missing, there twice or not there at all; of the choice of which not one option
    // is done, or more than one; of the precedence; of the group
};

std::optional<Breach> first_breach(const Problem& problem, const std::vector<std::size_t>& order);

}  // namespace kw::order
