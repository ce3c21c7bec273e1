#include "order/bound.h"

#include <algorithm>

namespace kw::order {

namespace {

// Whether an operation of the label, with `before` before it, must wait for work of another label that is not done.
bool waits_for_other(const View& view, Label label, const Bits& before, const Bits& done) {
    const Bits& own = view.asked_by[label];
    for (std::size_t w = 0; w < done.size(); ++w)
        if (before[w] & view.asked[w] & ~own[w] & ~done[w]) return true;
    return false;
}

std::vector<Bits> after_of(const std::vector<Bits>& before) {
    std::vector<Bits> after(before.size(), Bits(words_for(before.size()), 0));
    for (std::size_t i = 0; i < before.size(); ++i)
        each(before[i], [&](std::size_t first) { put(after[first], i); });
    return after;
}

// The operations of a label by the length of the chains that they start.
class Chains {
public:
    Chains(const Model& model, const View& view, const std::vector<Bits>& after)
        : model_(model), view_(view), after_(after), length_(model.count, 0) {}

    std::vector<Bits> of(Label label) {
        std::vector<std::size_t> operations;
        each(view_.asked_by[label], [&](std::size_t i) { operations.push_back(i); });
        std::vector<std::size_t> last_first = operations;
        std::stable_sort(last_first.begin(), last_first.end(), [this](std::size_t a, std::size_t b) {
            return count(after_[a]) < count(after_[b]);
        });
        std::vector<Bits> chains;
        for (const std::size_t i : last_first) {
            length_[i] = 1;
            each_common(after_[i], view_.asked_by[label], [&](std::size_t later) {
                length_[i] = std::max(length_[i], length_[later] + (leads_away(label, i, later) ? 1 : 0));
            });
            if (chains.size() < length_[i]) chains.resize(length_[i], Bits(model_.words(), 0));
            for (std::size_t length = 0; length < length_[i]; ++length) put(chains[length], i);
        }
        return chains;
    }

private:
    template <class Use>
    static void each_common(const Bits& a, const Bits& b, Use use) {
        for (std::size_t w = 0; w < a.size(); ++w) each_in(a[w] & b[w], w * 64, use);
    }

    bool leads_away(Label label, std::size_t from, std::size_t to) const {
        const Bits& own = view_.asked_by[label];
        for (std::size_t w = 0; w < own.size(); ++w)
            if (after_[from][w] & model_.before[to][w] & view_.asked[w] & ~own[w]) return true;
        return false;
    }

    const Model& model_;
    const View& view_;
    const std::vector<Bits>& after_;
    std::vector<std::size_t> length_;
};

}  // namespace

Bound::Bound(const Model& model) : model_(model) {
    const Bits nothing(model.words(), 0);
    const std::vector<Bits> after = after_of(model.before);
    for (const View& view : model.views) {
        Extra extra{{}, std::vector<std::vector<Bits>>(view.weight.size()), nothing};
        Chains chains(model, view, after);
        for (std::size_t l = 1; l < view.weight.size(); ++l) {
            const auto label = static_cast<Label>(l);
            extra.chains[l] = chains.of(label);
            each(view.asked_by[l], [&](std::size_t i) {
                if (waits_for_other(view, label, model.before[i], nothing)) put(extra.waiting, i);
            });
        }
        if (model.count <= Tangle::most_operations) {
            for (const auto& labels : tangled_labels(view, model.before)) {
                extra.tangles.emplace_back(view, model.before, labels);
                for (const Label label : labels) extra.chains[label].clear();
            }
        }
        extras_.push_back(std::move(extra));
    }
}

// Setting the label as often as its chains ask for, as if another stood.
std::int64_t Bound::visits_s(std::size_t view, Label label, const Bits& done) const {
    std::int64_t sum = 0;
    for (const Bits& chain : extras_[view].chains[label]) {
        if (!any_left(chain, done)) break;
        sum += model_.views[view].weight[label];
    }
    return sum;
}

// What is saved because the label stands: one visit, if none of the longest chains starts with work that must wait for another label.
std::int64_t Bound::saved_s(std::size_t view, Label label, const Bits& done) const {
    const View& labels = model_.views[view];
    const Bits& waiting = extras_[view].waiting;
    const Bits* longest = nullptr;
    for (const Bits& chain : extras_[view].chains[label]) {
        if (!any_left(chain, done)) break;
        longest = &chain;
    }
    if (!longest) return 0;
    for (std::size_t w = 0; w < done.size(); ++w)
        for (Word word = (*longest)[w] & waiting[w] & ~done[w]; word != 0; word &= word - 1)
            if (waits_for_other(labels, label, model_.before[w * 64 + lowest(word)], done)) return 0;
    return labels.weight[label];
}

std::int64_t Bound::with_label_s(std::size_t view, Label label, const Bits& done) {
    std::int64_t sum = -saved_s(view, label, done);
    for (Tangle& tangle : extras_[view].tangles) sum += tangle.least_s(done, label);
    return sum;
}

std::int64_t Bound::standing_s(std::size_t view, Label label, const Bits& done) {
    std::int64_t best = with_label_s(view, label, done);
    if (view != model_.place() || label != model_.nowhere()) return best;
    for (std::size_t m = 0; m < model_.shops.size(); ++m)  // the first walk is free, wherever it goes
        best = std::min(best, with_label_s(view, static_cast<Label>(m + 1), done));
    return best;
}

Bound::Floor Bound::floor(const State& state) {
    Floor floor;
    for (std::size_t v = 0; v < model_.views.size(); ++v) {
        floor.standing_s.push_back(standing_s(v, state.label[v], state.done));
        floor.total_s += floor.standing_s.back();
        for (std::size_t label = 1; label < model_.views[v].weight.size(); ++label)
            floor.total_s += visits_s(v, static_cast<Label>(label), state.done);
    }
    return floor;
}

// How the view's part changes by the move, but for what hung on how it stood before.
std::int64_t Bound::step_s(State& state, const Move& move, std::size_t view) {
    const Work& work = model_.works[move.operation];
    const bool is_place = view == model_.place();
    const std::size_t attribute = is_place ? 0 : view - model_.shops[work.machine].first_view;
    const Label asked = is_place ? static_cast<Label>(work.machine + 1) : work.label[attribute];
    if (asked == 0) {
        const bool is_lost = (move.touched >> attribute & 1) != 0;
        put(state.done, move.operation);
        const std::int64_t standing = standing_s(view, is_lost ? Label{0} : state.label[view], state.done);
        drop(state.done, move.operation);
        return standing;
    }
    const std::int64_t before = visits_s(view, asked, state.done);
    put(state.done, move.operation);
    const std::int64_t step =
        visits_s(view, asked, state.done) - before + standing_s(view, asked, state.done);
    drop(state.done, move.operation);
    return step;
}

std::int64_t Bound::after_s(State& state, const Move& move, const Floor& before) {
    const Shop& shop = model_.shops[model_.works[move.operation].machine];
    const std::size_t place = model_.place();
    std::int64_t total = before.total_s + step_s(state, move, place) - before.standing_s[place];
    for (std::size_t v = shop.first_view; v < shop.first_view + shop.attributes; ++v)
        total += step_s(state, move, v) - before.standing_s[v];
    return total;
}

}  // namespace kw::order
