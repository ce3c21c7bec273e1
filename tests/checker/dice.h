// Random choices that are the same on every machine and with every standard library.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace checker {

// SplitMix64 (Steele, Lea and Flood 2014; the constants are from memory).
class Dice {
public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        return z ^ (z >> 31U);
    }

    // Both ends included.
    std::int64_t between(std::int64_t low, std::int64_t high) {
        const auto choices = static_cast<std::uint64_t>(high - low + 1);
        return low + static_cast<std::int64_t>(next() % choices);
    }

    bool chance(int percent) { return between(1, 100) <= percent; }

    template <typename T>
    const T& one_of(const std::vector<T>& list) {
        return list[static_cast<std::size_t>(between(0, static_cast<std::int64_t>(list.size()) - 1))];
    }

private:
    std::uint64_t state_;
};

}  // namespace checker
