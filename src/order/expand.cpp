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
    if (trail && !decided_by(model_, move.operation)) trail->push_back(move.operation);
    settle(state, trail);
}

bool Expander::begins_a_group(const State& state, std::size_t operation) const {
    const auto& groups = model_.works[operation].groups;
    return std::any_of(groups.begin(), groups.end(),
                       [&](std::size_t g) { return is_untouched(model_, state, g); });
}

bool Expander::is_patient(const State& state, std::size_t operation) const {
    if (decided_by(model_, operation)) return true;
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
            if (!is_ready(model_, state, operation) || begins_a_group(state, operation) ||
                is_open(model_, state, operation))
                return;
            take(model_, Move{operation, 0, 0, 0}, state);
            if (trail) trail->push_back(operation);
            progress = true;
        });
    }
}

void Expander::collect_moves(const State& state) {
    moves_.clear();
    deciding_.clear();
    first_move_.clear();
    for (std::size_t m = 0; m < model_.shops.size(); ++m) {
        first_move_.push_back(moves_.size());
        const std::vector<std::size_t> open = open_groups(model_, state, m);
        each_left(model_.views.back().asked_by[m + 1], state.done, [&](std::size_t operation) {
            if (!is_ready(model_, state, operation)) return note_waiting(state, operation);
            const Move move = move_from(model_, state, operation);
            if (!disturbs(model_, open, move)) moves_.push_back(move);
        });
    }
    first_move_.push_back(moves_.size());
    std::sort(deciding_.begin(), deciding_.end());
    deciding_.erase(std::unique(deciding_.begin(), deciding_.end()), deciding_.end());
    for (const std::size_t number : deciding_) moves_.push_back(move_from(model_, state, number));
}

// Where it waits for nothing but work that may be left out, each option that leaves some of that out is worth deciding on.
void Expander::note_waiting(const State& state, std::size_t operation) {
    if (model_.choices.empty() || has(model_.before[operation], operation)) return;
    bool all_open = true;
    each_left(model_.before[operation], state.done,
              [&](std::size_t first) { all_open = all_open && is_open(model_, state, first); });
    if (!all_open) return;
    each_left(model_.before[operation], state.done, [&](std::size_t first) {
        const std::size_t choice = model_.works[first].option.choice;
        const auto& ways = model_.choices[choice];
        for (std::size_t o = 0; o < ways.size(); ++o)
            if (!intersect(model_.before[operation], ways[o].operations))
                deciding_.push_back(deciding_move(model_, {choice, o}));
    });
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

// By what a move changes, and to what: moves that lie on the way to another change the same values, or fewer of them.
std::uint64_t Expander::key_of(const Move& move, Mask changed) const {
    const auto& labels = model_.works[move.operation].label;
    std::uint64_t key = changed;
    for (Mask left = changed; left != 0; left &= left - 1)
        key = (key ^ labels[lowest(left)]) * 0x9E3779B97F4A7C15U;
    return key;
}

// Groups the machine's moves by key; moves with equal keys are in the order of their numbers.
void Expander::sort_by_key(std::size_t machine) {
    keyed_.clear();
    masks_.clear();
    for (std::size_t i = first_move_[machine]; i < first_move_[machine + 1]; ++i) {
        keyed_.emplace_back(key_of(moves_[i], moves_[i].changed), i);
        if (std::find(masks_.begin(), masks_.end(), moves_[i].changed) == masks_.end())
            masks_.push_back(moves_[i].changed);
    }
    std::sort(keyed_.begin(), keyed_.end());
}

bool Expander::can_be_skipped(const State& state, const Move& v) const {
    return std::any_of(masks_.begin(), masks_.end(), [&](Mask changed) {
        if (changed & ~v.changed) return false;
        const std::uint64_t key = key_of(v, changed);
        auto at = std::lower_bound(keyed_.begin(), keyed_.end(), std::pair(key, std::size_t{0}));
        for (; at != keyed_.end() && at->first == key; ++at)
            if (goes_before(state, moves_[at->second], v)) return true;
        return false;
    });
}

bool Expander::goes_before(const State& state, const Move& w, const Move& v) const {
    if (w.operation == v.operation || !lies_on_the_way(state, w, v)) return false;
    const OptionOf& option = model_.works[w.operation].option;
    if (is_open(model_, state, w.operation) && option != model_.works[v.operation].option) return false;
    return w.operation < v.operation || !lies_on_the_way(state, v, w);
}

// Leaves the moves that must be tried.
void Expander::leave_out(const State& state) {
    worth_trying_.clear();
    for (std::size_t m = 0; m + 1 < first_move_.size(); ++m) {
        if (model_.shops[m].orderly) sort_by_key(m);
        for (std::size_t i = first_move_[m]; i < first_move_[m + 1]; ++i)
            if (!model_.shops[m].orderly || !can_be_skipped(state, moves_[i]))
                worth_trying_.push_back(moves_[i]);
    }
    for (std::size_t i = first_move_.back(); i < moves_.size(); ++i) worth_trying_.push_back(moves_[i]);
}

void Expander::keep_cheapest(std::size_t most) {
    left_out_ = worth_trying_.size() - std::min(most, worth_trying_.size());
    if (left_out_ == 0) return;
    std::stable_sort(worth_trying_.begin(), worth_trying_.end(),
                     [](const Move& a, const Move& b) { return a.cost_s < b.cost_s; });
    worth_trying_.resize(most);
}

bool Expander::decides(const State& state, const Move& move) const {
    return decided_by(model_, move.operation) || is_open(model_, state, move.operation);
}

std::int64_t Expander::bound_after_deciding_s(const State& state, const Move& move) {
    State after = state;
    take(model_, move, after);
    return bound_s(after);
}

const std::vector<Child>& Expander::children(const State& state, std::size_t most) {
    collect_moves(state);
    leave_out(state);
    keep_cheapest(most);
    children_.clear();
    // Those that decide first: the floor of the state itself must be the last one that is asked for.
    for (const Move& move : worth_trying_)
        if (decides(state, move)) children_.push_back({move, bound_after_deciding_s(state, move)});
    const Bound::Floor floor = bound_.floor(state);
    for (const Move& move : worth_trying_)
        if (!decides(state, move))
            children_.push_back({move, state.spent_s + move.cost_s + bound_.after_s(state, move, floor)});
    std::sort(children_.begin(), children_.end(),
              [](const Child& a, const Child& b) { return a.move.operation < b.move.operation; });
    return children_;
}

}  // namespace kw::order
