#pragma once
// Whole numbers as fractions and decimals, in digits. Private to this folder.

#include <cstdint>
#include <numeric>
#include <string>

namespace kw {

// `10 1/16`, `3/8`, `4`. Neither may be negative.
inline std::string mixed_text(std::int64_t over, std::int64_t under) {
    const std::int64_t whole = over / under;
    const std::int64_t rest = over % under;
    if (rest == 0) return std::to_string(whole);
    const std::int64_t common = std::gcd(rest, under);
    const std::string fraction = std::to_string(rest / common) + "/" + std::to_string(under / common);
    return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

// The first `decimals` digits behind the point, by long division; `rest` gets what they leave over.
inline std::string decimals_text(std::int64_t over, std::int64_t under, int decimals, std::int64_t& rest) {
    std::string digits;
    rest = over % under;
    for (int i = 0; i < decimals; ++i) {
        rest *= 10;
        digits += static_cast<char>('0' + rest / under);
        rest %= under;
    }
    return digits;
}

}  // namespace kw
