#include <algorithm>
#include <cassert>
#include <numeric>

#include "order/state.h"

namespace kw::order {
namespace {

// What must be changed for an operation, attribute by attribute: those that differ, and those lost by these changes.
std::vector<bool> changes(const Machine& machine, const std::vector<int>& stands, const std::vector<int>& needs) {
    std::vector<bool> changed(needs.size(), false);
    std::vector<bool> lost(needs.size(), false);
    for (std::size_t a = 0; a < needs.size(); ++a) {
        if (needs[a] == any || (needs[a] == stands[a] && !lost[a])) continue;
        changed[a] = true;
        if (a < machine.lost_by.size())
            for (const int other : machine.lost_by[a]) lost[static_cast<std::size_t>(other)] = true;
    }
    return changed;
}

}  // namespace

std::int64_t Step::total() const {
    return std::accumulate(change_seconds.begin(), change_seconds.end(), walk_seconds + work_seconds);
}

Machines::Machines(const Problem& problem) {
    for (const Machine& machine : problem.machines) stands_.push_back(machine.stands);
}

Step Machines::step_to(const Problem& problem, int operation) const {
    const Operation& op = problem.operations[static_cast<std::size_t>(operation)];
    const Machine& machine = problem.machines[static_cast<std::size_t>(op.machine)];
    const auto changed = changes(machine, stands_[static_cast<std::size_t>(op.machine)], op.needs);
    Step step{operation, 0, std::vector<std::int64_t>(changed.size(), 0), op.seconds};
    if (last_machine_ != any && last_machine_ != op.machine) step.walk_seconds = problem.walk_seconds;
    for (std::size_t a = 0; a < changed.size(); ++a)
        if (changed[a]) step.change_seconds[a] = machine.change_seconds[a];
    return step;
}

void Machines::take(const Problem& problem, int operation) {
    const Operation& op = problem.operations[static_cast<std::size_t>(operation)];
    const Machine& machine = problem.machines[static_cast<std::size_t>(op.machine)];
    auto& stands = stands_[static_cast<std::size_t>(op.machine)];
    const auto changed = changes(machine, stands, op.needs);
    for (std::size_t a = 0; a < changed.size(); ++a) {
        if (!changed[a]) continue;
        if (a < machine.lost_by.size())
            for (const int other : machine.lost_by[a]) stands[static_cast<std::size_t>(other)] = any;
        stands[a] = op.needs[a];
    }
    // A later attribute that was lost and needed again has been set by its own turn above.
    last_machine_ = op.machine;
}

std::vector<Step> cost_of(const Problem& problem, const std::vector<int>& order) {
    assert(order.size() == problem.operations.size());
    Machines machines(problem);
    std::vector<Step> steps;
    for (const int operation : order) {
        steps.push_back(machines.step_to(problem, operation));
        machines.take(problem, operation);
    }
    return steps;
}

std::int64_t total_seconds(const std::vector<Step>& steps) {
    std::int64_t total = 0;
    for (const Step& step : steps) total += step.total();
    return total;
}

bool is_allowed(const Problem& problem, const std::vector<int>& order) {
    std::vector<int> place(problem.operations.size(), any);
    for (std::size_t i = 0; i < order.size(); ++i) place[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
    if (std::find(place.begin(), place.end(), any) != place.end()) return false;
    const auto at = [&](int op) { return place[static_cast<std::size_t>(op)]; };
    for (const auto& [first, second] : problem.before)
        if (at(first) > at(second)) return false;
    for (const Block& block : problem.blocks) {
        if (block.operations.empty()) continue;
        const int machine = problem.operations[static_cast<std::size_t>(block.operations.front())].machine;
        std::vector<int> places;
        for (const int op : block.operations) places.push_back(at(op));
        const auto [first, last] = std::minmax_element(places.begin(), places.end());
        for (int i = *first; i <= *last; ++i) {
            const int op = order[static_cast<std::size_t>(i)];
            const bool member = std::find(block.operations.begin(), block.operations.end(), op) != block.operations.end();
            if (!member && problem.operations[static_cast<std::size_t>(op)].machine == machine) return false;
        }
    }
    return true;
}

}  // namespace kw::order
