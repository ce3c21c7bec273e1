#include "checker/written_length.h"

#include <cctype>
#include <stdexcept>

namespace checker {
namespace {

class Reader {
public:
    Reader(const std::string& text, Unit bare) : text_(text), bare_(bare) {}

    double sum_mm() {
        skip_blanks();
        double total_mm = term_mm();
        for (skip_blanks(); at_ < text_.size(); skip_blanks()) {
            const char sign = text_[at_];
            if (sign != '+' && sign != '-') fail();
            ++at_;
            skip_blanks();
            const double next_mm = term_mm();
            total_mm += sign == '+' ? next_mm : -next_mm;
        }
        return total_mm;
    }

private:
    [[noreturn]] void fail() const { throw std::invalid_argument("not a length: " + text_); }

    bool digit(std::size_t ahead = 0) const {
        return at_ + ahead < text_.size() &&
               std::isdigit(static_cast<unsigned char>(text_[at_ + ahead])) != 0;
    }
    bool next_is(const std::string& word) const { return text_.compare(at_, word.size(), word) == 0; }
    bool take(const std::string& word) {
        if (!next_is(word)) return false;
        at_ += word.size();
        return true;
    }
    void skip_blanks() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    }

    double digits() {
        if (!digit()) fail();
        double value = 0;
        for (; digit(); ++at_) value = value * 10 + (text_[at_] - '0');
        return value;
    }

    double decimals() {
        double value = 0;
        double place = 1;
        if (!digit()) fail();
        for (; digit(); ++at_) value += (text_[at_] - '0') * (place /= 10);
        return value;
    }

    double denominator() {
        const double value = digits();
        if (value == 0) fail();
        return value;
    }

    // The fraction of a mixed number, if one follows: " 1/16" or "-1/16".
    double following_fraction() {
        const std::size_t start = at_;
        if (!take("-")) skip_blanks();
        if (at_ > start && digit()) {
            const double above = digits();
            if (take("/")) return above / denominator();
        }
        at_ = start;
        return 0;
    }

    double number() {
        const double whole = digits();
        if (take("/")) return whole / denominator();
        if ((next_is(".") || next_is(",")) && digit(1)) {
            ++at_;
            return whole + decimals();
        }
        return whole + following_fraction();
    }

    double inches_after_feet() {
        const std::size_t start = at_;
        skip_blanks();
        if (!digit()) {
            at_ = start;
            return 0;
        }
        const double inches = number();
        skip_blanks();
        if (!take("\"")) take("in");
        return inches;
    }

    double term_mm() {
        const double value = number();
        const std::size_t after_number = at_;
        skip_blanks();
        if (take("'")) return (value * 12 + inches_after_feet()) * inch_mm;
        if (take("\"") || take("in")) return value * inch_mm;
        if (take("mm")) return value;
        if (take("cm")) return value * 10;
        at_ = after_number;
        return bare_ == Unit::inch ? value * inch_mm : value;
    }

    const std::string& text_;
    Unit bare_;
    std::size_t at_ = 0;
};

}  // namespace

double read_length_mm(const std::string& text, Unit bare) { return Reader(text, bare).sum_mm(); }

double read_length_mm(const Json& value, Unit bare) {
    if (value.is_string()) return read_length_mm(value.get<std::string>(), bare);
    if (value.is_number()) return value.get<double>() * (bare == Unit::inch ? inch_mm : 1);
    throw std::invalid_argument("not a length: " + value.dump());
}

}  // namespace checker
