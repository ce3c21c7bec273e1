#pragma once
// Local improvement of a path.

#include "order/path.h"

namespace kw::order {

// Two stretches that follow each other change places, as long as that takes time off and keeps the precedences (the exchange of three
// steps that turns no stretch round: Savelsbergh 1990; one operation put elsewhere is the smallest). From where no exchange helps, a
// few at random lead on, to orders that are not much worse (iterated local search). The same on every machine.
class PathImprover {
public:
    PathImprover(const Path& path, std::vector<std::size_t> order);  // an order that keeps the precedences

    void go_on();  // one round
    const std::vector<std::size_t>& best() const { return best_; }
    std::int64_t best_s() const { return best_s_; }

private:
    std::size_t at(std::size_t position) const { return position == 0 ? path_.count : order_[position - 1]; }
    std::int64_t step_s(std::size_t from, std::size_t to) const {
        return to == path_.count ? 0 : path_.from_to(from, to);
    }
    void climb();
    bool climb_from(std::size_t first);
    std::int64_t gain_s(std::size_t first, std::size_t middle, std::size_t end) const;
    void exchange(std::size_t first, std::size_t middle, std::size_t end);
    bool shake();
    std::size_t below(std::size_t count);

    const Path& path_;
    std::vector<std::size_t> order_;
    std::vector<std::size_t> here_;  // the order from which rounds go on
    std::vector<std::size_t> best_;
    std::int64_t here_s_ = 0;
    std::int64_t best_s_ = 0;
    std::size_t rounds_ = 0;
    Word random_ = 0x9E3779B97F4A7C15U;
};

std::vector<std::size_t> nearest_first(const Path& path);

}  // namespace kw::order
