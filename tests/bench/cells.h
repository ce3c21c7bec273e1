#pragma once
// All settings of a problem, parted into cells: operations that set one attribute to one value, and whether one of them must. No
// setting is in two cells, so that the sum over the cells is the time that all settings take, and has a floor.

#include <algorithm>
#include <vector>

#include "order/milp.h"

namespace bench {

struct Cell {
    std::size_t machine = 0;
    std::size_t attribute = 0;
    std::vector<std::size_t> operations;
    std::int64_t seconds = 0;
    bool is_set_once = false;  // at least once
};

inline std::vector<Cell> cells_of(const kw::order::Problem& problem) {
    std::vector<Cell> cells;
    std::vector<std::vector<bool>> is_in_one;
    for (const auto& operation : problem.operations) is_in_one.emplace_back(operation.needs.size(), false);
    for (const bool is_set_once : {true, false}) {
        for (std::size_t i = 0; i < problem.operations.size(); ++i) {
            const auto& [machine, needs, duration] = problem.operations[i];
            for (std::size_t a = 0; a < needs.size(); ++a) {
                if (needs[a] == kw::order::any) continue;
                const std::int64_t seconds =
                    ord::milp::setting_s(problem.machines[machine].attributes[a], needs[a]);
                const std::vector<std::size_t> operations =
                    is_set_once ? ord::milp::setters_of(problem, i, a) : std::vector<std::size_t>{i};
                const bool is_new = std::none_of(operations.begin(), operations.end(),
                                                 [&, a = a](std::size_t j) { return is_in_one[j][a]; });
                if (operations.empty() || !is_new) continue;
                for (const std::size_t j : operations) is_in_one[j][a] = true;
                cells.push_back({machine, a, operations, seconds, is_set_once});
            }
        }
    }
    return cells;
}

}  // namespace bench
