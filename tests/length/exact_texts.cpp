#include <doctest/doctest.h>

#include <random>

#include "length/text.h"

using namespace kw;

TEST_CASE("exact texts, word for word") {
    CHECK(exact_text(Length::inches(161, 16), Unit::inch) == "10 1/16 in");
    CHECK(exact_text(-Length::inches(1, 256), Unit::inch) == "-1/256 in");
    CHECK(exact_text(Length::inches(12), Unit::inch) == "12 in");
    CHECK(exact_text(Length::inches(123, 10'000), Unit::inch) == "0.0123 in");
    CHECK(exact_text(Length::inches(4, 1'000), Unit::inch) == "0.004 in");
    CHECK(exact_text(Length::micrometres(12'100), Unit::millimetre) == "12.1 mm");
    CHECK(exact_text(Length::micrometres(12'100), Unit::inch) == "12.1 mm");  // 12.1 / 25.4 has no end
    CHECK(exact_text(Length::micrometres(12'100), Unit::centimetre) == "1.21 cm");
    CHECK(exact_text(Length::inches(1, 64), Unit::millimetre) == "0.396875 mm");
    CHECK(exact_text(Length::from_ticks(1), Unit::millimetre) == "0.00000125 mm");
    CHECK(exact_text(Length::from_ticks(1), Unit::inch) == "0.00000125 mm");
    CHECK(exact_text(Length::from_ticks(1), Unit::centimetre) == "0.00000125 mm");
    CHECK(exact_text(Length::from_ticks(127), Unit::inch) == "0.00000625 in");
    CHECK(exact_text(Length{}, Unit::inch) == "0 in");
    CHECK(exact_text(Length{}, Unit::millimetre) == "0 mm");
}

TEST_CASE("an exact text reads back as exactly the same length, whatever the job's unit") {
    std::mt19937_64 random(1959);
    const std::int64_t kilometre = Length::millimetres(1'000'000).ticks();
    std::uniform_int_distribution<std::int64_t> anywhere(-kilometre, kilometre);
    std::uniform_int_distribution<std::int64_t> shop(-2'000'000'000, 2'000'000'000);
    std::uniform_int_distribution<std::int64_t> count(-100'000, 100'000);
    for (int i = 0; i < 1'000; ++i) {
        for (const Length length : {Length::from_ticks(anywhere(random)), Length::from_ticks(shop(random)),
                                    Length::inches(count(random), 256), Length::inches(count(random), 10'000),
                                    Length::micrometres(count(random))}) {
            for (const Unit unit : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
                const std::string text = exact_text(length, unit);
                for (const Unit bare : {Unit::inch, Unit::millimetre}) {
                    const auto back = read_length(text, bare);
                    REQUIRE_MESSAGE(back.has_value(), text);
                    REQUIRE_MESSAGE(*back == length, text);
                }
            }
        }
    }
}
