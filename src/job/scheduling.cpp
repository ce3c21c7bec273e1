#include "job/scheduling.h"

#include <algorithm>
#include <map>

#include "setup/bit_passes.h"
#include "setup/shims.h"

namespace kw {
namespace {

// `lock` takes no time to change: it is the group that the machine is set for. No other work may come into it, not even work
// with the same settings: that has a test cut of its own, which may move them.
// The shims of a stack hang on the cutter: to change these alone takes less than to change it. Where both are changed the times add up
// to that of the cutter.
enum Attribute : std::size_t { cutter, shims, fence, height, spacer, lock, attributes };

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
    machine.attributes[cutter].invalidates = {shims, height};  // another cutter has another radius
    machine.attributes[shims].change_s = std::min(times.shims_s, times.cutter_s);
    machine.attributes[fence].change_s = times.fence_s;
    machine.attributes[height].change_s = times.height_s;
    machine.attributes[spacer].change_s = times.spacer_s;
    machine.start.assign(attributes, order::unknown);
    return machine;
}

// A stack goes by its name and what is in it but for its shims.
std::string stack_of(const Setup& setup) {
    return setup.cutter + " " + ticks(setup.make_up - setup.shims.value_or(Length{}));
}

std::string stack_of(const Cutter& cutter) {
    return cutter.name + " " + ticks(cutter.kerf - (lists_shims(cutter) ? shims_in(cutter) : Length{}));
}

const Cutter* only_cutter_of(const Shop& shop, const std::string& machine) {
    const Cutter* only = nullptr;
    for (const Cutter& one : shop.cutters) {
        if (one.machine != machine) continue;
        if (only) return nullptr;
        only = &one;
    }
    return only;
}

// A pin of a jig is another thing than a fence, wherever they stand.
std::string where_to(const Setup& setup) { return (setup.index ? "pin " : "") + ticks(setup.fence); }

// `runs`: how often each end goes through. In all but the last run the height is another than the one that is set: for the whole
// batch it is raised once after each.
order::Operation operation_of(const WorkTimes& times, const Setup& setup, std::size_t machine,
                              std::int64_t runs, Values& values) {
    order::Operation operation;
    operation.machine = machine;
    operation.needs = {values.number(machine, cutter, stack_of(setup)),
                       setup.shims ? values.number(machine, shims, ticks(*setup.shims)) : order::any,
                       values.number(machine, fence, where_to(setup)),
                       setup.height ? values.number(machine, height, ticks(*setup.height)) : order::any,
                       values.number(machine, spacer, ticks(setup.spacer)),
                       values.number(machine, lock, setup.group)};
    std::int64_t through_s = times.pass_s * static_cast<std::int64_t>(setup.passes.size());
    for (const Pass& pass : setup.passes) through_s += times.index_s * (pass.cuts - 1);
    operation.duration_s =
        through_s * runs + times.height_s * (runs - 1) + (setup.test_cut ? times.test_cut_s : 0);
    return operation;
}

// Its shims are set with it, and have a time of their own.
void less_the_shims(order::Attribute& cutters, int value, const WorkTimes& times) {
    const auto index = static_cast<std::size_t>(value);
    if (cutters.change_to_s.size() <= index) cutters.change_to_s.resize(index + 1, times.cutter_s);
    cutters.change_to_s[index] = times.cutter_s - std::min(times.shims_s, times.cutter_s);
}

}  // namespace

std::string_view name_of_attribute(std::size_t attribute) {
    switch (attribute) {
        case cutter: return "cutter";
        case shims: return "shims";
        case fence: return "fence";
        case height: return "height";
        case spacer: return "spacer";
        default: return {};
    }
}

std::function<bool(const order::Progress&)> watched(const Watch& watch) {
    if (!watch) return {};
    return [watch](const order::Progress& progress) {
        return watch(progress.best_seconds, progress.bound_seconds) == SearchMore::no;
    };
}

order::Problem order_problem(const Job& job, const std::vector<Setup>& setups,
                             const std::vector<std::pair<int, int>>& before) {
    order::Problem problem;
    for (const auto& [first, then] : before)
        problem.precedences.push_back({static_cast<std::size_t>(first), static_cast<std::size_t>(then)});
    const Shop shop = with_implied_blades(job.shop);
    std::map<std::string, std::size_t> machine_number;
    std::map<std::string, std::size_t> block_of;
    Values values;
    for (const Setup& setup : setups) {
        const auto [machine, is_new] = machine_number.try_emplace(setup.machine, problem.machines.size());
        if (is_new) {
            problem.machines.push_back(machine_with(job.times));
            // Nobody has left a spacer on the fence, or taken the only cutter off.
            problem.machines.back().start[spacer] = values.number(machine->second, spacer, ticks(Length{}));
            if (const Cutter* only = only_cutter_of(shop, setup.machine)) {
                problem.machines.back().start[cutter] =
                    values.number(machine->second, cutter, stack_of(*only));
                if (lists_shims(*only))
                    problem.machines.back().start[shims] =
                        values.number(machine->second, shims, ticks(shims_in(*only)));
            }
        }
        const auto runs =
            std::max<std::int64_t>(1, static_cast<std::int64_t>(heights_of(shop, setup).size()));
        problem.operations.push_back(operation_of(job.times, setup, machine->second, runs, values));
        if (setup.shims)
            less_the_shims(problem.machines[machine->second].attributes[cutter],
                           problem.operations.back().needs[cutter], job.times);
        if (setup.group.empty()) continue;
        const auto [block, is_first] = block_of.try_emplace(setup.group, problem.groups.size());
        if (is_first) problem.groups.push_back({{}, {lock}, false});
        problem.groups[block->second].operations.push_back(problem.operations.size() - 1);
    }
    return problem;
}

}  // namespace kw
