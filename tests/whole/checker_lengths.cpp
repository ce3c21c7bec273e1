// The check reads lengths by itself. Outside source: exact inch, 1 in = 25.4 mm; n/64 in = n * 0.396875 mm exactly.
#include <doctest/doctest.h>

#include <stdexcept>

#include "checker/amount.h"
#include "checker/random_job.h"
#include "checker/written_length.h"

using checker::Unit;

namespace {

double inches(const std::string& text) { return checker::read_length_mm(text, Unit::inch) / 25.4; }
double millimetres(const std::string& text) { return checker::read_length_mm(text, Unit::millimetre); }

}  // namespace

TEST_CASE("the check reads every notation that people use") {
    CHECK(inches("10 1/16") == doctest::Approx(10.0625));
    CHECK(inches("10-1/16 in") == doctest::Approx(10.0625));
    CHECK(inches("10 1/16\"") == doctest::Approx(10.0625));
    CHECK(inches("1' 2 1/2\"") == doctest::Approx(14.5));
    CHECK(inches("2'") == doctest::Approx(24));
    CHECK(inches("0.492in") == doctest::Approx(0.492));
    CHECK(inches("13 1/2 - 1/4") == doctest::Approx(13.25));
    CHECK(inches("13-1/2 in + 1/4 in") == doctest::Approx(13.75));
    CHECK(inches("12 - 1/4") == doctest::Approx(11.75));
    CHECK(inches("12.7 mm") == doctest::Approx(0.5));
    CHECK(millimetres("12,7") == doctest::Approx(12.7));
    CHECK(millimetres("1.27 cm") == doctest::Approx(12.7));
    CHECK(millimetres("5/64 in") == doctest::Approx(1.984375));
    CHECK(millimetres("300 - 2,5") == doctest::Approx(297.5));
}

TEST_CASE("the check refuses what is no length") {
    for (const char* text :
         {"", "12..5", "3/0", "3 1/", "1/2/4", "twelve", "12 yards", "12 +", "4 mm mm", "14 3/8 3/8"}) {
        CAPTURE(text);
        CHECK_THROWS_AS(millimetres(text), std::invalid_argument);
    }
}

TEST_CASE("an amount reads back as itself however it is written") {
    checker::Dice dice(77);
    for (int i = 0; i < 20000; ++i) {
        const Unit bare = dice.chance(50) ? Unit::inch : Unit::millimetre;
        checker::Amount amount = dice.chance(50) ? checker::in_64ths(dice.between(0, 3000))
                                                 : checker::in_thousandths(dice.between(0, 900));
        if (dice.chance(50))
            amount = dice.chance(50) ? checker::mm_tenths(dice.between(0, 9000))
                                     : checker::mm_hundredths(dice.between(0, 2000));
        const checker::Json text = checker::written(amount, bare, dice);
        CAPTURE(text.dump());
        CHECK(checker::read_length_mm(text, bare) == doctest::Approx(amount.mm()).epsilon(1e-12));
    }
}

TEST_CASE("a seed's job is the same on every machine") {
    // FNV-1a over the text of twenty jobs. The value is what g++ 12 and clang 14 both gave; it changes with the generator.
    std::uint64_t hash = 0xcbf29ce484222325U;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        for (const char c : checker::random_job(seed).dump()) {
            hash ^= static_cast<unsigned char>(c);
            hash *= 0x100000001b3U;
        }
    }
    CHECK(hash == 585209704506683444U);
}
