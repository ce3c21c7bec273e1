#include <doctest/doctest.h>

#include <string>

#include "length/text.h"

using namespace kw;

namespace {

struct Refused {
    std::string text;
    std::size_t column;
    std::string message;
};

void check_refused(const Refused& expected, Unit bare) {
    CAPTURE(expected.text);
    const auto length = read_length(expected.text, bare);
    REQUIRE_FALSE(length.has_value());
    CHECK(length.error().message.text({}) == expected.message);
    CHECK(length.error().column == expected.column);
}

}  // namespace

TEST_CASE("messages, word for word: numbers") {
    const Refused all[] = {
        {"", 0, "a length is missing"},
        {"  ", 2, "a length is missing"},
        {"in", 0, "`in`: a number is missing"},
        {"12 +", 4, "`12 +`: a number is missing after the sign"},
        {"- -3", 2, "`- -3`: a number is missing after the sign"},
        {"12 - in", 5, "`12 - in`: a number is missing after the sign"},
        {"1.2.3", 3, "`1.2.3`: two decimal marks in one number"},
        {"1.234,5 mm", 5, "`1.234,5 mm`: two decimal marks in one number"},
        {"12 1/0", 5, "`12 1/0`: a fraction over zero"},
        {"1/00", 2, "`1/00`: a fraction over zero"},
        {"/16", 0, "`/16`: a number is missing above the line of a fraction"},
        {"10 in /16", 6, "`10 in /16`: a number is missing above the line of a fraction"},
        {"12 1/", 5, "`12 1/`: a number is missing below the line of a fraction"},
        {"12 1/ in", 6, "`12 1/ in`: a number is missing below the line of a fraction"},
        {"1/2/3", 3, "`1/2/3`: two lines in one fraction"},
        {"1.5/2", 3, "`1.5/2`: a fraction takes whole numbers"},
        {"1/2.5", 3, "`1/2.5`: a fraction takes whole numbers"},
        {"1/1234567890", 2, "`1/1234567890`: too many digits below the line of a fraction"},
        {"10.5 1/4", 5, "`10.5 1/4`: a fraction follows a whole number only"},
        {"1/2 1/4", 4, "`1/2 1/4`: a fraction follows a whole number only"},
    };
    for (const Refused& expected : all)
        for (const Unit bare : {Unit::inch, Unit::millimetre, Unit::centimetre})
            check_refused(expected, bare);
}

TEST_CASE("messages, word for word: units and what else stands in the text") {
    const Refused all[] = {
        {"12 yd", 3, "`12 yd`: `yd` is not a unit known here: use in, ft, mm, cm or m"},
        {"12 inchworms", 3, "`12 inchworms`: `inchworms` is not a unit known here: use in, ft, mm, cm or m"},
        {"12 in in", 6, "`12 in in`: one unit too many"},
        {"1/2\"\"", 4, "`1/2\"\"`: one unit too many"},
        {"12 in 3", 6, "`12 in 3`: a + or - is missing before this number"},
        {"1 200 mm", 2, "`1 200 mm`: a + or - is missing before this number"},
        {"1' 30 mm", 6, "`1' 30 mm`: feet go with inches only"},
        {"10 #", 3, "`10 #`: `#` doesn't belong in a length"},
        {"10 × 2", 3, "`10 × 2`: `×` doesn't belong in a length"},
        {"10 in, more or less", 5, "`10 in, more or less`: `,` doesn't belong in a length"},
        {"10 \xff in", 3, "`10 ? in`: `?` doesn't belong in a length"},
    };
    for (const Refused& expected : all)
        for (const Unit bare : {Unit::inch, Unit::millimetre, Unit::centimetre})
            check_refused(expected, bare);
}

TEST_CASE("messages, word for word: nobody can tell which unit was meant") {
    check_refused({"12 mm + 3", 8, "`12 mm + 3`: give `3` a unit too"}, Unit::inch);
    check_refused({"1/2 in - 1 1/4", 9, "`1/2 in - 1 1/4`: give `1 1/4` a unit too"}, Unit::millimetre);
    check_refused({"1 m + 3", 6, "`1 m + 3`: give `3` a unit too"}, Unit::millimetre);
    check_refused({"1 cm + 3", 7, "`1 cm + 3`: give `3` a unit too"}, Unit::millimetre);
    check_refused({"1 ft - 3", 7, "`1 ft - 3`: give `3` a unit too"}, Unit::inch);
    check_refused({"1' 2\" - 3", 8, "`1' 2\" - 3`: give `3` a unit too"}, Unit::millimetre);
    check_refused({"1 in + 2 mm + 3", 14, "`1 in + 2 mm + 3`: give `3` a unit too"}, Unit::inch);
    check_refused({"11 1/16 + 3 mm", 0, "`11 1/16 + 3 mm`: give `11 1/16` a unit too"}, Unit::inch);
    check_refused({"10 + 2 mm", 0, "`10 + 2 mm`: give `10` a unit too"}, Unit::inch);
    check_refused({"13 1/2 - 1/4 in", 0, "`13 1/2 - 1/4 in`: give `13 1/2` a unit too"}, Unit::millimetre);
    check_refused({"2 + 1' 3\"", 0, "`2 + 1' 3\"`: give `2` a unit too"}, Unit::inch);
}

TEST_CASE("messages, word for word: out of a shop's reach") {
    check_refused({"1000.001 m", 0, "`1000.001 m`: more than a kilometre"}, Unit::inch);
    check_refused({"3 mm - 1001 m", 7, "`3 mm - 1001 m`: more than a kilometre"}, Unit::inch);
    check_refused({"600 m + 600 m", 8, "`600 m + 600 m`: more than a kilometre"}, Unit::inch);
    check_refused({"-600 m - 600 m", 9, "`-600 m - 600 m`: more than a kilometre"}, Unit::inch);
    check_refused({"1000000000", 0, "`1000000000`: more than a kilometre"}, Unit::millimetre);
    check_refused({"99999999999999999999999999", 0, "`99999999999999999999999999`: more than a kilometre"},
                  Unit::inch);
    check_refused({"999999999' 999999999\"", 0, "`999999999' 999999999\"`: more than a kilometre"},
                  Unit::inch);
    check_refused({"1/999999999 + 1/999999998", 14,
                   "`1/999999999 + 1/999999998`: these fractions are too unlike to be added"},
                  Unit::inch);
    CHECK(read_length("1000 m", Unit::inch).has_value());
}

TEST_CASE("a long text is cut off in its message") {
    const auto length = read_length("1 in + 1 in + 1 in + 1 in + 1 in + 1 in + 1 in + 1 in!", Unit::inch);
    REQUIRE_FALSE(length.has_value());
    CHECK(length.error().column == 53);
    CHECK(length.error().message.text({}) ==
          "`1 in + 1 in + 1 in + 1 in + 1 in + 1 in …`: `!` doesn't belong in a length");
}
