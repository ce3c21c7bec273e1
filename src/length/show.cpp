#include <cstdlib>
#include <numeric>

#include "length/text.h"

namespace kw {
namespace {

struct Scale {
    std::int64_t step_ticks;
    std::int64_t per_unit;  // steps in one unit
    int decimals;           // 0: fractions
    Unit unit;
};

Scale scale_of(Graduation graduation) {
    constexpr std::int64_t inch = Length::ticks_per_inch;
    constexpr std::int64_t mm = Length::ticks_per_mm;
    switch (graduation) {
        case Graduation::in_64: return {inch / 64, 64, 0, Unit::inch};
        case Graduation::in_32: return {inch / 32, 32, 0, Unit::inch};
        case Graduation::in_16: return {inch / 16, 16, 0, Unit::inch};
        case Graduation::in_001: return {inch / 1000, 1000, 3, Unit::inch};
        case Graduation::mm_0_01: return {mm / 100, 100, 2, Unit::millimetre};
        case Graduation::mm_0_1: return {mm / 10, 10, 1, Unit::millimetre};
        case Graduation::mm_0_5: return {mm / 2, 2, 1, Unit::millimetre};
    }
    return {1, 1, 0, Unit::inch};
}

std::string mixed_text(std::int64_t numerator, std::int64_t denominator) {
    const std::int64_t whole = numerator / denominator;
    const std::int64_t over = numerator % denominator;
    if (over == 0) return std::to_string(whole);
    const std::int64_t common = std::gcd(over, denominator);
    const std::string fraction = std::to_string(over / common) + "/" + std::to_string(denominator / common);
    return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

// `count` of `per_unit` parts, written with `decimals` digits.
std::string decimal_text(std::int64_t count, std::int64_t per_unit, int decimals) {
    std::int64_t ten = 1;
    for (int i = 0; i < decimals; ++i) ten *= 10;
    std::string digits = std::to_string(count % per_unit * (ten / per_unit));
    digits.insert(0, static_cast<std::size_t>(decimals) - digits.size(), '0');
    return std::to_string(count / per_unit) + "." + digits;
}

// Ticks as a plain decimal of a unit, or nothing where `most` digits do not hold it.
std::string exact_decimal(std::int64_t ticks, std::int64_t per_unit, int most) {
    std::string out = std::to_string(ticks / per_unit);
    std::int64_t rest = ticks % per_unit;
    if (rest == 0) return out;
    out += '.';
    for (int i = 0; i < most && rest != 0; ++i) {
        rest *= 10;
        out += static_cast<char>('0' + rest / per_unit);
        rest %= per_unit;
    }
    return rest == 0 ? out : std::string{};
}

std::string exact_inches(std::int64_t ticks) {
    constexpr std::int64_t finest = 256;
    if (ticks % (Length::ticks_per_inch / finest) == 0)
        return mixed_text(ticks / (Length::ticks_per_inch / finest), finest) + " in";
    const std::string decimal = exact_decimal(ticks, Length::ticks_per_inch, 4);
    return decimal.empty() ? decimal : decimal + " in";
}

}  // namespace

Unit unit_of(Graduation graduation) { return scale_of(graduation).unit; }

std::string show(Length length, Graduation graduation) {
    const Scale scale = scale_of(graduation);
    const std::int64_t size = std::abs(length.ticks());
    const std::int64_t steps = (size + scale.step_ticks / 2) / scale.step_ticks;
    const std::int64_t rest = size - steps * scale.step_ticks;
    const bool negative = length.ticks() < 0;
    std::string out = scale.decimals == 0 ? mixed_text(steps, scale.per_unit)
                                          : decimal_text(steps, scale.per_unit, scale.decimals);
    if (negative && steps > 0) out = "−" + out;
    if (4 * std::abs(rest) > scale.step_ticks) out += (rest > 0) != negative ? " +" : " −";
    return out;
}

std::string show_with_unit(Length length, Graduation graduation) {
    return show(length, graduation) + (unit_of(graduation) == Unit::inch ? " in" : " mm");
}

std::string exact_text(Length length, Unit unit) {
    const std::int64_t size = std::abs(length.ticks());
    std::string text;
    if (unit == Unit::inch) text = exact_inches(size);
    if (unit == Unit::centimetre) {
        text = exact_decimal(size, 10 * Length::ticks_per_mm, 9);
        if (!text.empty()) text += " cm";
    }
    // A tick is 0.00000125 mm: eight decimals hold every length.
    if (text.empty()) text = exact_decimal(size, Length::ticks_per_mm, 8) + " mm";
    return length.ticks() < 0 ? "-" + text : text;
}

}  // namespace kw
