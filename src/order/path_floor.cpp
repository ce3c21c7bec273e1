#include "order/path_floor.h"

#include <algorithm>
#include <numeric>

namespace kw::order {

namespace {

// All operations' together stay far below Path::never.
constexpr std::int64_t most_penalty = std::int64_t{1} << 40;

}  // namespace

PathFloor::PathFloor(const Path& path)
    : path_(path),
      can_stand_((path.count + 1) * path.count, 0),
      remembered_(path.count),
      penalty_(path.count, 0),
      best_penalty_(path.count, 0),
      visits_(path.count, 0) {
    for (std::size_t i = 0; i < path.count; ++i)
        for (std::size_t position = count(path.before[i]) + 1; position <= path.count - count(path.after[i]);
             ++position)
            can_stand_[position * path.count + i] = 1;
    lay_out();
    highest_ = walk();
    finish();
}

void PathFloor::lay_out() {
    offset_.clear();
    width_ = 0;
    for (std::size_t i = 0; i < path_.count; ++i) {
        offset_.push_back(width_);
        width_ += memories(i);
    }
    left_.assign((path_.count + 1) * width_, Path::never);
    next_.assign(left_.size(), {});
    lay_out_steps();
}

void PathFloor::lay_out_steps() {
    steps_.assign(path_.count, {});
    for (std::size_t to = 0; to < path_.count; ++to)
        for (std::size_t from = 0; from < path_.count; ++from) {
            if (path_.from_to(from, to) >= Path::never) continue;
            Step step{from, parts * path_.from_to(from, to)};
            const auto& known = remembered_[to];
            for (std::size_t b = 0; b < known.size(); ++b)
                if (known[b] == from || has(path_.before[from], known[b]))
                    step.forbids = static_cast<Memory>(step.forbids | 1U << b);
            for (std::size_t memory = 0; memory < memories(to); ++memory) {
                unsigned kept = 0;
                for (std::size_t b = 0; b < remembered_[from].size(); ++b) {
                    const std::size_t operation = remembered_[from][b];
                    const auto at = std::find(known.begin(), known.end(), operation);
                    const auto bit = static_cast<std::size_t>(at - known.begin());
                    if (operation == to || (at != known.end() && (memory >> bit & 1))) kept |= 1U << b;
                }
                step.memory.push_back(static_cast<Memory>(kept));
            }
            steps_[to].push_back(std::move(step));
        }
}

std::int64_t PathFloor::all_penalties() const {
    return std::accumulate(best_penalty_.begin(), best_penalty_.end(), std::int64_t{0});
}

std::int64_t PathFloor::left_s(const Path::Set& done, std::size_t last, std::int64_t penalties) const {
    std::size_t memory = 0;
    for (std::size_t b = 0; b < remembered_[last].size(); ++b)
        memory |= has(done, remembered_[last][b]) ? std::size_t{0} : std::size_t{1} << b;
    const std::int64_t walk = left_[place(count(done), last) + memory];
    return walk >= Path::never ? Path::never : seconds_up(walk - penalties);
}

std::int64_t PathFloor::walk() {
    const std::size_t n = path_.count;
    std::fill(left_.begin(), left_.end(), Path::never);
    for (std::size_t i = 0; i < n; ++i)
        if (can_stand(i, n)) left_[place(n, i)] = 0;
    for (std::size_t position = n; position > 1; --position)
        for (std::size_t to = 0; to < n; ++to) {
            if (!can_stand(to, position)) continue;
            for (const Step& step : steps_[to])
                if (can_stand(step.from, position - 1)) walk_back(position, to, step);
        }
    std::int64_t whole = Path::never;
    for (std::size_t i = 0; i < n; ++i) {
        if (path_.from_to(n, i) >= Path::never) continue;
        for (std::size_t memory = 0; memory < memories(i); ++memory) {
            const std::int64_t walk = parts * path_.from_to(n, i) + penalty_[i] + left_[place(1, i) + memory];
            if (walk >= whole) continue;
            whole = walk;
            first_ = {static_cast<std::uint8_t>(i), static_cast<Memory>(memory)};
        }
    }
    return whole - std::accumulate(penalty_.begin(), penalty_.end(), std::int64_t{0});
}

void PathFloor::walk_back(std::size_t position, std::size_t to, const Step& step) {
    const std::int64_t* on = left_.data() + place(position, to);
    std::int64_t* here = left_.data() + place(position - 1, step.from);
    Next* next = next_.data() + place(position - 1, step.from);
    const std::int64_t cost = step.cost + penalty_[to];
    const std::size_t count = step.memory.size();
    steps_made_ += static_cast<std::int64_t>(count);
    for (std::size_t memory = 0; memory < count; ++memory) {
        if (on[memory] >= Path::never || (memory & step.forbids)) continue;
        const std::size_t kept = step.memory[memory];
        if (on[memory] + cost >= here[kept]) continue;
        here[kept] = on[memory] + cost;
        next[kept] = {static_cast<std::uint8_t>(to), static_cast<Memory>(memory)};
    }
}

void PathFloor::follow() {
    std::fill(visits_.begin(), visits_.end(), 0);
    visited_.clear();
    Next at = first_;
    for (std::size_t position = 1; position <= path_.count; ++position) {
        ++visits_[at.operation];
        visited_.push_back(at.operation);
        at = next_[place(position, at.operation) + at.memory];
    }
}

void PathFloor::raise(std::int64_t best_s, std::int64_t steps) {
    climb(best_s, steps, false, [] { return false; });
}

void PathFloor::raise_remembering(std::int64_t best_s, std::int64_t steps,
                                  const std::function<bool()>& is_late) {
    climb(best_s, steps, true, is_late);
}

void PathFloor::climb(std::int64_t best_s, std::int64_t steps, bool remembering,
                      const std::function<bool()>& is_late) {
    constexpr std::int64_t least_scale = 4;
    const std::size_t patience =
        remembering ? 4 : 12;  // rounds without a higher floor before steps are made smaller
    const std::int64_t end = steps_made_ + steps;
    std::size_t since = remembering ? patience : 0;
    if (remembering) scale_ = std::max<std::int64_t>(scale_, 256);
    penalty_ = best_penalty_;
    std::int64_t now = walk();
    highest_ = std::max(highest_, now);
    while (steps_made_ < end && seconds_up(highest_) < best_s && !is_late()) {
        follow();
        if (since >= patience) {
            since = 0;
            scale_ = std::max(scale_ * 5 / 8, least_scale);
            penalty_ = best_penalty_;
            now = walk();
            follow();
            if (remembering && remember_more()) {
                lay_out();
                now = walk();
                follow();
                highest_ = std::max(highest_, now);
            } else if (scale_ == least_scale) {
                break;
            }
        }
        std::int64_t norm = 0;
        for (const std::int64_t visits : visits_) norm += (visits - 1) * (visits - 1);
        if (norm == 0) {
            since = patience;  // each once, though perhaps in no order that may be
            if (!remembering) break;
            if (penalty_ == best_penalty_ && !remember_more()) break;
            continue;
        }
        const std::int64_t step = std::max<std::int64_t>(1, (best_s * parts - now) / 1024 * scale_ / norm);
        for (std::size_t i = 0; i < path_.count; ++i)
            penalty_[i] = std::clamp(penalty_[i] + step * (visits_[i] - 1), -most_penalty, most_penalty);
        now = walk();
        since = now > highest_ ? 0 : since + 1;
        if (now > highest_) {
            highest_ = now;
            best_penalty_ = penalty_;
        }
    }
    penalty_ = best_penalty_;
    lay_out();
    highest_ = std::max(highest_, walk());
    finish();
    drop_dear(best_s);
}

// What the least walk visits twice, or before what must come first; remembered all the way between. True if something was added.
bool PathFloor::remember_more() {
    bool added = false;
    for (std::size_t late = 1; late < visited_.size(); ++late)
        for (std::size_t early = late; early-- > 0;) {
            const std::size_t again = visited_[late];
            if (visited_[early] != again && !has(path_.before[visited_[early]], again)) continue;
            added = remember(early + 1, late, again) || added;
            break;
        }
    return added;
}

bool PathFloor::remember(std::size_t from, std::size_t to, std::size_t operation) {
    const auto lacks = [&](std::size_t i) {
        const auto& known = remembered_[visited_[i]];
        return visited_[i] != operation && std::find(known.begin(), known.end(), operation) == known.end();
    };
    for (std::size_t i = from; i < to; ++i)
        if (lacks(i) && remembered_[visited_[i]].size() >= most_remembered) return false;
    bool added = false;
    for (std::size_t i = from; i < to; ++i) {
        if (!lacks(i)) continue;
        remembered_[visited_[i]].push_back(operation);
        added = true;
    }
    return added;
}

void PathFloor::finish() {
    for (std::size_t position = 1; position <= path_.count; ++position)
        for (std::size_t i = 0; i < path_.count; ++i)
            for (std::size_t bit = 1; bit < memories(i); bit *= 2)
                for (std::size_t memory = 0; memory < memories(i); ++memory)
                    if (memory & bit) {
                        std::int64_t* left = left_.data() + place(position, i);
                        left[memory] = std::min(left[memory], left[memory - bit]);
                    }
}

// By position and operation: the least walk up to there that remembers nothing, its penalty included.
std::vector<std::int64_t> PathFloor::walks_to() const {
    const std::size_t n = path_.count;
    std::vector<std::int64_t> walks((n + 1) * n, Path::never);
    for (std::size_t j = 0; j < n; ++j)
        if (path_.from_to(n, j) < Path::never) walks[n + j] = parts * path_.from_to(n, j) + penalty_[j];
    for (std::size_t position = 1; position < n; ++position)
        for (std::size_t to = 0; to < n; ++to) {
            if (!can_stand(to, position + 1)) continue;
            for (const Step& step : steps_[to]) {
                std::int64_t& there = walks[(position + 1) * n + to];
                there = std::min(there, walks[position * n + step.from] + step.cost + penalty_[to]);
            }
        }
    return walks;
}

// What is in no order of less than `best_s`, by the least walk through it.
void PathFloor::drop_dear(std::int64_t best_s) {
    const std::size_t n = path_.count;
    const std::vector<std::int64_t> walks = walks_to();
    const std::int64_t penalties = all_penalties();
    const auto is_dear = [&](std::int64_t walk) {
        return walk >= Path::never || seconds_up(walk - penalties) >= best_s;
    };
    const auto least_on = [&](std::size_t position, std::size_t i) {
        return left_[place(position, i) + memories(i) - 1];
    };
    for (std::size_t to = 0; to < n; ++to)
        for (const Step& step : steps_[to]) {
            std::int64_t least = Path::never;
            for (std::size_t position = 1; position < n; ++position)
                least = std::min(least, walks[position * n + step.from] + step.cost + penalty_[to] +
                                            least_on(position + 1, to));
            if (is_dear(least)) path_.seconds[step.from * path_.side() + to] = Path::never;
        }
    for (std::size_t position = 1; position <= n; ++position)
        for (std::size_t i = 0; i < n; ++i)
            if (is_dear(walks[position * n + i] + least_on(position, i))) can_stand_[position * n + i] = 0;
    lay_out_steps();
}

}  // namespace kw::order
