#include "order/path_floor.h"

#include <algorithm>
#include <numeric>

namespace kw::order {

PathFloor::PathFloor(const Path& path)
    : path_(path),
      steps_(path.side()),
      penalty_(path.count, 0),
      best_penalty_(path.count, 0),
      left_((path.count + 1) * path.count, Path::never),
      next_(left_.size(), 0),
      visits_(path.count, 0) {
    for (std::size_t i = 0; i < path.count; ++i) {
        earliest_.push_back(count(path.before[i]) + 1);
        latest_.push_back(path.count - count(path.after[i]));
    }
    for (std::size_t i = 0; i <= path.count; ++i)
        for (std::size_t j = 0; j < path.count; ++j)
            if (path.from_to(i, j) < Path::never) steps_[i].push_back(j);
    highest_ = walk();
}

std::int64_t PathFloor::all_penalties() const {
    return std::accumulate(best_penalty_.begin(), best_penalty_.end(), std::int64_t{0});
}

std::int64_t PathFloor::walk() {
    const std::size_t n = path_.count;
    std::fill(left_.begin(), left_.end(), Path::never);
    for (std::size_t i = 0; i < n; ++i)
        if (latest_[i] == n) left_[n * n + i] = 0;
    std::int64_t whole = Path::never;
    for (std::size_t position = n; position-- > 0;) {
        const std::int64_t* on = left_.data() + (position + 1) * n;
        const auto least_on = [&](std::size_t row, std::uint8_t& next) {
            std::int64_t least = Path::never;
            for (const std::size_t j : steps_[row]) {
                if (on[j] >= Path::never) continue;
                const std::int64_t walk = parts * path_.from_to(row, j) + penalty_[j] + on[j];
                if (walk >= least) continue;
                least = walk;
                next = static_cast<std::uint8_t>(j);
            }
            return least;
        };
        if (position == 0) whole = least_on(n, next_[0]);
        for (std::size_t i = 0; position > 0 && i < n; ++i)
            if (can_stand(i, position)) left_[position * n + i] = least_on(i, next_[position * n + i]);
    }
    return whole - std::accumulate(penalty_.begin(), penalty_.end(), std::int64_t{0});
}

void PathFloor::count_visits() {
    std::fill(visits_.begin(), visits_.end(), 0);
    std::size_t at = next_[0];
    for (std::size_t position = 1; position <= path_.count; ++position) {
        ++visits_[at];
        at = next_[position * path_.count + at];
    }
}

void PathFloor::raise(std::int64_t best_s, std::size_t rounds) {
    constexpr std::size_t patience = 12;  // rounds without a higher floor before steps are made smaller
    std::int64_t scale = 1024;
    std::size_t since = 0;
    penalty_ = best_penalty_;
    std::int64_t now = walk();
    for (std::size_t round = 0; round < rounds && scale > 2 && seconds_up(highest_) < best_s; ++round) {
        count_visits();
        std::int64_t norm = 0;
        for (const std::int64_t visits : visits_) norm += (visits - 1) * (visits - 1);
        if (norm == 0) break;  // the walk is an order
        const std::int64_t step = std::max<std::int64_t>(1, (best_s * parts - now) * scale / (1024 * norm));
        for (std::size_t i = 0; i < path_.count; ++i) penalty_[i] += step * (visits_[i] - 1);
        now = walk();
        since = now > highest_ ? 0 : since + 1;
        if (now > highest_) {
            highest_ = now;
            best_penalty_ = penalty_;
        }
        if (since < patience) continue;
        since = 0;
        scale = scale * 5 / 8;
        penalty_ = best_penalty_;
        now = walk();
    }
    penalty_ = best_penalty_;
    walk();
}

// By position and operation: the least walk up to there, its penalty included.
std::vector<std::int64_t> PathFloor::walks_to() const {
    const std::size_t n = path_.count;
    std::vector<std::int64_t> to(left_.size(), Path::never);
    for (const std::size_t j : steps_[n])
        if (can_stand(j, 1)) to[n + j] = parts * path_.from_to(n, j) + penalty_[j];
    for (std::size_t position = 1; position < n; ++position)
        for (std::size_t i = 0; i < n; ++i) {
            const std::int64_t here = to[position * n + i];
            if (here >= Path::never) continue;
            for (const std::size_t j : steps_[i]) {
                if (!can_stand(j, position + 1)) continue;
                std::int64_t& there = to[(position + 1) * n + j];
                there = std::min(there, here + parts * path_.from_to(i, j) + penalty_[j]);
            }
        }
    return to;
}

void PathFloor::drop_dear_steps(std::int64_t best_s, Path& path) const {
    const std::size_t n = path_.count;
    const std::vector<std::int64_t> to = walks_to();
    const std::int64_t penalties = all_penalties();
    for (std::size_t i = 0; i < n; ++i)
        for (const std::size_t j : steps_[i]) {
            std::int64_t least = Path::never;
            for (std::size_t position = 1; position < n; ++position) {
                const std::int64_t on = left_[(position + 1) * n + j];
                const std::int64_t here = to[position * n + i];
                if (here < Path::never && on < Path::never) least = std::min(least, here + penalty_[j] + on);
            }
            if (least >= Path::never || seconds_up(least + parts * path_.from_to(i, j) - penalties) >= best_s)
                path.seconds[i * path.side() + j] = Path::never;
        }
}

}  // namespace kw::order
