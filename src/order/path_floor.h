#pragma once
// A floor under what is left of a path, from walks that need not visit every operation.

#include <functional>

#include "order/path.h"

namespace kw::order {

// Walks of as many steps as there are operations, each at a position that precedence allows, are found by dynamic programming over
// position and operation, from the end. A penalty on every visit (Held and Karp's Lagrangean relaxation of "once each", raised by
// subgradient steps) makes them visit each about once. Beside that, every operation remembers a few others: which of them the walk
// visits later. A walk may not visit what it remembers, nor what must come after it (the "ng" relaxation of Baldacci, Mingozzi and
// Roberti 2011); where the least walk does so all the same, more is remembered. With the penalties of what is left taken off again,
// the least walk on from a position is a floor for every partial order that ends there: one look at a table.
class PathFloor {
public:
    explicit PathFloor(const Path& path);

    // Raises the floor of the whole, by about so many steps of walks; `best_s` is what some order takes. Steps and positions that are in
    // no order of less are then out of the question: from here on the floor holds for orders of less than `best_s` alone.
    void raise(std::int64_t best_s, std::int64_t steps);
    // The same, and remembers more. Ends when `is_late` says so, asked after every walk.
    void raise_remembering(std::int64_t best_s, std::int64_t steps, const std::function<bool()>& is_late);

    // All operations together take no less.
    std::int64_t whole_s() const { return seconds_up(highest_); }

    // Penalties are counted in parts of a second.
    std::int64_t penalty(std::size_t operation) const { return best_penalty_[operation]; }
    std::int64_t all_penalties() const;
    // What is left after `last`, the newest in `done`, where the penalties of what is left come to so much.
    std::int64_t left_s(const Path::Set& done, std::size_t last, std::int64_t penalties) const;

    // The path without the steps that are out of the question.
    const Path& without_dear_steps() const { return path_; }

private:
    static constexpr std::int64_t parts = 64;
    static constexpr std::size_t most_remembered = 8;
    static std::int64_t seconds_up(std::int64_t in_parts) {
        return in_parts >= 0 ? (in_parts + parts - 1) / parts : -(-in_parts / parts);
    }

    using Memory = std::uint8_t;  // which of the remembered are visited later
    struct Step {                 // to `to`, as it is seen from there
        std::size_t from = 0;
        std::int64_t cost = 0;         // in parts
        Memory forbids = 0;            // the step, if one of these is visited later
        std::vector<Memory> memory{};  // by that at `to`: that at `from`
    };

    bool can_stand(std::size_t operation, std::size_t position) const {
        return can_stand_[position * path_.count + operation] != 0;
    }
    std::size_t memories(std::size_t operation) const {
        return std::size_t{1} << remembered_[operation].size();
    }
    std::size_t place(std::size_t position, std::size_t operation) const {
        return position * width_ + offset_[operation];
    }
    void lay_out();
    void lay_out_steps();
    void climb(std::int64_t best_s, std::int64_t steps, bool remembering,
               const std::function<bool()>& is_late);
    std::int64_t walk();  // with the penalties as they are: fills left_ and next_
    void walk_back(std::size_t position, std::size_t to, const Step& step);
    void follow();  // the least walk: fills visited_ and visits_
    bool remember_more();
    bool remember(std::size_t from, std::size_t to, std::size_t operation);
    void finish();  // left_ is made to hold, by memory, the least of all its parts
    std::vector<std::int64_t> walks_to() const;
    void drop_dear(std::int64_t best_s);

    Path path_;
    std::vector<std::uint8_t> can_stand_;               // by position, from 1, and operation
    std::vector<std::vector<std::size_t>> remembered_;  // by operation
    std::vector<std::vector<Step>> steps_;              // by operation that is stepped to; from others
    std::vector<std::size_t> offset_;                   // by operation: of its memories, within a position
    std::size_t width_ = 0;                             // of a position
    std::vector<std::int64_t> penalty_, best_penalty_;
    std::int64_t highest_ = 0;  // in parts
    std::int64_t scale_ = 1024;
    std::int64_t steps_made_ = 0;
    std::vector<std::int64_t> left_;  // by position, operation and memory: of the walk from there to the end
    struct Next {
        std::uint8_t operation = 0;
        Memory memory = 0;
    };
    std::vector<Next> next_;  // likewise
    Next first_;
    std::vector<std::size_t> visited_;  // by position, from 0
    std::vector<std::int64_t> visits_;  // by operation
};

}  // namespace kw::order
