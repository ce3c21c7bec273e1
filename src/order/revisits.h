#pragma once
// The least that the labels of one view cost, where precedence forces some of them to be set more than once.

#include <array>
#include <unordered_map>

#include "order/model.h"

namespace kw::order {

// Labels that stand in each other's way: every one of them must wait for some of the others' work and also holds some of it up.
// At least one of them is set twice, then. How often each must be is found by trying all sequences of labels, always doing
// all that a label can do, and remembered for every set of work that is left.
class Tangle {
public:
    static constexpr std::size_t most_operations = 128;

    Tangle(const View& view, const std::vector<Bits>& before, const std::vector<Label>& labels);

    // The least cost of what is left while label `current` is set (any label, also of another tangle, or 0). Never too high, and
    // exact while no more than memory_limit sets have been met.
    std::int64_t least_s(const Bits& done, Label current);

private:
    using Set = std::array<Word, most_operations / 64>;
    struct Hash {
        std::size_t operator()(const Set& set) const;
    };
    struct Group {  // the work of one label
        Label label = 0;
        std::int64_t weight = 0;
        Set asked_by{};
    };

    static constexpr std::size_t memory_limit = 1 << 16;

    Set open_work(const Group& group, const Set& left) const;
    std::int64_t once_each(const Set& left) const;
    std::int64_t search(const Set& left);

    Set all_{};
    std::vector<Group> groups_;
    std::vector<Set> waits_for_;  // by operation: work of the tangle's other labels
    std::unordered_map<Set, std::int64_t, Hash> known_;
};

// The labels of the view in sets that stand in each other's way; labels that don't are in none.
std::vector<std::vector<Label>> tangled_labels(const View& view, const std::vector<Bits>& before);

}  // namespace kw::order
