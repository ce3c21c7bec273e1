#pragma once
// What a maker's length text is made of, before it means anything. Private to this folder.

#include <cstdint>
#include <string_view>
#include <vector>

#include "length/text.h"

namespace kw {

enum class TokenKind { whole, decimal, fraction, unit, plus, minus, feet, end };

// Numbers are kept as exact ratios. `glued` tells a hyphen that has no space on either side.
struct Token {
    TokenKind kind = TokenKind::end;
    std::size_t column = 0;
    std::int64_t numerator = 0;
    std::int64_t denominator = 1;
    Unit unit = Unit::inch;
    std::int64_t unit_count = 1;  // 1 m is 1000 of its unit
    bool glued = false;
};

tl::expected<std::vector<Token>, ReadError> tokens_of(std::string_view text);

}  // namespace kw
