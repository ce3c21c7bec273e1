#include "order/path_improve.h"

#include <algorithm>

namespace kw::order {

std::vector<std::size_t> nearest_first(const Path& path) {
    std::vector<std::size_t> order;
    Path::Set done{};
    std::size_t at = path.count;
    while (order.size() < path.count) {
        std::size_t nearest = path.count;
        for (std::size_t i = 0; i < path.count; ++i)
            if (!has(done, i) && path.is_ready(i, done) &&
                (nearest == path.count || path.from_to(at, i) < path.from_to(at, nearest)))
                nearest = i;
        put(done, nearest);
        order.push_back(nearest);
        at = nearest;
    }
    return order;
}

PathImprover::PathImprover(const Path& path, std::vector<std::size_t> order)
    : path_(path), order_(std::move(order)) {
    climb();
    here_ = best_ = order_;
    here_s_ = best_s_ = path_.seconds_of(order_);
}

void PathImprover::go_on() {
    constexpr std::size_t rounds_to_return = 400;
    constexpr std::int64_t worse_by = 200;  // one part in so many
    if (++rounds_ % rounds_to_return == 0) {
        here_ = best_;
        here_s_ = best_s_;
    }
    order_ = here_;
    for (std::size_t times = 1 + below(3); times > 0; --times)
        if (!shake()) break;
    climb();
    const std::int64_t seconds = path_.seconds_of(order_);
    if (seconds > here_s_ && seconds > best_s_ + best_s_ / worse_by) return;
    here_ = order_;
    here_s_ = seconds;
    if (seconds >= best_s_) return;
    best_ = order_;
    best_s_ = seconds;
}

void PathImprover::climb() {
    for (bool progress = true; progress;) {
        progress = false;
        for (std::size_t first = 0; first + 1 < order_.size(); ++first)
            while (climb_from(first)) progress = true;
    }
}

// Exchanges [first, middle) and [middle, end), the best of all that begin there.
bool PathImprover::climb_from(std::size_t first) {
    std::int64_t most = 0;
    std::size_t best_middle = 0, best_end = 0;
    Path::Set left{};
    for (std::size_t middle = first + 1; middle < order_.size(); ++middle) {
        put(left, order_[middle - 1]);
        for (std::size_t end = middle + 1; end <= order_.size(); ++end) {
            if (intersect(path_.before[order_[end - 1]], left)) break;
            const std::int64_t gain = gain_s(first, middle, end);
            if (gain <= most) continue;
            most = gain;
            best_middle = middle;
            best_end = end;
        }
    }
    if (most > 0) exchange(first, best_middle, best_end);
    return most > 0;
}

std::int64_t PathImprover::gain_s(std::size_t first, std::size_t middle, std::size_t end) const {
    const std::size_t ahead = at(first);
    const std::size_t behind = end < order_.size() ? order_[end] : path_.count;
    return step_s(ahead, order_[first]) + step_s(order_[middle - 1], order_[middle]) +
           step_s(order_[end - 1], behind) - step_s(ahead, order_[middle]) -
           step_s(order_[end - 1], order_[first]) - step_s(order_[middle - 1], behind);
}

void PathImprover::exchange(std::size_t first, std::size_t middle, std::size_t end) {
    const auto place = [this](std::size_t i) { return order_.begin() + static_cast<std::ptrdiff_t>(i); };
    std::rotate(place(first), place(middle), place(end));
}

// Two short stretches at random; false where a few tries found none that may change places.
bool PathImprover::shake() {
    constexpr int tries = 30;
    const std::size_t longest = std::clamp<std::size_t>(path_.count / 3, 1, 30);
    for (int i = 0; i < tries; ++i) {
        const std::size_t first = below(path_.count - 1);
        const std::size_t middle = first + 1 + below(std::min(longest, path_.count - first - 1));
        const std::size_t end = middle + 1 + below(std::min(longest, path_.count - middle));
        Path::Set left{};
        for (std::size_t k = first; k < middle; ++k) put(left, order_[k]);
        bool may = true;
        for (std::size_t k = middle; k < end; ++k) may = may && !intersect(path_.before[order_[k]], left);
        if (!may) continue;
        exchange(first, middle, end);
        return true;
    }
    return false;
}

// Marsaglia's xorshift, 64 bits (2003).
std::size_t PathImprover::below(std::size_t count) {
    random_ ^= random_ << 13;
    random_ ^= random_ >> 7;
    random_ ^= random_ << 17;
    return static_cast<std::size_t>(random_ % count);
}

}  // namespace kw::order
