#include <optional>

#include "length/digits.h"
#include "length/text.h"

namespace kw {
namespace {

// Without needless zeros, or nothing where eight decimals don't hold it.
std::optional<std::string> decimal_text(std::int64_t ticks, std::int64_t ticks_per_unit) {
    std::int64_t rest = 0;
    std::string digits = decimals_text(ticks, ticks_per_unit, 8, rest);
    if (rest != 0) return std::nullopt;
    while (!digits.empty() && digits.back() == '0') digits.pop_back();
    return std::to_string(ticks / ticks_per_unit) + (digits.empty() ? "" : "." + digits);
}

std::optional<std::string> inch_text(std::int64_t ticks) {
    constexpr std::int64_t finest = 256;
    constexpr std::int64_t step = Length::ticks_per_inch / finest;
    if (ticks % step == 0) return mixed_text(ticks / step, finest);
    return decimal_text(ticks, Length::ticks_per_inch);
}

std::optional<std::string> text_in(std::int64_t ticks, Unit unit) {
    std::optional<std::string> number;
    if (unit == Unit::inch) number = inch_text(ticks);
    if (unit == Unit::centimetre) number = decimal_text(ticks, 10 * Length::ticks_per_mm);
    if (unit == Unit::millimetre) number = decimal_text(ticks, Length::ticks_per_mm);
    if (!number) return std::nullopt;
    return *number + (unit == Unit::inch ? " in" : unit == Unit::centimetre ? " cm" : " mm");
}

}  // namespace

std::string exact_text(Length length, Unit unit) {
    const std::int64_t size = abs(length).ticks();
    const auto text = text_in(size, unit);
    return (length < Length{} ? "-" : "") + (text ? *text : text_in(size, Unit::millimetre).value());
}

}  // namespace kw
