#include "order/expand.h"

#include <algorithm>

namespace kw::order {

State Expander::start(std::vector<std::size_t>* trail) const {
    State state = start_of(model_);
    settle(state, trail);
    return state;
}

void Expander::go(const Move& move, State& state, std::vector<std::size_t>* trail) const {
    take(model_, move, state);
    if (trail) trail->push_back(move.operation);
    settle(state, trail);
}

bool Expander::begins_a_group(const State& state, std::size_t operation) const {
    const auto& groups = model_.works[operation].groups;
    return std::any_of(groups.begin(), groups.end(),
                       [&](std::size_t g) { return is_untouched(model_, state, g); });
}

bool Expander::is_patient(const State& state, std::size_t operation) const {
    const auto& groups = model_.works[operation].groups;
    return std::all_of(groups.begin(), groups.end(), [&](std::size_t g) {
        return !is_untouched(model_, state, g) || is_subset(model_.groups[g].wait_for, state.done);
    });
}

void Expander::settle(State& state, std::vector<std::size_t>* trail) const {
    const Label here = state.label.back();
    if (here == 0 || here == model_.nowhere() || !model_.shops[here - 1U].orderly) return;
    const Shop& shop = model_.shops[here - 1U];
    Bits fits = model_.views.back().asked_by[here];
    for (std::size_t w = 0; w < fits.size(); ++w) {
        fits[w] &= ~state.done[w];
        for (std::size_t v = shop.first_view; v < shop.first_view + shop.attributes; ++v)
            fits[w] &= model_.views[v].asked_by[state.label[v]][w] | ~model_.views[v].asked[w];
    }
    for (bool progress = true; progress;) {
        progress = false;
        each_left(fits, state.done, [&](std::size_t operation) {
            if (!is_ready(model_, state, operation) || begins_a_group(state, operation)) return;
            take(model_, Move{operation, 0, 0, 0}, state);
            if (trail) trail->push_back(operation);
            progress = true;
        });
    }
}

void Expander::collect_moves(const State& state) {
    moves_.clear();
    first_move_.clear();
    for (std::size_t m = 0; m < model_.shops.size(); ++m) {
        first_move_.push_back(moves_.size());
        const std::vector<std::size_t> open = open_groups(model_, state, m);
        each_left(model_.views.back().asked_by[m + 1], state.done, [&](std::size_t operation) {
            if (!is_ready(model_, state, operation)) return;
            const Move move = move_of(model_, state.label, operation);
            if (!disturbs(model_, open, move)) moves_.push_back(move);
        });
    }
    first_move_.push_back(moves_.size());
}

bool Expander::begins_no_other_group(const State& state, std::size_t w, std::size_t v) const {
    const auto& groups = model_.works[w].groups;
    return std::all_of(groups.begin(), groups.end(), [&](std::size_t g) {
        return has(model_.groups[g].operations, v) || !is_untouched(model_, state, g);
    });
}

bool Expander::lies_on_the_way(const State& state, const Move& w, const Move& v) const {
    if (w.changed & ~v.changed) return false;
    const auto& of_w = model_.works[w.operation].label;
    const auto& of_v = model_.works[v.operation].label;
    for (std::size_t a = 0; a < of_w.size(); ++a)
        if ((w.changed >> a & 1) && of_w[a] != of_v[a]) return false;
    return begins_no_other_group(state, w.operation, v.operation);
}

bool Expander::can_be_skipped(const State& state, const Move& v) const {
    const std::size_t machine = model_.works[v.operation].machine;
    if (!model_.shops[machine].orderly) return false;
    for (std::size_t i = first_move_[machine]; i < first_move_[machine + 1]; ++i) {
        const Move& w = moves_[i];
        if (w.operation == v.operation || !lies_on_the_way(state, w, v)) continue;
        if (w.operation < v.operation || !lies_on_the_way(state, v, w)) return true;
    }
    return false;
}

const std::vector<Child>& Expander::children(State& state) {
    collect_moves(state);
    children_.clear();
    const Bound::Floor floor = bound_.floor(state);
    for (const Move& move : moves_)
        if (!can_be_skipped(state, move))
            children_.push_back({move, state.spent_s + move.cost_s + bound_.after_s(state, move, floor)});
    std::sort(children_.begin(), children_.end(),
              [](const Child& a, const Child& b) { return a.move.operation < b.move.operation; });
    return children_;
}

}  // namespace kw::order
