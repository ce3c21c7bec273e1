#include <optional>

#include "length/tokens.h"

namespace kw {
namespace {

__extension__ typedef __int128 Wide;  // GNU extension, in every compiler we use, wasm included

constexpr std::int64_t ticks_per_foot = 12 * Length::ticks_per_inch;
constexpr Length farthest = Length::millimetres(1'000'000);

std::int64_t ticks_per(Unit unit) {
    switch (unit) {
        case Unit::inch: return Length::ticks_per_inch;
        case Unit::millimetre: return Length::ticks_per_mm;
        case Unit::centimetre: return 10 * Length::ticks_per_mm;
    }
    return 0;
}

struct Ratio {
    std::int64_t numerator = 0;
    std::int64_t denominator = 1;
};

// A term as written: a sign, an amount in its own unit, and feet beside it.
struct Term {
    std::size_t column = 0;
    bool negative = false;
    std::int64_t whole = 0;   // of a mixed number, or 0
    Ratio amount;             // the rest
    std::optional<Ratio> feet;
    bool has_amount = false;
    std::optional<Token> unit;
};

// To the nearest tick; halves away from zero.
std::optional<Length> ticks_of(const Ratio& ratio, Wide ticks_per_one) {
    const Wide product = Wide{ratio.numerator} * ticks_per_one;
    const Wide ticks = (product + ratio.denominator / 2) / ratio.denominator;
    if (ticks > farthest.ticks()) return std::nullopt;
    return Length::from_ticks(static_cast<std::int64_t>(ticks));
}

class Reader {
public:
    Reader(std::vector<Token> tokens, Unit bare) : tokens_(std::move(tokens)), bare_(bare) {}

    tl::expected<Length, ReadError> length() {
        if (peek().kind == TokenKind::end) return error(peek().column, "no length is written here");
        std::vector<Term> terms;
        do {
            auto term = read_term(terms.empty());
            if (!term) return tl::unexpected(term.error());
            terms.push_back(*term);
        } while (peek().kind != TokenKind::end);
        return sum(terms);
    }

private:
    tl::expected<Term, ReadError> read_term(bool first) {
        Term term;
        term.column = peek().column;
        if (peek().kind == TokenKind::plus || peek().kind == TokenKind::minus) {
            term.negative = take().kind == TokenKind::minus;
        } else if (!first) {
            return error(peek().column, "a `+` or a `-` must stand between two lengths");
        }
        if (auto problem = read_amount(term)) return tl::unexpected(*problem);
        if (peek().kind == TokenKind::feet) {
            take();
            term.feet = Ratio{term.whole * term.amount.denominator + term.amount.numerator, term.amount.denominator};
            term.whole = 0;
            term.amount = {};
            term.has_amount = false;
            const bool more = is_number(peek().kind);
            if (more)
                if (auto problem = read_amount(term)) return tl::unexpected(*problem);
        }
        if (peek().kind == TokenKind::unit) {
            const Token unit = take();
            if (!term.has_amount || (term.feet && unit.unit != Unit::inch))
                return error(unit.column, "feet go with inches only");
            term.unit = unit;
        }
        return term;
    }

    // A whole number, a mixed one, a fraction or a decimal.
    std::optional<ReadError> read_amount(Term& term) {
        if (!is_number(peek().kind)) return ReadError{peek().column, "a number is missing here"};
        term.has_amount = true;
        const Token first = take();
        term.amount = {first.numerator, first.denominator};
        if (first.kind != TokenKind::whole) return std::nullopt;
        const bool hyphen = peek().kind == TokenKind::minus && peek().glued &&
                            tokens_[at_ + 1].kind == TokenKind::fraction;
        if (hyphen) take();
        if (peek().kind != TokenKind::fraction) return std::nullopt;
        const Token fraction = take();
        term.whole = first.numerator;
        term.amount = {fraction.numerator, fraction.denominator};
        return std::nullopt;
    }

    tl::expected<Length, ReadError> sum(const std::vector<Term>& terms) {
        Length total;
        std::optional<Token> right;  // the nearest unit to the right
        for (auto term = terms.rbegin(); term != terms.rend(); ++term) {
            if (term->unit) right = term->unit;
            else if (term->feet) right = Token{TokenKind::unit, term->column, 0, 1, Unit::inch, 1, false};
            else if (!right && clashes(terms))
                return error(term->column, "say which unit this is in: the others have one");
            const auto size = size_of(*term, right);
            if (!size) return error(term->column, "longer than a kilometre");
            total += term->negative ? -*size : *size;
        }
        return total;
    }

    bool clashes(const std::vector<Term>& terms) const {
        for (const Term& term : terms)
            if (term.feet || (term.unit && term.unit->unit != bare_)) return !(term.feet && bare_ == Unit::inch);
        return false;
    }

    std::optional<Length> size_of(const Term& term, const std::optional<Token>& unit) const {
        const Wide per = unit ? Wide{unit->unit_count} * ticks_per(unit->unit) : Wide{ticks_per(bare_)};
        Length size;
        if (term.feet) {
            const auto feet = ticks_of(*term.feet, ticks_per_foot);
            if (!feet) return std::nullopt;
            size += *feet;
        }
        const auto whole = ticks_of({term.whole, 1}, per);
        const auto rest = ticks_of(term.amount, per);
        if (!whole || !rest || size + *whole + *rest > farthest) return std::nullopt;
        return size + *whole + *rest;
    }

    static bool is_number(TokenKind kind) {
        return kind == TokenKind::whole || kind == TokenKind::decimal || kind == TokenKind::fraction;
    }
    const Token& peek() const { return tokens_[at_]; }
    Token take() { return tokens_[at_++]; }
    static tl::unexpected<ReadError> error(std::size_t column, std::string message) {
        return tl::unexpected(ReadError{column, std::move(message)});
    }

    std::vector<Token> tokens_;
    std::size_t at_ = 0;
    Unit bare_;
};

}  // namespace

tl::expected<Length, ReadError> read_length(std::string_view text, Unit bare) {
    auto tokens = tokens_of(text);
    if (!tokens) return tl::unexpected(tokens.error());
    return Reader(std::move(*tokens), bare).length();
}

}  // namespace kw
