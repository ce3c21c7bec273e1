#include "order/bound.h"

#include <algorithm>

namespace kw::order {

namespace {

constexpr std::size_t most_frames = 512;
constexpr std::size_t most_to_close = 256;  // operations: it takes their cube
constexpr std::int64_t never_s = std::numeric_limits<std::int64_t>::max() / 4;

// Whether an operation of the label, with `before` before it, must wait for work of another label that is not done.
bool waits_for_other(const View& view, Label label, const Parts& before, const Bits& done) {
    const Bits& own = view.asked_by[label];
    return std::any_of(before.begin(), before.end(), [&](const Part& part) {
        return (part.word & view.asked[part.at] & ~own[part.at] & ~done[part.at]) != 0;
    });
}

std::vector<Parts> parts_of_each(const std::vector<Bits>& sets) {
    std::vector<Parts> parts;
    for (const Bits& set : sets) parts.push_back(parts_of(set));
    return parts;
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
    Chains(const View& view, const std::vector<Parts>& before, const std::vector<Bits>& after)
        : view_(view), before_(before), after_(after), length_(before.size(), 0) {
        for (const Bits& later : after) later_.push_back(count(later));
    }

    std::vector<Parts> of(Label label) {
        std::vector<std::size_t> operations;
        each(view_.asked_by[label], [&](std::size_t i) { operations.push_back(i); });
        std::vector<std::size_t> last_first = operations;
        std::stable_sort(last_first.begin(), last_first.end(),
                         [this](std::size_t a, std::size_t b) { return later_[a] < later_[b]; });
        std::vector<Bits> chains;
        for (const std::size_t i : last_first) {
            length_[i] = 1;
            each_common(after_[i], view_.asked_by[label], [&](std::size_t later) {
                if (length_[later] >= length_[i])
                    length_[i] = length_[later] + (leads_away(label, i, later) ? 1 : 0);
            });
            if (chains.size() < length_[i]) chains.resize(length_[i], Bits(words_for(before_.size()), 0));
            for (std::size_t length = 0; length < length_[i]; ++length) put(chains[length], i);
        }
        return parts_of_each(chains);
    }

private:
    template <class Use>
    static void each_common(const Bits& a, const Bits& b, Use use) {
        for (std::size_t w = 0; w < a.size(); ++w) each_in(a[w] & b[w], w * 64, use);
    }

    bool leads_away(Label label, std::size_t from, std::size_t to) const {
        const Bits& own = view_.asked_by[label];
        return std::any_of(before_[to].begin(), before_[to].end(), [&](const Part& part) {
            return (part.word & after_[from][part.at] & view_.asked[part.at] & ~own[part.at]) != 0;
        });
    }

    const View& view_;
    const std::vector<Parts>& before_;
    const std::vector<Bits>& after_;
    std::vector<std::size_t> later_;  // by operation: how many come after
    std::vector<std::size_t> length_;
};

// Over any number of links, but for hidden work, of which nothing is left.
void close_without(const Bits& hidden, std::vector<Bits>& before) {
    for (std::size_t i = 0; i < before.size(); ++i)
        for (std::size_t w = 0; w < hidden.size(); ++w) before[i][w] &= has(hidden, i) ? 0 : ~hidden[w];
    if (before.size() > most_to_close) return;
    for (std::size_t via = 0; via < before.size(); ++via)
        for (Bits& all : before)
            if (has(all, via)) put_all(all, before[via]);
}

}  // namespace

Bound::Bound(const Model& model) : model_(model), done_(model.words(), 0) {}

Bound::Extra Bound::extra_of(const View& view, const std::vector<Bits>& before,
                             const std::vector<Parts>& parts, const std::vector<Bits>& after) const {
    const Bits nothing(model_.words(), 0);
    Extra extra{{},
                std::vector<std::vector<Parts>>(view.weight.size()),
                nothing,
                std::vector<Seen>(view.weight.size())};
    Chains chains(view, parts, after);
    for (std::size_t l = 1; l < view.weight.size(); ++l) {
        const auto label = static_cast<Label>(l);
        extra.chains[l] = chains.of(label);
        each(view.asked_by[l], [&](std::size_t i) {
            if (waits_for_other(view, label, parts[i], nothing)) put(extra.waiting, i);
        });
    }
    if (model_.count > Tangle::most_operations) return extra;
    for (const auto& labels : tangled_labels(view, before)) {
        extra.tangles.emplace_back(view, before, labels);
        for (const Label label : labels) extra.chains[label].clear();
    }
    return extra;
}

Bound::Frame Bound::frame_without(const Bits& hidden) const {
    std::vector<Bits> before = model_.before;
    Frame frame{{}, {}, hidden, true};
    if (!model_.choices.empty()) {
        close_without(hidden, before);
        for (std::size_t i = 0; i < model_.count; ++i)
            if (has(before[i], i)) frame.is_possible = false;
        if (!frame.is_possible) return frame;
    }
    const std::vector<Bits> after = after_of(before);
    frame.before = parts_of_each(before);
    for (const View& view : model_.views) frame.extras.push_back(extra_of(view, before, frame.before, after));
    return frame;
}

// The frame of what is picked, and what in it is done or does not count.
void Bound::look_at(const State& state) {
    std::vector<std::uint8_t> key;
    for (std::size_t c = 0; c < model_.choices.size(); ++c) {
        const std::uint8_t picked = state.picked[c];
        const bool counts =
            picked < closed_choice && any_left(model_.choices[c][picked].operations, state.done);
        key.push_back(counts ? picked : closed_choice);
    }
    // With too many sets of options to look at each, the work of choices does not count.
    if (frames_.size() >= most_frames && !frames_.contains(key)) key.assign(key.size(), closed_choice);
    auto found = frames_.find(key);
    if (found == frames_.end()) {
        Bits hidden(model_.words(), 0);
        for (std::size_t c = 0; c < key.size(); ++c)
            for (std::size_t o = 0; o < model_.choices[c].size(); ++o)
                if (o != key[c]) put_all(hidden, model_.choices[c][o].operations);
        found = frames_.emplace(std::move(key), frame_without(hidden)).first;
    }
    frame_ = &found->second;
    done_ = state.done;
    put_all(done_, frame_->hidden);
}

std::int64_t Bound::open_choices_s(const State& state) const {
    std::int64_t sum = 0;
    for (std::size_t c = 0; c < model_.choices.size(); ++c) {
        if (state.picked[c] != open_choice) continue;
        const auto& ways = model_.choices[c];
        sum += std::min_element(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
                   return a.own_s < b.own_s;
               })->own_s;
    }
    return sum;
}

// Setting the label as often as its chains ask for, as if another stood.
std::int64_t Bound::visits_s(std::size_t view, Label label, const Bits& done) const {
    std::int64_t sum = 0;
    for (const Parts& chain : frame_->extras[view].chains[label]) {
        if (!any_left(chain, done)) break;
        sum += model_.views[view].weight[label];
    }
    return sum;
}

// What is saved because the label stands: one visit, if none of the longest chains starts with work that must wait for another label.
std::int64_t Bound::saved_s(std::size_t view, Label label, const Bits& done) {
    std::size_t length = 0;
    for (const Parts& chain : frame_->extras[view].chains[label]) {
        if (!any_left(chain, done)) break;
        ++length;
    }
    if (length == 0 || waits(view, label, length, done)) return 0;
    return model_.views[view].weight[label];
}

// Whether work that starts a chain of that length must wait for another label's.
bool Bound::waits(std::size_t view, Label label, std::size_t length, const Bits& done) {
    const View& labels = model_.views[view];
    Extra& extra = frame_->extras[view];
    const Parts& chain = extra.chains[label][length - 1];
    Seen& seen = extra.seen[label];
    if (seen.clear_chain == length && is_subset(seen.clear_when, done)) return false;
    const auto is_waiting = [&](std::size_t i) {
        return waits_for_other(labels, label, frame_->before[i], done);
    };
    if (seen.waiting_chain == length && !has(done, seen.waiting) && is_waiting(seen.waiting)) return true;
    for (const Part& part : chain)
        for (Word word = part.word & extra.waiting[part.at] & ~done[part.at]; word != 0; word &= word - 1) {
            const std::size_t i = part.at * 64 + lowest(word);
            if (!is_waiting(i)) continue;
            seen.waiting_chain = length;
            seen.waiting = i;
            return true;
        }
    seen.clear_chain = length;
    seen.clear_when = done;
    return false;
}

std::int64_t Bound::with_label_s(std::size_t view, Label label, const Bits& done) {
    std::int64_t sum = -saved_s(view, label, done);
    for (Tangle& tangle : frame_->extras[view].tangles) sum += tangle.least_s(done, label);
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
    look_at(state);
    Floor floor;
    if (!frame_->is_possible) return {never_s, std::vector<std::int64_t>(model_.views.size(), 0)};
    floor.total_s = open_choices_s(state);
    for (std::size_t v = 0; v < model_.views.size(); ++v) {
        floor.standing_s.push_back(standing_s(v, state.label[v], done_));
        floor.total_s += floor.standing_s.back();
        for (std::size_t label = 1; label < model_.views[v].weight.size(); ++label)
            floor.total_s += visits_s(v, static_cast<Label>(label), done_);
    }
    return floor;
}

// How the view's part changes by the move, but for what hung on how it stood before.
std::int64_t Bound::step_s(const State& state, const Move& move, std::size_t view) {
    const Work& work = model_.works[move.operation];
    const bool is_place = view == model_.place();
    const std::size_t attribute = is_place ? 0 : view - model_.shops[work.machine].first_view;
    const Label asked = is_place ? static_cast<Label>(work.machine + 1) : work.label[attribute];
    if (asked == 0) {
        const bool is_lost = (move.touched >> attribute & 1) != 0;
        put(done_, move.operation);
        const std::int64_t standing = standing_s(view, is_lost ? Label{0} : state.label[view], done_);
        drop(done_, move.operation);
        return standing;
    }
    const std::int64_t before = visits_s(view, asked, done_);
    put(done_, move.operation);
    const std::int64_t step = visits_s(view, asked, done_) - before + standing_s(view, asked, done_);
    drop(done_, move.operation);
    return step;
}

std::int64_t Bound::after_s(const State& state, const Move& move, const Floor& before) {
    if (before.total_s >= never_s) return never_s;
    const Shop& shop = model_.shops[model_.works[move.operation].machine];
    const std::size_t place = model_.place();
    std::int64_t total = before.total_s + step_s(state, move, place) - before.standing_s[place];
    for (std::size_t v = shop.first_view; v < shop.first_view + shop.attributes; ++v)
        total += step_s(state, move, v) - before.standing_s[v];
    return total;
}

}  // namespace kw::order
