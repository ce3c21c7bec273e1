#include "length/terms.h"

#include <string>

namespace kw {
namespace {

class Parser {
public:
    explicit Parser(const std::vector<Token>& tokens) : tokens_(tokens) {}

    tl::expected<std::vector<Term>, ReadError> all() {
        if (here().kind == TokenKind::end) return error("read.length_missing");
        std::vector<Term> terms;
        do {
            if (!terms.empty() && !here().is_sign()) return error(why_nothing_follows());
            auto next = term();
            if (!next) return tl::unexpected(next.error());
            terms.push_back(*next);
        } while (here().kind != TokenKind::end);
        return terms;
    }

private:
    tl::expected<Term, ReadError> term() {
        Term term;
        const bool signed_term = here().is_sign();
        if (signed_term) term.negative = take().kind != TokenKind::plus;
        term.column = here().column;
        if (!here().is_number())
            return error(signed_term ? "read.number_missing_after_sign" : "read.number_missing");
        term.amount = number();
        if (here().kind == TokenKind::measure) term.measure = take().measure;
        if (term.measure == Measure::foot && inches_follow()) {
            term.feet = term.amount;
            if (here().is_sign()) take();
            term.amount = number();
            term.measure = Measure::inch;
            if (here().kind == TokenKind::measure && take().measure != Measure::inch) {
                --at_;
                return error("read.feet_with_inches");
            }
        }
        term.end = tokens_[at_ - 1].end;
        return term;
    }

    // Whole, mixed, a fraction or a decimal.
    Ratio number() {
        const Token first = take();
        if (first.kind != TokenKind::whole) return first.value;
        const bool joined = hyphen_joins() && tokens_[at_ + 1].kind == TokenKind::fraction;
        if (!joined && here().kind != TokenKind::fraction) return first.value;
        if (joined) take();
        const Ratio part = take().value;
        return {first.value.over * part.under + part.over, part.under};
    }

    // 1' 2" and, as drawings have it, 1'-2".
    bool inches_follow() const {
        return here().is_number() || (hyphen_joins() && tokens_[at_ + 1].is_number());
    }

    // A hyphen with no space on either side.
    bool hyphen_joins() const {
        return here().kind == TokenKind::hyphen && tokens_[at_ - 1].end == here().column &&
               here().end == tokens_[at_ + 1].column;
    }

    const char* why_nothing_follows() const {
        if (!here().is_number()) return "read.unit_too_many";
        if (here().kind == TokenKind::fraction && tokens_[at_ - 1].is_number())
            return "read.fraction_follows_whole";
        return "read.sign_missing";
    }

    const Token& here() const { return tokens_[at_]; }
    const Token& take() { return tokens_[at_++]; }
    tl::unexpected<ReadError> error(const char* key) const {
        return tl::unexpected(ReadError{here().column, Message::say(key)});
    }

    const std::vector<Token>& tokens_;
    std::size_t at_ = 0;
};

}  // namespace

tl::expected<std::vector<Term>, ReadError> terms_of(const std::vector<Token>& tokens) {
    return Parser(tokens).all();
}

}  // namespace kw
