#include <doctest/doctest.h>

#include <initializer_list>
#include <string>

#include "length/text.h"

using namespace kw;

namespace {

Length read(const std::string& text, Unit bare = Unit::inch) {
    const auto length = read_length(text, bare);
    REQUIRE_MESSAGE(length.has_value(), text << " was refused: " << length.error().message.text({}));
    return *length;
}

void all_read_as(Length expected, std::initializer_list<std::string> texts, Unit bare = Unit::inch) {
    for (const std::string& text : texts) {
        CAPTURE(text);
        CHECK(read(text, bare) == expected);
        CHECK(read("-" + text, bare) == -expected);
        CHECK(read("\u2212 " + text + " ", bare) == -expected);
        CHECK(read(" + " + text, bare) == expected);
    }
}

}  // namespace

TEST_CASE("ten and a sixteenth inches, as people write it") {
    all_read_as(Length::inches(161, 16), {"10 1/16",
                                          "10-1/16",
                                          "10-1/16 in",
                                          "10 1/16\"",
                                          "10 1/16''",
                                          "10 1/16″",
                                          "10 1/16”",
                                          "10  1 / 16 inch",
                                          "10 1⁄16 inches",
                                          "10\u00a01/16\u00a0in",
                                          "10\u202f1/16",
                                          "10\u20111/16",
                                          "10–1/16",
                                          "10 1/16IN",
                                          "10 1/16 in.",
                                          "161/16",
                                          "10.0625",
                                          "10,0625 in",
                                          "10.06250000000000000000",
                                          "9 17/16",
                                          "0010 01/16",
                                          "00000000000010 0000000000001/16"});
}

TEST_CASE("the fractions that keyboards have") {
    all_read_as(Length::inches(1, 2), {"½", "½\"", "1/2", "0½", ".5", ",5", "0.5", "0,50"});
    all_read_as(Length::inches(21, 2), {"10½", "10 ½", "10-½", "10½ in"});
    all_read_as(Length::inches(1, 4), {"¼"});
    all_read_as(Length::inches(3, 4), {"¾"});
    all_read_as(Length::inches(1, 8), {"⅛"});
    all_read_as(Length::inches(3, 8), {"⅜"});
    all_read_as(Length::inches(5, 8), {"⅝"});
    all_read_as(Length::inches(7, 8), {"⅞"});
    CHECK(3 * read("⅓ ft") == Length::inches(12));
    CHECK(3 * read("⅔ ft") == Length::inches(24));
}

TEST_CASE("feet and inches") {
    all_read_as(Length::inches(29, 2), {"1' 2 1/2\"", "1'2½\"", "1' 2 1/2", "1 ft 2 1/2 in", "1ft 2.5in",
                                        "1 foot 2-1/2 inches", "1′ 2½″", "1’ 2½”", "1'-2 1/2\"", "1'-2-1/2\"",
                                        "1 ft. 2 1/2 in.", "14 1/2", "1'2½''", "½' 8.5\"", "1'2½′′"});
    all_read_as(Length::inches(36), {"3 ft", "3'", "3 feet", "3′", "3.0 FT", "2 2/2 ft"});
}

TEST_CASE("between feet and inches a hyphen without spaces joins, as on drawings; with spaces it subtracts") {
    CHECK(read("5'-2\"") == Length::inches(62));
    CHECK(read("5' - 2\"") == Length::inches(58));
    CHECK(read("5' -2\"") == Length::inches(58));
    CHECK(read("5'\u22122\"") == Length::inches(58));
}

TEST_CASE("millimetres, centimetres and metres") {
    all_read_as(Length::micrometres(12'700),
                {"12.7 mm", "12,7 mm", "12.7mm", "12 7/10 mm", "1.27 cm", "0,0127 m", "1/2\""});
    all_read_as(Length::micrometres(12'700), {"12.7", "12,7", "1.27 cm", "½ in"}, Unit::millimetre);
    all_read_as(Length::micrometres(12'700), {"1.27", "1,27", "12.7mm"}, Unit::centimetre);
    all_read_as(Length::millimetres(1'000'000), {"1000 m", "1000000 mm"});
}

TEST_CASE(
    "a hyphen joins a whole number and a fraction only where no space stands beside it; elsewhere it "
    "subtracts") {
    CHECK(read("10-1/16") == Length::inches(161, 16));
    CHECK(read("10 - 1/16") == Length::inches(159, 16));
    CHECK(read("10 -1/16") == Length::inches(159, 16));
    CHECK(read("10- 1/16") == Length::inches(159, 16));
    CHECK(read("10\u00a0-1/16") == Length::inches(159, 16));
    CHECK(read("10\u22121/16") == Length::inches(159, 16));  // a proper minus sign is no hyphen
    CHECK(read("10-2") == Length::inches(8));
    CHECK(read("10.5-1/2") == Length::inches(10));
    CHECK(read("3/4-1/16") == Length::inches(11, 16));
    CHECK(read("10-1/16-1/16") == Length::inches(10));
    CHECK(read("13 1/2-1/4") == Length::inches(53, 4));
}

TEST_CASE("sums and differences") {
    CHECK(read("13 1/2 - 1/4") == Length::inches(53, 4));
    CHECK(read("1/8 + 1/16 - 1/32") == Length::inches(5, 32));
    CHECK(read("-1 + 3") == Length::inches(2));
    CHECK(read("1' 2\" - 1/4") == Length::inches(55, 4));
    CHECK(read("12 mm + 1/2 in") == Length::micrometres(24'700));
}

TEST_CASE("thirds add up to a whole: only the sum is rounded") {
    CHECK(read("1/3 + 1/3 + 1/3") == Length::inches(1));
    CHECK(read("1/7 mm + 2/7 mm + 4/7 mm") == Length::millimetres(1));
    CHECK(read("1/3 ft 1/3 in - 4 1/3 in") == Length{});
}

TEST_CASE("a term without a unit takes the first unit to its right, or else the job's") {
    CHECK(read("13 1/2 - 1/4 in") == Length::inches(53, 4));
    CHECK(read("10 + 2 cm", Unit::millimetre) == Length::millimetres(120));
    CHECK(read("1 + 1 cm + 1 + 1 mm", Unit::centimetre) == Length::millimetres(22));
    CHECK(read("2 + 3 ft") == Length::inches(60));
    CHECK(read("10 - 1", Unit::millimetre) == Length::millimetres(9));
    CHECK(read("10 mm - 1", Unit::millimetre) == Length::millimetres(9));
    CHECK(read("10 in - 1") == Length::inches(9));
}

TEST_CASE("what is no whole count of ticks goes to the nearest, halves away from zero") {
    // A tick is 0.00000125 mm.
    CHECK(read("0.000000624 mm") == Length{});
    CHECK(read("0.000000625 mm") == Length::from_ticks(1));
    CHECK(read("-0.000000625 mm") == Length::from_ticks(-1));
    CHECK(read("0.00000187499999999999999 mm") == Length::from_ticks(1));
    CHECK(read("1/3 in") == Length::from_ticks(6'773'333));
    CHECK(read("2/3 in") == Length::from_ticks(13'546'667));
    CHECK(read("0.33333333333333333333333333 in") == Length::from_ticks(6'773'333));
}
