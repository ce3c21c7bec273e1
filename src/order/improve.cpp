#include "order/improve.h"

#include <algorithm>
#include <numeric>

#include "order/state.h"

namespace kw::order {

namespace {

// operations [from, to) of the order
struct Stretch {
    std::size_t from = 0;
    std::size_t to = 0;
};

// Places in an order that leave room for a stretch between any two: those of operations are multiples of the pitch.
using Place = std::int64_t;
constexpr Place left_out = std::numeric_limits<Place>::min();

class Improver {
public:
    Improver(const Model& model, std::vector<std::size_t> order, std::int64_t step_limit)
        : model_(model),
          order_(std::move(order)),
          steps_left_(step_limit),
          pitch_(static_cast<Place>(order_.size()) + 1),
          place_(model.count, left_out),
          spans_(model.groups.size()) {
        State start = start_of(model);
        for (std::size_t v = 0; v < model.views.size(); ++v) start.label[v] = model.views[v].start;
        stands_.resize(order_.size() + 1, start.label);
        spent_.resize(order_.size() + 1, 0);
        look_from(0);
    }

    std::vector<std::size_t> run() {
        while (steps_left_ > 0 && go_through()) {}
        return std::move(order_);
    }

private:
    struct Span {  // of a group: places of its first and last operation
        Place first = 0;
        Place last = 0;
    };

    std::size_t machine_at(std::size_t i) const { return model_.works[order_[i]].machine; }

    void look_from(std::size_t from) {
        for (std::size_t i = from; i < order_.size(); ++i) {
            const Move move = move_of(model_, stands_[i], order_[i]);
            stands_[i + 1] = stands_[i];
            set_labels(model_, move, stands_[i + 1]);
            spent_[i + 1] = spent_[i] + move.cost_s;
            place_[order_[i]] = static_cast<Place>(i) * pitch_;
        }
        for (std::size_t g = 0; g < spans_.size(); ++g) spans_[g] = span_of(g);
    }

    Span span_of(std::size_t group) const {
        const Held& held = model_.groups[group];
        Span span{held.begun ? Place{-1} : std::numeric_limits<Place>::max(), -1};
        each(held.operations, [&](std::size_t i) {
            if (place_[i] == left_out) return;
            span.first = std::min(span.first, place_[i]);
            span.last = std::max(span.last, place_[i]);
        });
        return span;
    }

    bool go_through() {
        bool is_better = false;
        for (std::size_t i = 0; i < order_.size() && steps_left_ > 0; ++i)
            if (spent_[i + 1] > spent_[i]) is_better = improve_at(i) || is_better;
        return is_better;
    }

    // The stretches that begin with a change or a walk at i.
    bool improve_at(std::size_t i) {
        std::size_t same_setting = i + 1;
        while (same_setting < order_.size() && spent_[same_setting + 1] == spent_[same_setting])
            ++same_setting;
        std::size_t same_machine = same_setting;
        while (same_machine < order_.size() && machine_at(same_machine) == machine_at(i)) ++same_machine;
        return try_targets({i, i + 1}) || (same_setting > i + 1 && try_targets({i, same_setting})) ||
               (same_machine > same_setting && try_targets({i, same_machine}));
    }

    // Next to the nearest work before and after on the same machine, and to the nearest with the same setting of what changes.
    bool try_targets(const Stretch& stretch) {
        const Move move = move_of(model_, stands_[stretch.from], order_[stretch.from]);
        if (try_near(stretch, Mask{0})) return true;
        for (Mask left = move.changed; left != 0; left &= left - 1)
            if (try_near(stretch, left & (~left + 1))) return true;
        return false;
    }

    bool is_alike(std::size_t i, std::size_t j, Mask attribute) const {
        if (machine_at(i) != machine_at(j)) return false;
        if (attribute == 0) return true;
        const std::size_t a = lowest(attribute);
        return model_.works[order_[i]].label[a] == model_.works[order_[j]].label[a];
    }

    bool try_near(const Stretch& stretch, Mask attribute) {
        for (std::size_t i = stretch.from; i-- > 0;) {
            if (!is_alike(i, stretch.from, attribute)) continue;
            if (i + 1 < stretch.from && try_move(stretch, i + 1)) return true;
            break;
        }
        for (std::size_t i = stretch.to; i < order_.size(); ++i) {
            if (!is_alike(i, stretch.from, attribute)) continue;
            return i > stretch.to && try_move(stretch, i);
        }
        return false;
    }

    // Whether precedence lets the stretch go to before position `target`.
    bool may_pass(const Stretch& stretch, std::size_t target) {
        const std::size_t passed = target < stretch.from ? stretch.from - target : target - stretch.to;
        steps_left_ -= static_cast<std::int64_t>((stretch.to - stretch.from) * passed);
        for (std::size_t s = stretch.from; s < stretch.to; ++s) {
            for (std::size_t i = target; i < stretch.from; ++i)
                if (has(model_.before[order_[s]], order_[i])) return false;
            for (std::size_t i = stretch.to; i < target; ++i)
                if (has(model_.before[order_[i]], order_[s])) return false;
        }
        return true;
    }

    bool try_move(const Stretch& stretch, std::size_t target) {
        if (!may_pass(stretch, target)) return false;
        const std::size_t low = std::min(stretch.from, target);
        const std::size_t high = std::max(stretch.to, target);
        trial_.assign(order_.begin() + offset(low), order_.begin() + offset(high));
        const std::size_t middle = target < stretch.from ? stretch.from - low : stretch.to - low;
        std::rotate(trial_.begin(), trial_.begin() + offset(middle), trial_.end());
        place_stretch(stretch, target);
        const bool is_better = is_cheaper(low);
        if (is_better) std::copy(trial_.begin(), trial_.end(), order_.begin() + offset(low));
        if (is_better) look_from(low);
        else put_back(stretch);
        return is_better;
    }

    static std::ptrdiff_t offset(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

    void place_stretch(const Stretch& stretch, std::size_t target) {
        for (std::size_t s = stretch.from; s < stretch.to; ++s)
            place_[order_[s]] = static_cast<Place>(target) * pitch_ - static_cast<Place>(stretch.to - s);
        update_spans(stretch);
    }

    void put_back(const Stretch& stretch) {
        for (std::size_t s = stretch.from; s < stretch.to; ++s)
            place_[order_[s]] = static_cast<Place>(s) * pitch_;
        update_spans(stretch);
    }

    void update_spans(const Stretch& stretch) {
        for (std::size_t s = stretch.from; s < stretch.to; ++s)
            for (const std::size_t g : model_.works[order_[s]].groups) spans_[g] = span_of(g);
    }

    bool is_disturbance(const Move& move) const {
        if (move.touched == 0) return false;
        const auto& groups = model_.shops[model_.works[move.operation].machine].groups;
        const Place place = place_[move.operation];
        return std::any_of(groups.begin(), groups.end(), [&](std::size_t g) {
            return (model_.groups[g].held & move.touched) && spans_[g].first < place &&
                   place < spans_[g].last && !has(model_.groups[g].operations, move.operation);
        });
    }

    // Whether the trial, put in at position `low`, keeps the groups and takes less time. Looks as far as it makes a difference.
    bool is_cheaper(std::size_t low) {
        std::vector<Label> stands = stands_[low];
        std::int64_t spent = spent_[low];
        for (std::size_t i = low; i < order_.size(); ++i) {
            const std::size_t in_trial = i - low;
            if (in_trial >= trial_.size() && stands == stands_[i]) return spent < spent_[i];
            const Move move =
                move_of(model_, stands, in_trial < trial_.size() ? trial_[in_trial] : order_[i]);
            if (is_disturbance(move)) return false;
            set_labels(model_, move, stands);
            spent += move.cost_s;
            --steps_left_;
        }
        return spent < spent_.back();
    }

    const Model& model_;
    std::vector<std::size_t> order_;
    std::int64_t steps_left_;
    Place pitch_;
    std::vector<Place> place_;                // by operation
    std::vector<Span> spans_;                 // by group
    std::vector<std::vector<Label>> stands_;  // before each position, and at the end
    std::vector<std::int64_t> spent_;         // likewise
    std::vector<std::size_t> trial_;          // part of the order, rearranged
};

}  // namespace

std::vector<std::size_t> improve(const Model& model, std::vector<std::size_t> order,
                                 std::int64_t step_limit) {
    return Improver(model, std::move(order), step_limit).run();
}

}  // namespace kw::order
