#pragma once
// Random problems, the same on every machine.

#include <algorithm>
#include <numeric>
#include <random>

#include "order/problem.h"

namespace ord {

using kw::order::Attribute;
using kw::order::Group;
using kw::order::Machine;
using kw::order::Operation;
using kw::order::Problem;

// std::uniform_int_distribution differs between libraries; the engine doesn't.
class Random {
public:
    explicit Random(std::uint32_t seed) : engine_(seed) {}
    std::size_t below(std::size_t count) { return engine_() % count; }
    int between(int low, int high) {
        return low + static_cast<int>(below(static_cast<std::size_t>(high - low + 1)));
    }
    bool chance(int percent) { return static_cast<int>(below(100)) < percent; }

private:
    std::mt19937 engine_;
};

struct Kind {
    std::size_t operations = 8;
    std::size_t machines = 2;
    std::size_t attributes = 3;
    int values = 3;
    int any_percent = 25;  // needs that are "any"
    int precedence_percent = 15;
    std::size_t groups = 1;
    bool is_wild = false;  // no sense in what hangs on what, and in what groups hold
    bool has_walks = true;
    std::size_t choices = 0;
    int from_to_percent = 0;     // attributes with a from-to table
    bool is_triangular = false;  // no way round in it is cheaper than the direct change
};

// Small problems of all kinds.
inline Kind random_kind(Random& random, bool is_wild, std::size_t most) {
    Kind kind;
    kind.operations = 1 + random.below(most);
    kind.machines = 1 + random.below(3);
    kind.attributes = random.below(4);
    kind.groups = random.below(3);
    kind.any_percent = random.between(0, 50);
    kind.precedence_percent = random.between(0, 30);
    kind.has_walks = random.chance(70);
    kind.is_wild = is_wild;
    return kind;
}

// A table for the values; now and then too small for them.
inline void add_from_to(const Kind& kind, Attribute& attribute, Random& random) {
    const auto values = static_cast<std::size_t>(std::max(1, kind.values - (random.chance(20) ? 1 : 0)));
    attribute.change_from_to_s.assign(values, std::vector<std::int64_t>(values, 0));
    for (auto& row : attribute.change_from_to_s)
        for (std::int64_t& seconds : row)
            seconds = kind.is_triangular ? random.between(10, 20) : random.between(0, 20);
    if (!kind.is_triangular) return;
    attribute.change_s = 20;
    attribute.change_to_s.clear();
}

inline Machine random_machine(const Kind& kind, Random& random) {
    Machine machine;
    machine.walk_s = kind.has_walks ? random.between(0, 6) : 0;
    for (std::size_t a = 0; a < kind.attributes; ++a) {
        Attribute attribute;
        attribute.change_s = random.between(1, 12);
        if (random.chance(30)) attribute.change_to_s = {random.between(1, 20), random.between(1, 20)};
        if (kind.from_to_percent > 0 && random.chance(kind.from_to_percent))
            add_from_to(kind, attribute, random);
        for (std::size_t b = kind.is_wild ? 0 : a + 1; b < kind.attributes; ++b)
            if (random.chance(30)) attribute.invalidates.push_back(b);
        machine.attributes.push_back(attribute);
        machine.start.push_back(random.between(-1, kind.values - 1));
    }
    return machine;
}

// Whether a changed `a` invalidates `b`, over any number of links.
inline bool hangs(const Machine& machine, std::size_t b, std::size_t a) {
    std::vector<std::size_t> todo{a};
    std::vector<bool> seen(machine.attributes.size(), false);
    while (!todo.empty()) {
        const std::size_t at = todo.back();
        todo.pop_back();
        for (const std::size_t next : machine.attributes[at].invalidates) {
            if (next == b) return true;
            if (!seen[next]) todo.push_back(next);
            seen[next] = true;
        }
    }
    return false;
}

inline Operation random_operation(const Kind& kind, const Problem& problem, Random& random) {
    Operation operation;
    operation.machine = random.below(kind.machines);
    operation.duration_s = random.between(0, 9);
    const Machine& machine = problem.machines[operation.machine];
    for (std::size_t a = 0; a < kind.attributes; ++a)
        operation.needs.push_back(random.chance(kind.any_percent) ? kw::order::any
                                                                  : random.between(0, kind.values - 1));
    if (kind.is_wild) return operation;
    for (std::size_t b = 0; b < kind.attributes; ++b)
        for (std::size_t a = 0; a < kind.attributes; ++a)
            if (operation.needs[a] == kw::order::any && hangs(machine, b, a))
                operation.needs[b] = kw::order::any;
    return operation;
}

inline void add_group(const Kind& kind, Problem& problem, Random& random) {
    const std::size_t machine = problem.operations[random.below(problem.operations.size())].machine;
    Group group;
    for (std::size_t a = 0; a < kind.attributes; ++a)
        if (random.chance(60)) group.held.push_back(a);
    for (std::size_t i = 0; i < problem.operations.size(); ++i)
        if (problem.operations[i].machine == machine && random.chance(50)) group.operations.push_back(i);
    if (group.operations.empty()) return;
    group.begun = random.chance(15);
    if (!kind.is_wild) {
        group.held.resize(kind.attributes);
        std::iota(group.held.begin(), group.held.end(), std::size_t{0});
        const bool is_uniform = random.chance(50);
        for (const std::size_t i : group.operations) {
            const std::size_t like = is_uniform ? group.operations.front() : i;
            for (std::size_t a = 0; a < kind.attributes; ++a)
                problem.operations[i].needs[a] = std::max(0, problem.operations[like].needs[a]);
        }
    }
    problem.groups.push_back(group);
}

// Groups and single operations as the units of which options are made.
inline void add_choices(const Kind& kind, Problem& problem, Random& random) {
    std::vector<std::vector<std::size_t>> units;
    std::vector<int> groups_of(problem.operations.size(), 0);
    for (const Group& group : problem.groups)
        for (const std::size_t i : group.operations) groups_of[i] += 1;
    for (const Group& group : problem.groups)
        if (!group.begun && std::all_of(group.operations.begin(), group.operations.end(),
                                        [&](std::size_t i) { return groups_of[i] == 1; }))
            units.push_back(group.operations);
    for (std::size_t i = 0; i < problem.operations.size(); ++i)
        if (groups_of[i] == 0) units.push_back({i});
    for (std::size_t i = units.size(); i > 1; --i) std::swap(units[i - 1], units[random.below(i)]);
    for (std::size_t c = 0; c < kind.choices; ++c) {
        kw::order::Choice choice;
        for (std::size_t o = 0; o < (random.chance(30) ? 3U : 2U) && !units.empty(); ++o) {
            choice.options.push_back(units.back());
            units.pop_back();
            if (units.empty() || !random.chance(40)) continue;
            choice.options.back().insert(choice.options.back().end(), units.back().begin(),
                                         units.back().end());
            units.pop_back();
        }
        if (choice.options.size() > 1) problem.choices.push_back(choice);
    }
}

inline std::vector<std::size_t> shuffled(std::size_t count, Random& random) {
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (std::size_t i = count; i > 1; --i) std::swap(order[i - 1], order[random.below(i)]);
    return order;
}

inline Problem random_problem(const Kind& kind, Random& random) {
    Problem problem;
    for (std::size_t m = 0; m < kind.machines; ++m) problem.machines.push_back(random_machine(kind, random));
    for (std::size_t i = 0; i < kind.operations; ++i)
        problem.operations.push_back(random_operation(kind, problem, random));
    const std::vector<std::size_t> sequence = shuffled(kind.operations, random);
    for (std::size_t j = 0; j < kind.operations; ++j)
        for (std::size_t i = 0; i < j; ++i)
            if (random.chance(kind.precedence_percent))
                problem.precedences.push_back({sequence[i], sequence[j]});
    for (std::size_t g = 0; g < kind.groups; ++g) add_group(kind, problem, random);
    if (random.chance(50)) problem.start_machine = random.below(kind.machines);
    add_choices(kind, problem, random);
    return problem;
}

// The problem that is left once `done` was done, in this order, and the machines were left so.
inline Problem rest_of(const Problem& problem, const std::vector<std::size_t>& done,
                       const std::vector<std::vector<int>>& left) {
    Problem rest;
    std::vector<std::size_t> number(problem.operations.size(), problem.operations.size());
    const auto is_done = [&](std::size_t i) { return std::find(done.begin(), done.end(), i) != done.end(); };
    for (std::size_t i = 0; i < problem.operations.size(); ++i) {
        if (is_done(i)) continue;
        number[i] = rest.operations.size();
        rest.operations.push_back(problem.operations[i]);
    }
    rest.machines = problem.machines;
    for (std::size_t m = 0; m < left.size(); ++m) rest.machines[m].start = left[m];
    rest.start_machine = done.empty() ? problem.start_machine : problem.operations[done.back()].machine;
    for (const auto& [first, then] : problem.precedences)
        if (!is_done(first)) rest.precedences.push_back({number[first], number[then]});
    for (const Group& group : problem.groups) {
        Group open{{}, group.held, group.begun};
        for (const std::size_t i : group.operations) {
            if (is_done(i)) open.begun = true;
            else open.operations.push_back(number[i]);
        }
        if (!open.operations.empty()) rest.groups.push_back(open);
    }
    return rest;
}

}  // namespace ord
