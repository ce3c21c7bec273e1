#include "order/solve.h"

#include <algorithm>
#include <cassert>

#include "order/cost.h"
#include "order/improve.h"
#include "order/path_search.h"
#include "order/precedence.h"
#include "order/search.h"

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
    if (search.best_s != no_order && !search.stopped)
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
    std::vector<std::size_t> culprits;
    each(operations, [&](std::size_t i) { culprits.push_back(i); });
    std::sort(groups.begin(), groups.end());
    return impossible(std::move(culprits), std::move(groups), search.nodes);
}

Result solve(const Problem& problem, const Model& model, const Options& options) {
    Search search(model, options);
    std::vector<std::size_t> at_once;
    const State start = search.expander.start(&at_once);
    search.bound_s = search.expander.bound_s(start);
    const bool is_settled = at_once.size() == model.count || search_all(search, model.count);
    if (at_once.size() == model.count) search.note_order({});
    if (is_settled && search.best_s == no_order) return dead_end(model, search);
    Result result;
    result.status = is_settled || search.best_s == search.bound_s ? Status::proved : Status::limited;
    result.nodes = search.nodes;
    result.order = search.order;
    if (result.status == Status::proved) search.bound_s = search.best_s;
    result.lower_bound_seconds = search.bound_s + model.duration_s;
    if (search.best_s != no_order) result.seconds = search.best_s + model.duration_s;
    assert(search.best_s == no_order || price(problem, result.order).seconds == result.seconds);
    return result;
}

}  // namespace

Result solve(const Problem& problem, const Options& options) {
    assert(!validate(problem));
    std::variant<std::vector<Bits>, Contradiction> before = all_before(problem);
    if (auto* found = std::get_if<Contradiction>(&before))
        return impossible(std::move(found->operations), std::move(found->groups), 0);
    return solve(problem, model_of(problem, std::get<std::vector<Bits>>(std::move(before))), options);
}

}  // namespace kw::order
