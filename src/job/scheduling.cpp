#include "job/scheduling.h"

#include <map>

namespace kw {
namespace {

enum Attribute : std::size_t { cutter, fence, height, spacer, attributes };

// Numbers values in the order in which they come up, per machine and attribute.
class Values {
public:
    int number(int machine, std::size_t attribute, const std::string& value) {
        auto& known = numbers_[{machine, attribute}];
        return known.try_emplace(value, static_cast<int>(known.size())).first->second;
    }

private:
    std::map<std::pair<int, std::size_t>, std::map<std::string, int>> numbers_;
};

std::string ticks(Length length) { return std::to_string(length.ticks()); }

}  // namespace

order::Problem order_problem(const Job& job, const std::vector<Setup>& setups,
                             const std::vector<std::pair<int, int>>& before) {
    order::Problem problem;
    problem.walk_seconds = job.times.machine_s;
    problem.before = before;
    std::map<std::string, int> machine_number;
    std::map<std::string, std::size_t> block_of;
    Values values;
    for (const Setup& setup : setups) {
        const int next_machine = static_cast<int>(problem.machines.size());
        const auto [machine, is_new] = machine_number.try_emplace(setup.machine, next_machine);
        if (is_new)
            problem.machines.push_back({{job.times.cutter_s, job.times.fence_s, job.times.height_s, job.times.spacer_s},
                                        std::vector<int>(attributes, order::any),
                                        {{height}}});  // another cutter has another radius: the height is set anew
        const int m = machine->second;
        order::Operation operation;
        operation.machine = m;
        operation.needs = {values.number(m, cutter, setup.cutter), values.number(m, fence, ticks(setup.fence)),
                           setup.height ? values.number(m, height, ticks(*setup.height)) : order::any,
                           values.number(m, spacer, ticks(setup.spacer))};
        operation.seconds = job.times.pass_s * static_cast<std::int64_t>(setup.passes.size()) +
                            (setup.test_cut ? job.times.test_cut_s : 0);
        if (!setup.group.empty()) {
            const auto [block, first] = block_of.try_emplace(setup.group, problem.blocks.size());
            if (first) problem.blocks.emplace_back();
            problem.blocks[block->second].operations.push_back(static_cast<int>(problem.operations.size()));
        }
        problem.operations.push_back(std::move(operation));
    }
    return problem;
}

}  // namespace kw
