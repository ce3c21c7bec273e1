#include "length/digits.h"
#include "length/text.h"

namespace kw {
namespace {

struct Scale {
    Unit unit;
    std::int64_t steps_per_unit;
    int decimals;  // 0: fractions

    std::int64_t step_ticks() const {
        return (unit == Unit::inch ? Length::ticks_per_inch : Length::ticks_per_mm) / steps_per_unit;
    }
};

Scale scale_of(Graduation graduation) {
    switch (graduation) {
        case Graduation::in_64: return {Unit::inch, 64, 0};
        case Graduation::in_32: return {Unit::inch, 32, 0};
        case Graduation::in_16: return {Unit::inch, 16, 0};
        case Graduation::in_001: return {Unit::inch, 1000, 3};
        case Graduation::mm_0_01: return {Unit::millimetre, 100, 2};
        case Graduation::mm_0_1: return {Unit::millimetre, 10, 1};
        case Graduation::mm_0_5: return {Unit::millimetre, 2, 1};
    }
    return {Unit::inch, 64, 0};
}

struct Shown {
    std::string number;
    std::string mark;  // ` +`, ` −` or nothing
};

std::string steps_text(std::int64_t steps, const Scale& scale, const Words& words) {
    if (steps == 0) return "0";
    if (scale.decimals == 0) return mixed_text(steps, scale.steps_per_unit);
    std::int64_t nothing_left = 0;
    return std::to_string(steps / scale.steps_per_unit) + std::string(words.text("decimal.mark")) +
           decimals_text(steps, scale.steps_per_unit, scale.decimals, nothing_left);
}

Shown shown(Length length, const Locale& locale) {
    const Scale scale = scale_of(locale.graduation);
    const bool negative = length < Length{};
    const std::int64_t size = abs(length).ticks();
    const std::int64_t step = scale.step_ticks();
    const std::int64_t steps = (size + step / 2) / step;
    const std::int64_t rest = size - steps * step;
    Shown out{steps_text(steps, scale, locale.words()), ""};
    if (negative && steps > 0) out.number = "−" + out.number;
    if (4 * (rest < 0 ? -rest : rest) > step) out.mark = (rest > 0) != negative ? " +" : " −";
    return out;
}

}  // namespace

Unit unit_of(Graduation graduation) { return scale_of(graduation).unit; }

Length graduation_step(Graduation graduation) {
    return Length::from_ticks(scale_of(graduation).step_ticks());
}

std::string show(Length length, const Locale& locale) {
    const Shown text = shown(length, locale);
    return text.number + text.mark;
}

std::string show_with_unit(Length length, const Locale& locale) {
    const Shown text = shown(length, locale);
    const bool is_inch = unit_of(locale.graduation) == Unit::inch;
    return text.number + " " + std::string(locale.words().text(is_inch ? "unit.in" : "unit.mm")) + text.mark;
}

std::string without_mark(std::string text) {
    for (const char* mark : {" +", " \u2212"})
        if (text.ends_with(mark)) text.resize(text.size() - std::string(mark).size());
    return text;
}

}  // namespace kw
