#pragma once
// Exact lengths. One tick is 1.25 nm, so that every value a maker writes in inches or millimetres is a
// whole count: 1 um = 800 ticks, 0.0001 in = 2032 ticks, 1/256 in = 79 375 ticks. The inch is 25.4 mm
// exactly (addendum to NBS Circular 572, in force since 1 July 1959). Equal settings compare equal, and
// 64 bits reach to eleven million kilometres, so sums of shop lengths cannot overflow.

#include <compare>
#include <cstdint>

namespace kw {

class Length {
public:
    constexpr Length() = default;

    static constexpr Length from_ticks(std::int64_t ticks) { return Length(ticks); }
    static constexpr Length micrometres(std::int64_t count) { return Length(count * ticks_per_micrometre); }
    static constexpr Length millimetres(std::int64_t count) { return micrometres(count * 1000); }

    // `numerator`/`denominator` of an inch. Exact for the denominators in use: powers of two up to 256,
    // and powers of ten up to 10 000. Others round to the nearest tick.
    static constexpr Length inches(std::int64_t numerator, std::int64_t denominator = 1) {
        return Length(divide_nearest(numerator * ticks_per_inch, denominator));
    }

    // The nearest tick to a computed double; for the estimator's results, never for what a maker typed.
    static Length nearest_mm(double mm);

    constexpr std::int64_t ticks() const { return ticks_; }
    constexpr double mm() const { return static_cast<double>(ticks_) / static_cast<double>(ticks_per_mm); }

    constexpr auto operator<=>(const Length&) const = default;

    constexpr Length operator-() const { return Length(-ticks_); }
    constexpr Length& operator+=(Length other) {
        ticks_ += other.ticks_;
        return *this;
    }
    constexpr Length& operator-=(Length other) {
        ticks_ -= other.ticks_;
        return *this;
    }
    friend constexpr Length operator+(Length a, Length b) { return a += b; }
    friend constexpr Length operator-(Length a, Length b) { return a -= b; }
    friend constexpr Length operator*(std::int64_t n, Length a) { return Length(n * a.ticks_); }
    friend constexpr Length operator*(Length a, std::int64_t n) { return n * a; }

    // A fraction of a length, to the nearest tick; halves go away from zero.
    constexpr Length scaled(std::int64_t numerator, std::int64_t denominator) const {
        return Length(divide_nearest(ticks_ * numerator, denominator));
    }

    static constexpr std::int64_t ticks_per_micrometre = 800;
    static constexpr std::int64_t ticks_per_mm = 1000 * ticks_per_micrometre;
    static constexpr std::int64_t ticks_per_inch = 25400 * ticks_per_micrometre;

private:
    explicit constexpr Length(std::int64_t ticks) : ticks_(ticks) {}

    static constexpr std::int64_t divide_nearest(std::int64_t a, std::int64_t b) {
        const std::int64_t half = (b < 0 ? -b : b) / 2;
        return (a < 0 ? a - half : a + half) / b;
    }

    std::int64_t ticks_ = 0;
};

constexpr Length abs(Length a) { return a < Length{} ? -a : a; }
constexpr Length min(Length a, Length b) { return b < a ? b : a; }
constexpr Length max(Length a, Length b) { return a < b ? b : a; }

}  // namespace kw
