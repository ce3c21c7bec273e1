#include "order/precedence.h"

#include <algorithm>
#include <map>
#include <optional>

#include "order/choices.h"
#include "order/closure.h"

namespace kw::order {

namespace {

// An arrow that follows from a group: `witness` is the operation of the group whose place forces that of the others.
struct Reason {
    std::size_t group = 0;
    std::optional<std::size_t> witness;
};

using Arrow = std::pair<std::size_t, std::size_t>;

struct Arrows {
    Nexts next;
    std::map<Arrow, Reason> reasons;
};

// One way back to `from`, or a path that ends where it is known already that none leads back.
bool find_cycle(const Arrows& arrows, std::vector<char>& state, std::vector<std::size_t>& path,
                std::size_t from) {
    enum : char { fresh, on_path, done };
    std::vector<std::size_t> tried(arrows.next.size(), 0);
    path = {from};
    state[from] = on_path;
    while (!path.empty()) {
        const std::size_t at = path.back();
        if (tried[at] == arrows.next[at].size()) {
            state[at] = done;
            path.pop_back();
            continue;
        }
        const std::size_t target = arrows.next[at][tried[at]++];
        if (state[target] == on_path) {
            path.erase(path.begin(), std::find(path.begin(), path.end(), target));
            return true;
        }
        if (state[target] == fresh) {
            state[target] = on_path;
            path.push_back(target);
        }
    }
    return false;
}

void add_once(std::vector<std::size_t>& list, std::size_t item) {
    if (std::find(list.begin(), list.end(), item) == list.end()) list.push_back(item);
}

// The arrows between operations that are done in any case.
Arrows among_sure(Arrows arrows, const std::vector<OptionOf>& options) {
    for (std::size_t i = 0; i < arrows.next.size(); ++i) {
        if (options[i].choice != no_choice) arrows.next[i].clear();
        std::erase_if(arrows.next[i],
                      [&](std::size_t target) { return options[target].choice != no_choice; });
    }
    return arrows;
}

Contradiction contradiction(const Arrows& arrows) {
    std::vector<char> state(arrows.next.size(), 0);
    std::vector<std::size_t> cycle;
    for (std::size_t i = 0; i < state.size(); ++i)
        if (state[i] == 0 && find_cycle(arrows, state, cycle, i)) break;
    Contradiction found;
    for (std::size_t i = 0; i < cycle.size(); ++i) {
        add_once(found.operations, cycle[i]);
        const auto reason = arrows.reasons.find({cycle[i], cycle[(i + 1) % cycle.size()]});
        if (reason == arrows.reasons.end()) continue;
        add_once(found.groups, reason->second.group);
        if (reason->second.witness) add_once(found.operations, *reason->second.witness);
    }
    return found;
}

bool would_disturb(const Problem& problem, const Group& group, const Operation& operation) {
    return std::any_of(group.held.begin(), group.held.end(), [&](std::size_t attribute) {
        const int need = operation.needs[attribute];
        if (need == any) return false;
        if (group.begun && problem.machines[operation.machine].start[attribute] == need) return false;
        return std::all_of(group.operations.begin(), group.operations.end(), [&](std::size_t own) {
            const int value = problem.operations[own].needs[attribute];
            return value != any && value != need;
        });
    });
}

struct Outsider {
    std::size_t operation = 0;
    std::size_t group = 0;
};

std::vector<Outsider> outsiders(const Problem& problem) {
    std::vector<Outsider> found;
    for (std::size_t g = 0; g < problem.groups.size(); ++g) {
        const Group& group = problem.groups[g];
        const std::size_t machine = problem.operations[group.operations.front()].machine;
        for (std::size_t i = 0; i < problem.operations.size(); ++i)
            if (problem.operations[i].machine == machine &&
                would_disturb(problem, group, problem.operations[i]))
                found.push_back({i, g});
    }
    return found;
}

// The arrows that follow for one outsider; whether there were any that are new.
bool add_arrows(const Problem& problem, const std::vector<OptionOf>& options, const std::vector<Bits>& before,
                Outsider outsider, Arrows& arrows) {
    const Group& group = problem.groups[outsider.group];
    const std::size_t i = outsider.operation;
    const auto& own = group.operations;
    if (exclude_each_other(options[i], options[own.front()])) return false;
    const auto member_before =
        std::find_if(own.begin(), own.end(), [&](std::size_t m) { return has(before[i], m); });
    const auto member_after =
        std::find_if(own.begin(), own.end(), [&](std::size_t m) { return has(before[m], i); });
    bool added = false;
    const auto add = [&](std::size_t from, std::size_t to, std::optional<std::size_t> witness) {
        if (has(before[to], from)) return;
        if (arrows.reasons.insert({{from, to}, {outsider.group, witness}}).second)
            arrows.next[from].push_back(to);
        added = true;
    };
    if (group.begun || member_before != own.end())
        for (const std::size_t m : own)
            add(m, i, member_before != own.end() ? std::optional(*member_before) : std::nullopt);
    if (member_after != own.end())
        for (const std::size_t m : own) add(i, m, *member_after);
    return added;
}

}  // namespace

std::variant<std::vector<Bits>, Contradiction> all_before(const Problem& problem) {
    Arrows arrows;
    arrows.next.resize(problem.operations.size());
    for (const Precedence& precedence : problem.precedences)
        arrows.next[precedence.first].push_back(precedence.then);
    const std::vector<Outsider> watched = outsiders(problem);
    const std::vector<OptionOf> options = options_of(problem);
    for (;;) {
        std::vector<Bits> before = close(problem, arrows.next);
        for (std::size_t i = 0; i < before.size(); ++i)
            if (has(before[i], i) && options[i].choice == no_choice)
                return contradiction(among_sure(std::move(arrows), options));
        bool added = false;
        for (const Outsider& outsider : watched)
            added = add_arrows(problem, options, before, outsider, arrows) || added;
        if (!added) return before;
    }
}

}  // namespace kw::order
