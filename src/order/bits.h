#pragma once
// Sets of operations.

#include <cassert>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace kw::order {

using Word = std::uint64_t;
using Bits = std::vector<Word>;

inline std::size_t words_for(std::size_t count) { return (count + 63) / 64; }

inline bool has(const Bits& set, std::size_t i) { return (set[i / 64] >> (i % 64) & 1) != 0; }
inline void put(Bits& set, std::size_t i) { set[i / 64] |= Word{1} << (i % 64); }
inline void drop(Bits& set, std::size_t i) { set[i / 64] &= ~(Word{1} << (i % 64)); }

inline void put_all(Bits& set, const Bits& others) {
    for (std::size_t w = 0; w < set.size(); ++w) set[w] |= others[w];
}

inline bool is_subset(const Bits& part, const Bits& whole) {
    for (std::size_t w = 0; w < part.size(); ++w)
        if (part[w] & ~whole[w]) return false;
    return true;
}

inline bool intersect(const Bits& a, const Bits& b) {
    for (std::size_t w = 0; w < a.size(); ++w)
        if (a[w] & b[w]) return true;
    return false;
}

inline std::size_t count(const Bits& set) {
    std::size_t sum = 0;
    for (const Word word : set) sum += static_cast<std::size_t>(__builtin_popcountll(word));
    return sum;
}

// The lowest member of `word`, which has one.
inline std::size_t lowest(Word word) {
    assert(word != 0);
    return static_cast<std::size_t>(__builtin_ctzll(word));
}

// `use` is called with each member, lowest first. It may change the set that the word came from.
template <class Use>
void each_in(Word word, std::size_t offset, Use use) {
    for (; word != 0; word &= word - 1) use(offset + lowest(word));
}

template <class Use>
void each(const Bits& set, Use use) {
    for (std::size_t w = 0; w < set.size(); ++w) each_in(set[w], w * 64, use);
}

// The members of `set` that are not in `without`.
template <class Use>
void each_left(const Bits& set, const Bits& without, Use use) {
    for (std::size_t w = 0; w < set.size(); ++w) each_in(set[w] & ~without[w], w * 64, use);
}

inline bool any_left(const Bits& set, const Bits& without) { return !is_subset(set, without); }

// The words of a set that are not empty: among thousands of operations most sets have few members.
struct Part {
    std::size_t at = 0;
    Word word = 0;
};
using Parts = std::vector<Part>;

inline Parts parts_of(const Bits& set) {
    Parts parts;
    for (std::size_t w = 0; w < set.size(); ++w)
        if (set[w] != 0) parts.push_back({w, set[w]});
    return parts;
}

inline bool any_left(const Parts& set, const Bits& without) {
    for (const Part& part : set)
        if (part.word & ~without[part.at]) return true;
    return false;
}

}  // namespace kw::order
