#include "length/ratio.h"

namespace kw {
namespace {

Wide magnitude(Wide value) { return value < 0 ? -value : value; }

Wide common_divisor(Wide a, Wide b) {
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

}  // namespace

Ratio reduced(Ratio ratio) {
    const Wide common = common_divisor(magnitude(ratio.over), ratio.under);
    return {ratio.over / common, static_cast<std::int64_t>(ratio.under / common)};
}

Ratio times(Ratio ratio, std::int64_t count) { return reduced({ratio.over * count, ratio.under}); }

Ratio negated(Ratio ratio) { return {-ratio.over, ratio.under}; }

std::optional<Ratio> sum(Ratio a, Ratio b) {
    constexpr Wide largest = 1'000'000'000'000'000;
    const Wide common = a.under / common_divisor(a.under, b.under) * Wide{b.under};
    if (common > largest) return std::nullopt;
    const Wide over = a.over * (common / a.under) + b.over * (common / b.under);
    return reduced({over, static_cast<std::int64_t>(common)});
}

bool exceeds(Ratio ratio, std::int64_t limit) { return magnitude(ratio.over) > Wide{limit} * ratio.under; }

Length nearest_ticks(Ratio ratio) {
    const Wide size = (magnitude(ratio.over) + ratio.under / 2) / ratio.under;
    const auto ticks = static_cast<std::int64_t>(size);
    return Length::from_ticks(ratio.over < 0 ? -ticks : ticks);
}

}  // namespace kw
