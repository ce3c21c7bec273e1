#pragma once
// Chance for searches, the same on every machine: the generator is Steele, Lea and Flood's SplitMix64 (OOPSLA 2014, from
// memory). Private to this folder.

#include <cstddef>
#include <cstdint>

namespace kw::cutting {

class Chance {
public:
    explicit Chance(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        state_ += 0x9e3779b97f4a7c15ULL;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
        return z ^ (z >> 31);
    }
    // 0 to `count` - 1; count above zero. The upper bits scaled: no division.
    std::size_t below(std::size_t count) {
        return static_cast<std::size_t>((next() >> 32) * static_cast<std::uint64_t>(count) >> 32);
    }
    bool one_in(std::size_t count) { return below(count) == 0; }

private:
    std::uint64_t state_;
};

}  // namespace kw::cutting
