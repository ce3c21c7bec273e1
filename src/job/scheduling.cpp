#include "job/scheduling.h"

#include <map>

namespace kw {
namespace {

// `lock` takes no time to change: it is the group that the machine is set for. No other work may come into it, not even work
// with the same settings: that has a test cut of its own, which may move them.
enum Attribute : std::size_t { cutter, fence, height, spacer, lock, attributes };

// Numbers values in the order in which they come up, per machine and attribute.
class Values {
public:
    int number(std::size_t machine, std::size_t attribute, const std::string& value) {
        auto& known = numbers_[{machine, attribute}];
        return known.try_emplace(value, static_cast<int>(known.size())).first->second;
    }

private:
    std::map<std::pair<std::size_t, std::size_t>, std::map<std::string, int>> numbers_;
};

std::string ticks(Length length) { return std::to_string(length.ticks()); }

order::Machine machine_with(const WorkTimes& times) {
    order::Machine machine;
    machine.walk_s = times.machine_s;
    machine.attributes.resize(attributes);
    machine.attributes[cutter].change_s = times.cutter_s;
    machine.attributes[cutter].invalidates = {height};  // another cutter has another radius
    machine.attributes[fence].change_s = times.fence_s;
    machine.attributes[height].change_s = times.height_s;
    machine.attributes[spacer].change_s = times.spacer_s;
    machine.start.assign(attributes, order::unknown);
    return machine;
}

order::Operation operation_of(const WorkTimes& times, const Setup& setup, std::size_t machine,
                              Values& values) {
    order::Operation operation;
    operation.machine = machine;
    operation.needs = {
        values.number(machine, cutter, setup.cutter), values.number(machine, fence, ticks(setup.fence)),
        setup.height ? values.number(machine, height, ticks(*setup.height)) : order::any,
        values.number(machine, spacer, ticks(setup.spacer)), values.number(machine, lock, setup.group)};
    operation.duration_s = times.pass_s * static_cast<std::int64_t>(setup.passes.size()) +
                           (setup.test_cut ? times.test_cut_s : 0);
    return operation;
}

}  // namespace

std::string_view name_of_attribute(std::size_t attribute) {
    switch (attribute) {
        case cutter: return "cutter";
        case fence: return "fence";
        case height: return "height";
        case spacer: return "spacer";
        default: return {};
    }
}

std::function<bool(const order::Progress&)> watched(const Watch& watch) {
    if (!watch) return {};
    return [watch](const order::Progress& progress) {
        watch(progress.best_seconds, progress.bound_seconds);
        return false;
    };
}

order::Problem order_problem(const Job& job, const std::vector<Setup>& setups,
                             const std::vector<std::pair<int, int>>& before) {
    order::Problem problem;
    for (const auto& [first, then] : before)
        problem.precedences.push_back({static_cast<std::size_t>(first), static_cast<std::size_t>(then)});
    std::map<std::string, std::size_t> machine_number;
    std::map<std::string, std::size_t> block_of;
    Values values;
    for (const Setup& setup : setups) {
        const auto [machine, is_new] = machine_number.try_emplace(setup.machine, problem.machines.size());
        if (is_new) {
            problem.machines.push_back(machine_with(job.times));
            // Nobody has left a spacer on the fence.
            problem.machines.back().start[spacer] = values.number(machine->second, spacer, ticks(Length{}));
        }
        problem.operations.push_back(operation_of(job.times, setup, machine->second, values));
        if (setup.group.empty()) continue;
        const auto [block, is_first] = block_of.try_emplace(setup.group, problem.groups.size());
        if (is_first) problem.groups.push_back({{}, {lock}, false});
        problem.groups[block->second].operations.push_back(problem.operations.size() - 1);
    }
    return problem;
}

}  // namespace kw
