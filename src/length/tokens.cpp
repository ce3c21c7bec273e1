#include "length/tokens.h"

#include <array>
#include <string>

namespace kw {
namespace {

constexpr std::int64_t most_digits_value = 1'000'000'000;  // beyond any shop; keeps every product within 64 bits

struct Spelling {
    std::string_view text;
    Token token;
};

Token unit_token(Unit unit, std::int64_t count = 1) {
    Token token{TokenKind::unit, 0, 0, 1, unit, count, false};
    return token;
}
Token simple(TokenKind kind) { return Token{kind, 0, 0, 1, Unit::inch, 1, false}; }
Token part(std::int64_t n, std::int64_t d) { return Token{TokenKind::fraction, 0, n, d, Unit::inch, 1, false}; }

// Longer spellings stand before those that they begin with.
const std::vector<Spelling>& spellings() {
    static const std::vector<Spelling> table = {
        {"inches", unit_token(Unit::inch)}, {"inch", unit_token(Unit::inch)}, {"in", unit_token(Unit::inch)},
        {"\"", unit_token(Unit::inch)},     {"″", unit_token(Unit::inch)},    {"”", unit_token(Unit::inch)},
        {"''", unit_token(Unit::inch)},     {"mm", unit_token(Unit::millimetre)},
        {"cm", unit_token(Unit::centimetre)}, {"m", unit_token(Unit::millimetre, 1000)},
        {"feet", simple(TokenKind::feet)},  {"foot", simple(TokenKind::feet)}, {"ft", simple(TokenKind::feet)},
        {"'", simple(TokenKind::feet)},     {"′", simple(TokenKind::feet)},   {"’", simple(TokenKind::feet)},
        {"+", simple(TokenKind::plus)},     {"-", simple(TokenKind::minus)},  {"−", simple(TokenKind::minus)},
        {"–", simple(TokenKind::minus)},    {"½", part(1, 2)},  {"¼", part(1, 4)},  {"¾", part(3, 4)},
        {"⅛", part(1, 8)},  {"⅜", part(3, 8)},  {"⅝", part(5, 8)},  {"⅞", part(7, 8)},  {"⅓", part(1, 3)},
        {"⅔", part(2, 3)},
    };
    return table;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

class Scanner {
public:
    explicit Scanner(std::string_view text) : text_(text) {}

    tl::expected<std::vector<Token>, ReadError> all() {
        std::vector<Token> tokens;
        for (;;) {
            skip_space();
            auto token = next();
            if (!token) return tl::unexpected(token.error());
            tokens.push_back(*token);
            if (token->kind == TokenKind::end) return tokens;
        }
    }

private:
    tl::expected<Token, ReadError> next() {
        const std::size_t start = at_;
        if (at_ == text_.size()) return Token{TokenKind::end, start, 0, 1, Unit::inch, 1, false};
        if (is_digit(text_[at_]) || ((text_[at_] == '.' || text_[at_] == ',') && digit_at(at_ + 1))) return number();
        for (const Spelling& spelling : spellings()) {
            if (text_.substr(at_, spelling.text.size()) != spelling.text) continue;
            at_ += spelling.text.size();
            Token token = spelling.token;
            token.column = start;
            token.glued = start > 0 && !space_before(start) && !space_at(at_);
            return token;
        }
        return error(start, "not a number, a fraction or a unit (in, mm, cm, ft)");
    }

    tl::expected<Token, ReadError> number() {
        Token token{TokenKind::whole, at_, 0, 1, Unit::inch, 1, false};
        if (!digits(token.numerator, nullptr)) return error(token.column, "this number is too large");
        if (slash_at(at_)) return denominator(token);
        if (at_ < text_.size() && (text_[at_] == '.' || text_[at_] == ',')) {
            token.kind = TokenKind::decimal;
            ++at_;
            if (!digits(token.numerator, &token.denominator))
                return error(token.column, "this number has too many digits");
            if (at_ < text_.size() && (text_[at_] == '.' || text_[at_] == ','))
                return error(at_, "two decimal points in one number");
        }
        return token;
    }

    tl::expected<Token, ReadError> denominator(Token token) {
        token.kind = TokenKind::fraction;
        at_ += slash_at(at_);
        const std::size_t start = at_;
        if (!digit_at(at_)) return error(start, "a fraction needs a number under its line");
        token.denominator = 0;
        if (!digits(token.denominator, nullptr)) return error(start, "this number is too large");
        if (token.denominator == 0) return error(start, "a fraction over zero");
        return token;
    }

    // Reads digits onto `value`; with `scale`, each digit makes the scale ten times larger. False if too many.
    bool digits(std::int64_t& value, std::int64_t* scale) {
        for (; digit_at(at_); ++at_) {
            const bool full = scale ? *scale >= most_digits_value : value >= most_digits_value / 10;
            if (full || value > most_digits_value * 100'000) return false;
            value = value * 10 + (text_[at_] - '0');
            if (scale) *scale *= 10;
        }
        return true;
    }

    // How many bytes a fraction's line takes here: `/`, or U+2044 in three bytes; 0 if there is none.
    std::size_t slash_at(std::size_t i) const {
        if (text_.substr(i, 1) == "/") return 1;
        return text_.substr(i, 3) == "⁄" ? 3 : 0;
    }

    std::size_t space_length(std::size_t i) const {
        for (const std::string_view space : {" ", "\t", "\u00a0", "\u2009", "\u202f"})
            if (text_.substr(i, space.size()) == space) return space.size();
        return 0;
    }
    bool space_at(std::size_t i) const { return i >= text_.size() || space_length(i) > 0; }
    bool space_before(std::size_t i) const { return after_space_ == i; }
    void skip_space() {
        while (at_ < text_.size() && space_length(at_) > 0) {
            at_ += space_length(at_);
            after_space_ = at_;
        }
    }
    bool digit_at(std::size_t i) const { return i < text_.size() && is_digit(text_[i]); }

    static tl::unexpected<ReadError> error(std::size_t column, std::string message) {
        return tl::unexpected(ReadError{column, std::move(message)});
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t after_space_ = std::string_view::npos;
};

}  // namespace

tl::expected<std::vector<Token>, ReadError> tokens_of(std::string_view text) { return Scanner(text).all(); }

}  // namespace kw
