#pragma once
// What it takes to change a view from one label to another, where that hangs on the label that stands.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "order/problem.h"

namespace kw::order {

using Label = std::uint16_t;

class FromTo {
public:
    FromTo() = default;
    // `value` by label: the attribute's value; that of label 0 is `unknown`.
    FromTo(const Attribute& attribute, std::vector<int> value);

    bool is_given() const { return !value_.empty(); }
    std::int64_t seconds(Label from, Label to) const { return seconds_[from * value_.size() + to]; }
    std::int64_t least_s(Label to) const;  // from any other label, or from none

    // Whether no way round is cheaper than the direct change: the triangle inequality over all labels and none.
    // If the attribute can be lost (another change invalidates it), losing it and setting it anew is a way round, too.
    bool is_never_dearer_direct(bool can_be_lost) const;

private:
    std::vector<int> value_;
    std::vector<std::int64_t> seconds_;
};

}  // namespace kw::order
