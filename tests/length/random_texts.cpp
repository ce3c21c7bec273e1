#include <doctest/doctest.h>

#include <random>
#include <string>
#include <vector>

#include <boost/multiprecision/cpp_int.hpp>
#include <nlohmann/json.hpp>

#include "effort.h"
#include "length/text.h"

using namespace kw;
using Rational = boost::multiprecision::cpp_rational;
using Integer = boost::multiprecision::cpp_int;

namespace {

std::mt19937_64 random_source(7919);

int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(random_source); }
template <class T>
const T& one_of(const std::vector<T>& all) {
    return all[static_cast<std::size_t>(below(static_cast<int>(all.size())))];
}

// A number as written and as it is; arithmetic by Boost.Multiprecision.
struct Written {
    std::string text;
    Rational value;
};

Written random_fraction() {
    const int under = one_of<int>({2, 3, 4, 8, 10, 16, 32, 64, 100, 256});
    const int over = 1 + below(2 * under);
    const std::string line = one_of<std::string>({"/", " / ", "\u2044"});
    return {std::to_string(over) + line + std::to_string(under), Rational(over, under)};
}

Written random_decimal() {
    const int places = below(7);
    std::string digits;
    Integer value = 0, scale = 1;
    for (int i = 0; i < places; ++i) {
        const int digit = below(10);
        digits += static_cast<char>('0' + digit);
        value = value * 10 + digit;
        scale *= 10;
    }
    const int whole = below(2000);
    return {std::to_string(whole) + one_of<std::string>({".", ","}) + digits, whole + Rational(value, scale)};
}

Written random_number() {
    const int whole = below(300);
    switch (below(4)) {
        case 0: return {std::to_string(whole), whole};
        case 1: return random_fraction();
        case 2: return random_decimal();
        default: break;
    }
    const Written fraction = random_fraction();
    const std::string joint = one_of<std::string>({" ", "-", "  ", "\u00a0", "\u2013"});
    return {std::to_string(whole) + joint + fraction.text, whole + fraction.value};
}

// Millimetres in the value.
Written random_term() {
    const Written number = random_number();
    const std::string space = one_of<std::string>({"", " ", "\u00a0"});
    if (below(5) == 0) {
        const int feet = below(9);
        const Written with_feet{
            std::to_string(feet) + one_of<std::string>({"'", " ft ", "′", " foot "}) + number.text,
            12 * feet + number.value};
        return {with_feet.text + one_of<std::string>({"\"", " in", "″", "''"}),
                with_feet.value * Rational(127, 5)};
    }
    struct Unit {
        std::vector<std::string> spellings;
        Rational mm;
    };
    const Unit unit = one_of<Unit>({{{"in", "inch", "inches", "\"", "″", "”", "''", "IN"}, Rational(127, 5)},
                                    {{"mm", "MM"}, 1},
                                    {{"cm"}, 10},
                                    {{"m"}, 1000},
                                    {{"ft", "'", "feet", "′"}, Rational(1524, 5)}});
    return {number.text + space + one_of(unit.spellings), number.value * unit.mm};
}

// Halves away from zero.
std::int64_t nearest(const Rational& value) {
    const Rational size = value < 0 ? Rational(-value) : value;
    const Integer twice = 2 * numerator(size) + denominator(size);
    const auto ticks = static_cast<std::int64_t>(Integer(twice / (2 * denominator(size))));
    return value < 0 ? -ticks : ticks;
}

}  // namespace

TEST_CASE("random sums in every notation come to the nearest tick of the exact sum") {
    const Rational kilometre_mm = 1'000'000;
    for (int i = 0; i < kw::tests::cases(10'000); ++i) {
        Written sum;
        bool within = true;
        for (int terms = 1 + below(4), n = 0; n < terms; ++n) {
            const Written term = random_term();
            const bool minus = below(2) == 0;
            if (n > 0 || minus) sum.text += minus ? one_of<std::string>({" - ", " \u2212 "}) : " + ";
            sum.text += term.text;
            sum.value += minus ? Rational(-term.value) : term.value;
            if (term.value > kilometre_mm || abs(sum.value) > kilometre_mm) within = false;
        }
        const auto length = read_length(sum.text, Unit::inch);
        REQUIRE_MESSAGE(length.has_value() == within, sum.text);
        if (within) REQUIRE_MESSAGE(length->ticks() == nearest(sum.value * 800'000), sum.text);
    }
}

namespace {

std::string random_bytes() {
    std::string text;
    for (int length = below(24); length > 0; --length) text += static_cast<char>(below(256));
    return text;
}

// Pieces that belong in a length, in no order.
std::string random_pieces() {
    static const std::vector<std::string> pieces = {
        "0",  "1", "16", "999999999", "00", " ",  " ",      " ",    ".",        ",",  "/",
        "⁄",  "-", "+",  "−",         "–",  "in", "mm",     "cm",   "m",        "ft", "'",
        "\"", "″", "''", "inch",      "½",  "⅓",  "\u00a0", "\xc2", "\xe2\x80", "x"};
    std::string text;
    for (int length = below(12); length > 0; --length) text += one_of(pieces);
    return text;
}

// Either a length within a kilometre, or a message that any reader can show, with a column in the text.
void check_sane(const std::string& text) {
    for (const Unit bare : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
        const auto length = read_length(text, bare);
        if (length) {
            REQUIRE(abs(*length) <= Length::millimetres(1'000'000));
            REQUIRE(read_length(exact_text(*length, bare), bare).value() == *length);
        } else {
            REQUIRE(length.error().column <= text.size());
            REQUIRE_FALSE(length.error().message.empty());
            REQUIRE_NOTHROW(
                (void)nlohmann::json(length.error().message.text({})).dump());  // throws on broken UTF-8
        }
    }
}

}  // namespace

TEST_CASE("whatever is typed, the reader gives a length or says where it stumbled") {
    for (int i = 0; i < kw::tests::cases(20'000); ++i) check_sane(random_bytes());
    for (int i = 0; i < kw::tests::cases(40'000); ++i) check_sane(random_pieces());
    check_sane(std::string(1, '\0'));
    check_sane(std::string(100'000, '9'));
    check_sane(std::string(100'000, '-'));
    check_sane("0." + std::string(100'000, '1'));
    std::string long_sum = "1";
    for (int i = 0; i < 2'000; ++i) long_sum += " + 1/64";
    check_sane(long_sum);
}
