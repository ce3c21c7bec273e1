#include <set>
#include <tuple>

#include "order/solve.h"

namespace kw::order {

std::int64_t lower_bound(const Problem& problem) {
    std::int64_t seconds = 0;
    std::set<int> machines;
    std::set<std::tuple<int, std::size_t, int>> values;
    for (const Operation& op : problem.operations) {
        seconds += op.seconds;
        machines.insert(op.machine);
        const Machine& machine = problem.machines[static_cast<std::size_t>(op.machine)];
        for (std::size_t a = 0; a < op.needs.size(); ++a) {
            if (op.needs[a] == any || op.needs[a] == machine.stands[a]) continue;
            if (values.insert({op.machine, a, op.needs[a]}).second) seconds += machine.change_seconds[a];
        }
    }
    if (!machines.empty()) seconds += static_cast<std::int64_t>(machines.size() - 1) * problem.walk_seconds;
    return seconds;
}

}  // namespace kw::order
