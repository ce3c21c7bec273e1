#include "length/tokens.h"

#include <string>

#include "length/spellings.h"

namespace kw {
namespace {

// Nine digits pass a kilometre in every unit. Decimals past the twelfth are under a thousandth of a tick.
constexpr int most_whole_digits = 9;
constexpr int most_decimals = 12;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_decimal_mark(char c) { return c == '.' || c == ','; }

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
    using Result = tl::expected<Token, ReadError>;

    Result next() {
        if (at_ == text_.size()) return Token{TokenKind::end, at_, at_};
        if (is_digit(text_[at_]) || decimals_begin()) return number();
        if (is_letter(text_[at_])) return word();
        if (auto symbol = symbol_at(rest())) {
            symbol->column = at_;
            at_ += symbol->end;
            symbol->end = at_;
            return *symbol;
        }
        if (slash_at(rest()) > 0) return error(at_, Message::say("read.number_missing_above"));
        return error(at_, Message::say("read.does_not_belong",
                                       in_quotes(plain(rest().substr(0, character_at(rest()))))));
    }

    Result word() {
        const std::size_t start = at_;
        while (at_ < text_.size() && is_letter(text_[at_])) ++at_;
        const std::string_view word = text_.substr(start, at_ - start);
        const auto measure = measure_named(word);
        if (!measure) return error(start, Message::say("read.unknown_unit", in_quotes(plain(word))));
        if (at_ < text_.size() && text_[at_] == '.') ++at_;  // `in.`
        return Token{TokenKind::measure, start, at_, {}, *measure};
    }

    Result number() {
        Token token{TokenKind::whole, at_, at_};
        const auto whole = digits(most_whole_digits);
        if (!whole) return error(token.column, Message::say("read.too_long"));
        token.value.over = *whole;
        const std::size_t number_end = at_;
        skip_space();
        if (slash_at(rest()) > 0) return fraction(token);
        at_ = number_end;
        if (decimal_mark_here()) {
            token.kind = TokenKind::decimal;
            ++at_;
            read_decimals(token.value);
            if (decimal_mark_here()) return error(at_, Message::say("read.two_decimal_marks"));
            if (slash_at(rest()) > 0) return error(at_, Message::say("read.fraction_takes_whole"));
        }
        token.end = at_;
        return token;
    }

    // At the line of the fraction; the numerator is in `token`.
    Result fraction(Token token) {
        token.kind = TokenKind::fraction;
        at_ += slash_at(rest());
        skip_space();
        const std::size_t start = at_;
        if (!digit_here()) return error(start, Message::say("read.number_missing_below"));
        const auto under = digits(most_whole_digits);
        if (!under) return error(start, Message::say("read.too_many_digits"));
        if (*under == 0) return error(start, Message::say("read.over_zero"));
        if (decimal_mark_here()) return error(at_, Message::say("read.fraction_takes_whole"));
        if (slash_at(rest()) > 0) return error(at_, Message::say("read.two_lines"));
        token.value.under = *under;
        token.end = at_;
        return token;
    }

    // Nothing where there are more than `most` after the leading zeros.
    std::optional<std::int64_t> digits(int most) {
        std::int64_t value = 0;
        for (int count = 0; digit_here(); ++at_) {
            if (value > 0 || text_[at_] != '0') ++count;
            if (count > most) return std::nullopt;
            value = value * 10 + (text_[at_] - '0');
        }
        return value;
    }

    void read_decimals(Ratio& value) {
        for (int count = 0; digit_here(); ++at_, ++count) {
            if (count >= most_decimals) continue;
            value.over = value.over * 10 + (text_[at_] - '0');
            value.under *= 10;
        }
        value = reduced(value);
    }

    std::string_view rest() const { return text_.substr(at_); }
    bool digit_here() const { return at_ < text_.size() && is_digit(text_[at_]); }
    bool decimal_mark_here() const { return at_ < text_.size() && is_decimal_mark(text_[at_]); }
    bool decimals_begin() const {
        return decimal_mark_here() && at_ + 1 < text_.size() && is_digit(text_[at_ + 1]);
    }
    void skip_space() {
        while (const std::size_t bytes = space_at(rest())) at_ += bytes;
    }

    static tl::unexpected<ReadError> error(std::size_t column, Message message) {
        return tl::unexpected(ReadError{column, std::move(message)});
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace

tl::expected<std::vector<Token>, ReadError> tokens_of(std::string_view text) { return Scanner(text).all(); }

}  // namespace kw
