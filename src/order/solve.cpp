#include "order/solve.h"

#include <algorithm>
#include <cassert>

#include "order/cost.h"
#include "order/improve.h"
#include "order/path_search.h"
#include "order/precedence.h"
#include "order/search.h"
#include "order/sets_of_options.h"

namespace kw::order {

namespace {

// Best-first search remembers every partial order: beyond this many operations it would end nowhere.
constexpr std::size_t most_for_best_first = 128;

// A layer of the beam costs width x work that is ready, and there are as many layers as operations.
constexpr std::size_t beam_budget = 1 << 22;

// True if that settled it.
bool search_all(Search& search, std::size_t count) {
    if (const std::optional<Path> path = path_of(search.expander.model())) return search_path(search, *path);
    if (search_beam(search, {1, false, false})) return true;
    if (search.best_s == no_order) search_beam(search, {1, true, false});
    const std::size_t width =
        std::clamp(beam_budget / (count * count), std::size_t{1}, search.options.beam_width);
    if (width > 1 && search_beam(search, {width, false, true})) return true;
    if (!search.order.empty() && !search.stopped)
        search.note_better(improve(search.expander.model(), search.order, 20'000'000));
    return count <= most_for_best_first && !search.stopped && search_best_first(search);
}

Result impossible(std::vector<std::size_t> operations, std::vector<std::size_t> groups, std::int64_t nodes) {
    Result result;
    result.status = Status::impossible;
    result.culprits = std::move(operations);
    result.culprit_groups = std::move(groups);
    result.nodes = nodes;
    return result;
}

// At the furthest that any order came: what was ready but would have disturbed a group, and what those groups still waited for.
Result dead_end(const Model& model, const Search& search) {
    Bits operations(model.words(), 0);
    std::vector<std::size_t> groups;
    for (std::size_t i = 0; i < model.count; ++i) {
        if (!is_ready(model, search.furthest, i)) continue;
        put(operations, i);
        const Move move = move_of(model, search.furthest.label, i);
        for (const std::size_t g : open_groups(model, search.furthest, model.works[i].machine)) {
            if (!disturbs(model, {g}, move)) continue;
            if (std::find(groups.begin(), groups.end(), g) == groups.end()) groups.push_back(g);
            each_left(model.groups[g].operations, search.furthest.done,
                      [&](std::size_t own) { put(operations, own); });
        }
    }
    // Or work that waits for itself, whichever options are decided on.
    if (count(operations) == 0)
        for (std::size_t i = 0; i < model.count; ++i)
            if (!has(search.furthest.done, i)) put(operations, i);
    std::vector<std::size_t> culprits;
    each(operations, [&](std::size_t i) { culprits.push_back(i); });
    std::sort(groups.begin(), groups.end());
    return impossible(std::move(culprits), std::move(groups), search.nodes);
}

std::vector<std::size_t> picked_in(const Model& model, const std::vector<std::size_t>& order) {
    std::vector<std::size_t> picked(order.empty() ? 0 : model.choices.size(), 0);
    for (const std::size_t operation : order) {
        const OptionOf& option = model.works[operation].option;
        if (option.choice != no_choice) picked[option.choice] = option.option;
    }
    return picked;
}

// Orders that take `below_s` or more do not interest.
Result solve(const Problem& problem, const Model& model, const Options& options, std::int64_t below_s) {
    Search search(model, options);
    if (below_s != no_order) search.best_s = std::max<std::int64_t>(0, below_s - model.duration_s);
    std::vector<std::size_t> at_once;
    const State start = search.expander.start(&at_once);
    search.bound_s = search.expander.bound_s(start);
    const bool all_at_once = count(start.done) == model.count;
    const bool is_settled = all_at_once || search_all(search, model.count);
    if (all_at_once && start.spent_s < search.best_s) search.note_order({});
    if (is_settled && search.best_s == no_order) return dead_end(model, search);
    Result result;
    result.status = is_settled || search.best_s == search.bound_s ? Status::proved : Status::limited;
    result.nodes = search.nodes;
    result.order = search.order;
    result.picked = picked_in(model, result.order);
    if (result.status == Status::proved) search.bound_s = search.best_s;
    result.lower_bound_seconds = search.bound_s + model.duration_s;
    if (!result.order.empty()) result.seconds = search.best_s + model.duration_s;
    assert(result.order.empty() || price(problem, result.order).seconds == result.seconds);
    return result;
}

}  // namespace

Result solve_below(const Problem& problem, const Options& options, std::int64_t below_s) {
    std::variant<std::vector<Bits>, Contradiction> before = all_before(problem);
    if (auto* found = std::get_if<Contradiction>(&before))
        return impossible(std::move(found->operations), std::move(found->groups), 0);
    return solve(problem, model_of(problem, std::get<std::vector<Bits>>(std::move(before))), options,
                 below_s);
}

Result solve(const Problem& problem, const Options& options) {
    assert(!validate(problem));
    if (!problem.choices.empty() && sets_of_options(problem) <= most_sets_to_solve)
        return solve_each_set(problem, options);
    return solve_below(problem, options, no_order);
}

}  // namespace kw::order
