#pragma once
// Operations on several machines by one person. Knows nothing of wood: a machine keeps a state (a vector of attribute values)
// while others are used; an operation needs its machine in a certain state; changing the state takes time.

#include <cstdint>
#include <string>
#include <vector>

namespace kw::order {

inline constexpr int any = -1;  // as a need: leaves the attribute as it is; as a state: not known, must be set

struct Operation {
    int machine = 0;
    std::vector<int> needs;      // one value per attribute, or `any`
    std::int64_t seconds = 0;    // the work itself
};

struct Machine {
    std::vector<std::int64_t> change_seconds;  // per attribute
    std::vector<int> stands;                   // per attribute, at the start
    // Attributes whose value is lost when another one changes: lost_by[a] are lost when a changes.
    std::vector<std::vector<int>> lost_by;
};

// Operations on one machine that are begun and finished without anything else on that machine between them.
struct Block {
    std::vector<int> operations;
};

struct Problem {
    std::vector<Machine> machines;
    std::vector<Operation> operations;
    std::vector<std::pair<int, int>> before;  // first before second
    std::vector<Block> blocks;
    std::int64_t walk_seconds = 0;            // from one machine to another
};

// The time of one step of an order, taken apart.
struct Step {
    int operation = 0;
    std::int64_t walk_seconds = 0;
    std::vector<std::int64_t> change_seconds;  // per attribute
    std::int64_t work_seconds = 0;

    std::int64_t total() const;
};

// Every step's cost; their totals add up to the order's. The order must hold every operation once.
std::vector<Step> cost_of(const Problem& problem, const std::vector<int>& order);
std::int64_t total_seconds(const std::vector<Step>& steps);

// Whether the order keeps `before` and `blocks`.
bool is_allowed(const Problem& problem, const std::vector<int>& order);

}  // namespace kw::order
