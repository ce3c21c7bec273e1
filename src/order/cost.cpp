#include "order/cost.h"

#include <algorithm>
#include <cassert>
#include <numeric>

#include "order/choices.h"

namespace kw::order {

namespace {

struct Stand {
    int value = unknown;
    bool lost = false;  // invalidated since it was set
};

using Stands = std::vector<Stand>;

// Which attributes hang on those in `changed`, over any number of links.
std::vector<bool> hanging_on(const Machine& machine, const std::vector<bool>& changed) {
    std::vector<bool> hangs(changed.size(), false);
    std::vector<std::size_t> todo;
    for (std::size_t a = 0; a < changed.size(); ++a)
        if (changed[a]) todo.push_back(a);
    while (!todo.empty()) {
        const std::size_t a = todo.back();
        todo.pop_back();
        for (const std::size_t b : machine.attributes[a].invalidates) {
            if (hangs[b]) continue;
            hangs[b] = true;
            todo.push_back(b);
        }
    }
    return hangs;
}

struct Setting {
    std::vector<Change> changes;
    std::vector<bool> touched;  // changed or invalidated
};

Setting set_up(const Machine& machine, const std::vector<int>& needs, Stands& stands) {
    std::vector<bool> differs(needs.size());
    for (std::size_t a = 0; a < needs.size(); ++a)
        differs[a] = needs[a] != any && (stands[a].lost || stands[a].value != needs[a]);
    const std::vector<bool> hangs = hanging_on(machine, differs);
    Setting setting;
    setting.touched.resize(needs.size());
    for (std::size_t a = 0; a < needs.size(); ++a) {
        setting.touched[a] = differs[a] || hangs[a];
        if (needs[a] == any) stands[a].lost = stands[a].lost || hangs[a];
        if (needs[a] == any || !setting.touched[a]) continue;
        const Stand from = stands[a];
        const Cause cause = from.value == unknown    ? Cause::not_known
                            : from.value != needs[a] ? Cause::differs
                                                     : Cause::invalidated;
        const int known = from.lost || hangs[a] ? unknown : from.value;
        setting.changes.push_back(
            {a, from.value, needs[a], cause, machine.attributes[a].setting_s(known, needs[a])});
        stands[a] = {needs[a], false};
    }
    return setting;
}

// The machines while an order is run.
class Run {
public:
    explicit Run(const Problem& problem) : problem_(problem), at_(problem.start_machine) {
        for (const Machine& machine : problem.machines) {
            Stands stands;
            for (const int value : machine.start) stands.push_back({value, false});
            stands_.push_back(std::move(stands));
        }
    }

    Step step(std::size_t index, std::vector<bool>* touched = nullptr) {
        assert(index < problem_.operations.size());
        const Operation& operation = problem_.operations[index];
        const Machine& machine = problem_.machines[operation.machine];
        Setting setting = set_up(machine, operation.needs, stands_[operation.machine]);
        const std::int64_t walk_s = at_ && *at_ != operation.machine ? machine.walk_s : 0;
        at_ = operation.machine;
        if (touched) *touched = std::move(setting.touched);
        return {index, walk_s, std::move(setting.changes), operation.duration_s};
    }

    std::vector<std::vector<int>> left() const {
        std::vector<std::vector<int>> values;
        for (const Stands& stands : stands_) {
            values.emplace_back();
            for (const Stand& stand : stands) values.back().push_back(stand.lost ? unknown : stand.value);
        }
        return values;
    }

private:
    const Problem& problem_;
    std::optional<std::size_t> at_;
    std::vector<Stands> stands_;
};

constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

std::optional<Breach> not_each_once(const Problem& problem, const std::vector<std::size_t>& order) {
    std::vector<bool> seen(problem.operations.size(), false);
    for (std::size_t i = 0; i < order.size(); ++i) {
        if (order[i] >= seen.size() || seen[order[i]]) return Breach{Rule::each_once, i, order[i]};
        seen[order[i]] = true;
    }
    const std::vector<OptionOf> options = options_of(problem);
    for (std::size_t i = 0; i < seen.size(); ++i)
        if (!seen[i] && options[i].choice == no_choice) return Breach{Rule::each_once, order.size(), i};
    for (std::size_t c = 0; c < problem.choices.size(); ++c) {
        std::size_t begun = 0, whole = 0;
        for (const auto& option : problem.choices[c].options) {
            const auto is_in = [&](std::size_t i) { return seen[i]; };
            begun += std::any_of(option.begin(), option.end(), is_in);
            whole += std::all_of(option.begin(), option.end(), is_in);
        }
        if (begun != 1 || whole != 1) return Breach{Rule::choice, order.size(), c};
    }
    return std::nullopt;
}

std::optional<Breach> out_of_sequence(const Problem& problem, const std::vector<std::size_t>& position) {
    std::optional<Breach> first;
    for (std::size_t i = 0; i < problem.precedences.size(); ++i) {
        const auto& [before, then] = problem.precedences[i];
        if (position[before] == nowhere || position[then] == nowhere || position[before] < position[then])
            continue;
        if (!first || position[then] < first->position) first = Breach{Rule::precedence, position[then], i};
    }
    return first;
}

struct Window {
    std::size_t machine = 0;
    std::size_t from = 0;  // positions of its first and its last operation
    std::size_t to = 0;
};

Window window_of(const Problem& problem, const Group& group, const std::vector<std::size_t>& position) {
    Window window{problem.operations[group.operations.front()].machine, nowhere, 0};
    for (const std::size_t operation : group.operations) {
        if (position[operation] == nowhere) continue;
        window.from = std::min(window.from, position[operation]);
        window.to = std::max(window.to, position[operation]);
    }
    if (group.begun) window.from = 0;
    return window;
}

bool disturbs(const Group& group, std::size_t operation, const std::vector<bool>& touched) {
    const auto& own = group.operations;
    if (std::find(own.begin(), own.end(), operation) != own.end()) return false;
    return std::any_of(group.held.begin(), group.held.end(),
                       [&touched](std::size_t a) { return touched[a]; });
}

std::optional<Breach> disturbed(const Problem& problem, const std::vector<std::size_t>& order,
                                const std::vector<std::size_t>& position) {
    std::vector<Window> windows;
    for (const Group& group : problem.groups) windows.push_back(window_of(problem, group, position));
    Run run(problem);
    std::vector<bool> touched;
    for (std::size_t i = 0; i < order.size(); ++i) {
        run.step(order[i], &touched);
        for (std::size_t g = 0; g < windows.size(); ++g) {
            const Window& window = windows[g];
            if (window.machine != problem.operations[order[i]].machine || i < window.from || i > window.to)
                continue;
            if (disturbs(problem.groups[g], order[i], touched)) return Breach{Rule::group, i, g};
        }
    }
    return std::nullopt;
}

}  // namespace

std::int64_t Step::setting_s() const {
    return std::accumulate(changes.begin(), changes.end(), std::int64_t{0},
                           [](std::int64_t sum, const Change& change) { return sum + change.seconds; });
}

Price price(const Problem& problem, const std::vector<std::size_t>& order) {
    Run run(problem);
    Price price;
    for (const std::size_t operation : order) {
        price.steps.push_back(run.step(operation));
        price.seconds += price.steps.back().seconds();
    }
    price.left = run.left();
    return price;
}

std::optional<Breach> first_breach(const Problem& problem, const std::vector<std::size_t>& order) {
    if (auto breach = not_each_once(problem, order)) return breach;
    std::vector<std::size_t> position(problem.operations.size(), nowhere);
    for (std::size_t i = 0; i < order.size(); ++i) position[order[i]] = i;
    const auto sequence = out_of_sequence(problem, position);
    const auto group = disturbed(problem, order, position);
    if (sequence && (!group || sequence->position <= group->position)) return sequence;
    return group;
}

}  // namespace kw::order
