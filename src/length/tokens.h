#pragma once
// What a length text is made of, before it means anything. Private to this folder.

#include <string_view>
#include <vector>

#include "length/ratio.h"
#include "length/text.h"

namespace kw {

// The units that a maker may write.
enum class Measure { inch, foot, millimetre, centimetre, metre };

enum class TokenKind { whole, decimal, fraction, measure, plus, minus, hyphen, end };

struct Token {
    TokenKind kind = TokenKind::end;
    std::size_t column = 0;  // first byte
    std::size_t end = 0;     // one past the last
    Ratio value{};           // of a number
    Measure measure = Measure::inch;

    bool is_number() const {
        return kind == TokenKind::whole || kind == TokenKind::decimal || kind == TokenKind::fraction;
    }
    bool is_sign() const {
        return kind == TokenKind::plus || kind == TokenKind::minus || kind == TokenKind::hyphen;
    }
};

// The last token is always TokenKind::end.
tl::expected<std::vector<Token>, ReadError> tokens_of(std::string_view text);

}  // namespace kw
