#pragma once
// Work whose whole time hangs on which operation follows which: a shortest path through all operations that keeps the precedences
// (the sequential ordering problem).

#include <array>
#include <optional>

#include "order/model.h"

namespace kw::order {

// Rows and columns are operations by index. Beyond the operations, row `count` is the start, and column `count` is the end.
struct Path {
    static constexpr std::size_t most = 127;  // operations
    static constexpr std::int64_t never = std::int64_t{1} << 50;
    using Set = std::array<Word, 2>;

    std::size_t count = 0;
    std::vector<std::int64_t>
        seconds;  // by row and column; `never` where precedence lets none follow the other at once
    std::vector<Set> before;
    std::vector<Set> after;
    std::vector<std::size_t> twin;  // by operation: the first one that needs the same settings
    bool is_orderly = false;        // work that needs no change is done at once (see expand.h)

    std::size_t side() const { return count + 1; }
    std::int64_t from_to(std::size_t from, std::size_t to) const { return seconds[from * side() + to]; }
    bool is_ready(std::size_t operation, const Set& done) const {
        return ((before[operation][0] & ~done[0]) | (before[operation][1] & ~done[1])) == 0;
    }
    std::int64_t seconds_of(const std::vector<std::size_t>& order) const;
};

inline bool has(const Path::Set& set, std::size_t i) { return (set[i / 64] >> (i % 64) & 1) != 0; }
inline void put(Path::Set& set, std::size_t i) { set[i / 64] |= Word{1} << (i % 64); }
inline bool intersect(const Path::Set& a, const Path::Set& b) { return ((a[0] & b[0]) | (a[1] & b[1])) != 0; }
inline std::size_t count(const Path::Set& set) {
    return static_cast<std::size_t>(__builtin_popcountll(set[0]) + __builtin_popcountll(set[1]));
}

// Nothing unless there is no choice, a from-to table is given, no more than Path::most operations are all on one machine, each needs all that any of
// them needs, and none is in a group.
std::optional<Path> path_of(const Model& model);

}  // namespace kw::order
