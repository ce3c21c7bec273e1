#pragma once
// A floor under what is left of a path, from walks that need not visit every operation.

#include "order/path.h"

namespace kw::order {

// Walks of as many steps as there are operations, each at a position that precedence allows, are found by dynamic programming over
// position and last operation. A penalty on every visit (Held and Karp's Lagrangean relaxation of "once each", raised by
// subgradient steps) makes them visit each about once. With the penalties of what is left taken off again, the least walk on from a
// position is a floor for every partial order that ends there: one look at a table.
class PathFloor {
public:
    explicit PathFloor(const Path& path);

    // Raises the floor of the whole, by looking at walks `rounds` times at most; `best_s` is what some order takes.
    void raise(std::int64_t best_s, std::size_t rounds);

    // All operations together take no less.
    std::int64_t whole_s() const { return seconds_up(highest_); }

    // Penalties are counted in parts of a second.
    std::int64_t penalty(std::size_t operation) const { return best_penalty_[operation]; }
    std::int64_t all_penalties() const;
    // What is left after the operation at the position (from 1), where the penalties of what is left come to so much.
    std::int64_t left_s(std::size_t position, std::size_t operation, std::int64_t penalties) const {
        const std::int64_t walk = left_[position * path_.count + operation];
        return walk >= Path::never ? Path::never : seconds_up(walk - penalties);
    }

    // Steps that are in no order of less than `best_s` are made impossible in `path`.
    void drop_dear_steps(std::int64_t best_s, Path& path) const;

private:
    static constexpr std::int64_t parts = 64;
    static std::int64_t seconds_up(std::int64_t in_parts) {
        return in_parts >= 0 ? (in_parts + parts - 1) / parts : -(-in_parts / parts);
    }

    bool can_stand(std::size_t operation, std::size_t position) const {
        return earliest_[operation] <= position && position <= latest_[operation];
    }
    std::int64_t walk();  // with the penalties as they are: fills left_ and next_
    void count_visits();
    std::vector<std::int64_t> walks_to() const;

    const Path& path_;
    std::vector<std::size_t> earliest_, latest_;   // positions, from 1
    std::vector<std::vector<std::size_t>> steps_;  // by row
    std::vector<std::int64_t> penalty_, best_penalty_;
    std::int64_t highest_ = 0;        // in parts
    std::vector<std::int64_t> left_;  // by position and operation
    std::vector<std::uint8_t> next_;  // likewise; at position 0, of the start
    std::vector<std::int64_t> visits_;
};

}  // namespace kw::order
