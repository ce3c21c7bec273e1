#include "order/bound.h"

#include <algorithm>

namespace kw::order {

namespace {

// Whether some of `asked` is not done and is not of the label's own work.
bool waits_for_other(const View& view, Label label, const Bits& before, const Bits& done) {
    const Bits& own = view.asked_by[label];
    for (std::size_t w = 0; w < done.size(); ++w)
        if (before[w] & view.asked[w] & ~own[w] & ~done[w]) return true;
    return false;
}

}  // namespace

Bound::Bound(const Model& model) : model_(model) {
    const Bits nothing(model.words(), 0);
    for (const View& view : model.views) {
        Extra extra{std::vector<bool>(view.weight.size(), false), {}, nothing};
        if (model.count <= Tangle::most_operations) {
            for (const auto& labels : tangled_labels(view, model.before)) {
                extra.tangles.emplace_back(view, model.before, labels);
                for (const Label label : labels) extra.tangled[label] = true;
            }
        }
        for (std::size_t label = 1; label < view.weight.size(); ++label)
            each(view.asked_by[label], [&](std::size_t i) {
                if (waits_for_other(view, static_cast<Label>(label), model.before[i], nothing)) put(extra.waits_for_others, i);
            });
        extras_.push_back(std::move(extra));
    }
}

std::int64_t Bound::once_each_s(std::size_t view, const Bits& done) const {
    std::int64_t sum = 0;
    const View& labels = model_.views[view];
    for (std::size_t label = 1; label < labels.weight.size(); ++label)
        if (!extras_[view].tangled[label] && any_left(labels.asked_by[label], done)) sum += labels.weight[label];
    return sum;
}

// Whether work that asks for the label, which stands, must wait for another label's.
bool Bound::must_return(std::size_t view, const Bits& done, Label label) const {
    const View& labels = model_.views[view];
    const Bits& asked = labels.asked_by[label];
    const Bits& waiting = extras_[view].waits_for_others;
    for (std::size_t w = 0; w < done.size(); ++w)
        for (Word word = asked[w] & waiting[w] & ~done[w]; word != 0; word &= word - 1)
            if (waits_for_other(labels, label, model_.before[w * 64 + lowest(word)], done)) return true;
    return false;
}

std::int64_t Bound::for_label_s(std::size_t view, const Bits& done, Label label) {
    std::int64_t sum = 0;
    for (Tangle& tangle : extras_[view].tangles) sum += tangle.least_s(done, label);
    const bool is_saved = !extras_[view].tangled[label] && any_left(model_.views[view].asked_by[label], done) &&
                          !must_return(view, done, label);
    return is_saved ? sum - model_.views[view].weight[label] : sum;
}

std::int64_t Bound::standing_s(std::size_t view, const Bits& done, Label label) {
    if (view != model_.place() || label != model_.nowhere()) return for_label_s(view, done, label);
    std::int64_t best = for_label_s(view, done, 0);
    for (std::size_t m = 0; m < model_.shops.size(); ++m)
        if (any_left(model_.views[view].asked_by[m + 1], done))
            best = std::min(best, for_label_s(view, done, static_cast<Label>(m + 1)));
    return best;
}

Bound::Floor Bound::floor(const State& state) {
    Floor floor;
    for (std::size_t v = 0; v < model_.views.size(); ++v) {
        floor.standing_s.push_back(standing_s(v, state.done, state.label[v]));
        floor.total_s += floor.standing_s.back() + once_each_s(v, state.done);
    }
    return floor;
}

// What hangs on how the view stands after the move, less what need not be set any more: the move is done in `state` already.
std::int64_t Bound::view_after_s(const State& state, const Move& move, std::size_t view) {
    const Label asked = model_.label_in(view, move.operation);
    const View& labels = model_.views[view];
    const bool is_place = view == model_.place();
    Label label = asked;
    if (asked == 0) {
        const std::size_t attribute = view - model_.shops[model_.works[move.operation].machine].first_view;
        label = !is_place && (move.touched >> attribute & 1) ? Label{0} : state.label[view];
    }
    const bool is_last = asked != 0 && !extras_[view].tangled[asked] && !any_left(labels.asked_by[asked], state.done);
    return standing_s(view, state.done, label) - (is_last ? labels.weight[asked] : 0);
}

std::int64_t Bound::after_s(State& state, const Move& move, const Floor& before) {
    const Shop& shop = model_.shops[model_.works[move.operation].machine];
    std::int64_t total = before.total_s;
    put(state.done, move.operation);
    for (std::size_t v = shop.first_view; v < shop.first_view + shop.attributes; ++v)
        total += view_after_s(state, move, v) - before.standing_s[v];
    const std::size_t place = model_.place();
    total += view_after_s(state, move, place) - before.standing_s[place];
    drop(state.done, move.operation);
    return total;
}

}  // namespace kw::order
