#include "order/from_to.h"

#include <algorithm>

namespace kw::order {

namespace {

// Beyond this many labels it takes too long to look at all triples, and the answer is no.
constexpr std::size_t most_to_compare = 600;

}  // namespace

FromTo::FromTo(const Attribute& attribute, std::vector<int> value) : value_(std::move(value)) {
    for (const int from : value_)
        for (const int to : value_) seconds_.push_back(from == to ? 0 : attribute.setting_s(from, to));
    // Labels of one value differ in what they hang on: between them the attribute is invalidated, and set from none.
    for (std::size_t from = 1; from < value_.size(); ++from)
        for (std::size_t to = 1; to < value_.size(); ++to)
            if (from != to && value_[from] == value_[to])
                seconds_[from * value_.size() + to] = attribute.setting_s(value_[to]);
}

std::int64_t FromTo::least_s(Label to) const {
    std::int64_t least = seconds(0, to);
    for (std::size_t from = 1; from < value_.size(); ++from)
        if (from != to) least = std::min(least, seconds(static_cast<Label>(from), to));
    return least;
}

bool FromTo::is_never_dearer_direct(bool can_be_lost) const {
    const std::size_t count = value_.size();
    if (count > most_to_compare) return false;
    for (std::size_t from = 0; from < count; ++from)
        for (std::size_t via = 1; via < count; ++via)
            for (std::size_t to = 1; to < count; ++to)
                if (from != to &&
                    seconds_[from * count + to] > seconds_[from * count + via] + seconds_[via * count + to])
                    return false;
    for (std::size_t from = 1; can_be_lost && from < count; ++from)
        for (std::size_t to = 1; to < count; ++to)
            if (from != to && seconds_[from * count + to] > seconds_[to]) return false;
    return true;
}

}  // namespace kw::order
