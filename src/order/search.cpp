#include "order/search.h"

namespace kw::order {

namespace {

constexpr std::int64_t nodes_between_questions = 256;

}  // namespace

Search::Search(const Model& model, const Options& limits)
    : expander(model), options(limits), furthest(start_of(model)) {
    if (limits.time_limit) deadline_ = std::chrono::steady_clock::now() + *limits.time_limit;
}

bool Search::is_late() const { return deadline_ && std::chrono::steady_clock::now() >= *deadline_; }

void Search::ask_to_stop() {
    if (stopped || nodes - asked_at_ < nodes_between_questions) return;
    if (!deadline_ && (!options.stop || best_s == no_order)) return;
    asked_at_ = nodes;
    stopped = is_late();
    if (stopped || !options.stop || best_s == no_order) return;
    const std::int64_t duration_s = expander.model().duration_s;
    stopped = options.stop({best_s + duration_s, bound_s + duration_s, nodes});
}

void Search::note_order(const std::vector<std::size_t>& moves) {
    order.clear();
    State state = expander.start(&order);
    for (const std::size_t number : moves)
        expander.go(move_from(expander.model(), state, number), state, &order);
    assert(count(state.done) == expander.model().count);
    best_s = state.spent_s;
}

void Search::note_better(std::vector<std::size_t> whole) {
    State state = start_of(expander.model());
    for (const std::size_t operation : whole)
        take(expander.model(), move_from(expander.model(), state, operation), state);
    assert(state.spent_s <= best_s);
    order = std::move(whole);
    best_s = state.spent_s;
}

std::optional<Node> Search::carry_on(const Nodes& known, std::size_t index, const Child& child,
                                     State& state) {
    expander.go(child.move, state);
    ++nodes;
    const std::size_t done = count(state.done);
    if (done < expander.model().count)
        return Node{index,         child.move.operation,
                    state.spent_s, std::max(child.bound_s, known[index].bound_s),
                    done,          true};
    if (state.spent_s < best_s) note_order(known.moves_to(index, child.move.operation));
    return std::nullopt;
}

void Search::note_dead_end(const State& state, std::size_t done) {
    if (done < furthest_done_) return;
    furthest_done_ = done;
    furthest = state;
}

}  // namespace kw::order
