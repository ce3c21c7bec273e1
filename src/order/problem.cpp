#include "order/problem.h"

#include <algorithm>

#include "order/choices.h"

namespace kw::order {

namespace {

using Why = std::string;  // empty: nothing is the matter

bool is_time(std::int64_t seconds) { return 0 <= seconds && seconds <= most_seconds; }

bool all_below(const std::vector<std::size_t>& indices, std::size_t count) {
    return std::all_of(indices.begin(), indices.end(), [count](std::size_t index) { return index < count; });
}

bool has_duplicates(std::vector<std::size_t> indices) {
    std::sort(indices.begin(), indices.end());
    return std::adjacent_find(indices.begin(), indices.end()) != indices.end();
}

// -1 stands for "any" and for "unknown" alike.
bool are_values(const std::vector<int>& values) {
    return std::all_of(values.begin(), values.end(), [](int value) { return value >= -1; });
}

Why fault_of(const Attribute& attribute, std::size_t attributes) {
    if (!is_time(attribute.change_s)) return "the time of a change is out of range";
    if (!std::all_of(attribute.change_to_s.begin(), attribute.change_to_s.end(), is_time))
        return "the time of a change to a value is out of range";
    for (const std::vector<std::int64_t>& from : attribute.change_from_to_s)
        if (!std::all_of(from.begin(), from.end(), is_time))
            return "the time of a change from one value to another is out of range";
    if (!all_below(attribute.invalidates, attributes)) return "invalidates an attribute that there is not";
    return {};
}

Why fault_of(const Machine& machine) {
    const std::size_t attributes = machine.attributes.size();
    if (!is_time(machine.walk_s)) return "the walk's time is out of range";
    if (attributes > most_attributes) return "too many attributes";
    if (machine.start.size() != attributes) return "start has not one value per attribute";
    if (!are_values(machine.start)) return "start has a value below -1";
    for (const Attribute& attribute : machine.attributes)
        if (Why why = fault_of(attribute, attributes); !why.empty()) return why;
    return {};
}

Why fault_of(const Operation& operation, const Problem& problem) {
    if (operation.machine >= problem.machines.size()) return "its machine is not there";
    if (operation.needs.size() != problem.machines[operation.machine].attributes.size())
        return "needs has not one value per attribute";
    if (!are_values(operation.needs)) return "needs a value below -1";
    if (!is_time(operation.duration_s)) return "its duration is out of range";
    return {};
}

Why fault_of(const Precedence& precedence, const Problem& problem) {
    if (!all_below({precedence.first, precedence.then}, problem.operations.size()))
        return "names an operation that there is not";
    return {};
}

Why fault_of(const Group& group, const Problem& problem) {
    if (group.operations.empty()) return "is empty";
    if (!all_below(group.operations, problem.operations.size()))
        return "names an operation that there is not";
    if (has_duplicates(group.operations)) return "names an operation twice";
    const std::size_t machine = problem.operations[group.operations.front()].machine;
    for (const std::size_t operation : group.operations)
        if (problem.operations[operation].machine != machine) return "has operations on different machines";
    if (!all_below(group.held, problem.machines[machine].attributes.size()))
        return "holds an attribute that there is not";
    return {};
}

Why fault_of(const Choice& choice, const Problem& problem) {
    if (choice.options.size() < 2) return "has fewer than two options";
    if (choice.options.size() > most_options) return "has too many options";
    for (const auto& option : choice.options) {
        if (option.empty()) return "has an option without operations";
        if (!all_below(option, problem.operations.size())) return "names an operation that there is not";
    }
    return {};
}

std::optional<Fault> choices_overlap(const Problem& problem) {
    std::vector<bool> seen(problem.operations.size(), false);
    for (std::size_t c = 0; c < problem.choices.size(); ++c)
        for (const auto& option : problem.choices[c].options)
            for (const std::size_t operation : option) {
                if (seen[operation])
                    return Fault{Where::choice, c, "names an operation that is in an option already"};
                seen[operation] = true;
            }
    return std::nullopt;
}

std::optional<Fault> groups_across_options(const Problem& problem) {
    const std::vector<OptionOf> options = options_of(problem);
    for (std::size_t g = 0; g < problem.groups.size(); ++g) {
        const Group& group = problem.groups[g];
        const OptionOf& first = options[group.operations.front()];
        if (group.begun && first.choice != no_choice)
            return Fault{Where::group, g, "is begun, and in an option that could still be left out"};
        for (const std::size_t operation : group.operations)
            if (options[operation] != first) return Fault{Where::group, g, "is not within one option"};
    }
    return std::nullopt;
}

template <class Item, class Check>
std::optional<Fault> first_fault(Where where, const std::vector<Item>& items, Check check) {
    for (std::size_t i = 0; i < items.size(); ++i)
        if (Why why = check(items[i]); !why.empty()) return Fault{where, i, std::move(why)};
    return std::nullopt;
}

}  // namespace

std::int64_t Attribute::setting_s(int value) const {
    const auto index = static_cast<std::size_t>(value);
    return index < change_to_s.size() ? change_to_s[index] : change_s;
}

std::int64_t Attribute::setting_s(int from, int value) const {
    const auto row = static_cast<std::size_t>(from);  // `unknown` is beyond any table
    const auto column = static_cast<std::size_t>(value);
    if (row >= change_from_to_s.size() || column >= change_from_to_s[row].size()) return setting_s(value);
    return change_from_to_s[row][column];
}

std::optional<Fault> validate(const Problem& problem) {
    const auto with_problem = [&problem](const auto& item) { return fault_of(item, problem); };
    if (problem.operations.size() > most_operations)
        return Fault{Where::operation, most_operations, "more operations than can be planned at once"};
    if (auto fault = first_fault(Where::machine, problem.machines,
                                 [](const Machine& machine) { return fault_of(machine); }))
        return fault;
    if (auto fault = first_fault(Where::operation, problem.operations, with_problem)) return fault;
    if (auto fault = first_fault(Where::precedence, problem.precedences, with_problem)) return fault;
    if (auto fault = first_fault(Where::group, problem.groups, with_problem)) return fault;
    if (auto fault = first_fault(Where::choice, problem.choices, with_problem)) return fault;
    if (auto fault = choices_overlap(problem)) return fault;
    if (auto fault = groups_across_options(problem)) return fault;
    if (problem.start_machine && *problem.start_machine >= problem.machines.size())
        return Fault{Where::start_machine, *problem.start_machine, "the machine to start from is not there"};
    return std::nullopt;
}

}  // namespace kw::order
