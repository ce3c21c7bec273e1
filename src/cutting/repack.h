#pragma once
// The search for layouts: pieces are taken out of a few sheets and put in again elsewhere, with less stock than the best layout so
// far had, until all are in (ruin and recreate: Schrimpf and others, J. Comput. Phys. 159, 2000; with guillotine trees and a goal
// that moves: Gardeyn and Wauters, EJOR 2022; both from memory). Private to this folder.

#include <functional>
#include <optional>

#include "cutting/effort.h"
#include "cutting/packing_tree.h"

namespace kw::cutting {

struct Sheet {
    std::size_t stock = 0;
    std::size_t way = 0;  // of the stock's ways to be cut into sound regions
    std::vector<PackingTree> regions;
    bool is_open = true;

    bool is_empty() const;
};

struct Packed {
    std::vector<Sheet> sheets;
    std::int64_t cost = 0;
    std::int64_t lost = 0;       // value of the pieces that are out
    std::vector<int> left_over;  // pieces that found no place, each by its index as often as it is out
    std::int64_t looks = 0;
};

struct RepackGoal {
    std::int64_t enough_cost = 0;  // no layout costs less: the search ends there
    std::int64_t enough_lost = 0;  // with stock that costs nothing: no less can stay out
    bool must_place_all = true;    // false: all stock may be used, and what is out should be worth little
    std::uint64_t seed = 1;
};

// Every piece must fit one of the stocks. The same question has the same answer. `left_over` isn't empty where stock ran out, or
// where not all had to be placed.
// `begun`: sheets of the only stock, to begin with; what is too many on them is taken off.
Packed repack(const Packing& packing, const RepackGoal& goal, const Effort& effort,
              const std::vector<PackingTree>& begun = {});

}  // namespace kw::cutting
