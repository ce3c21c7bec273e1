#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>
#include <string>

#include "length/text.h"

#include "wood/emc.h"
#include "wood/movement.h"
#include "wood/named_species.h"

using namespace kw;
using tests::species;

namespace {

Length swing(std::string_view name, GrainCut cut, Length width, const Climate& climate) {
    const auto length = panel_swing(name, cut, width, climate);
    REQUIRE(length.has_value());
    return *length;
}

}  // namespace

// USDA Wood Handbook, ch. 13 (second hand; the inch figures from memory): a flat-grained white fir board 232
// mm (9.15 in) wide grows by 1.705 mm (0.067 in) from 8 to 11 %, to 233.7 mm.
TEST_CASE("the handbook's white fir board") {
    const Length grown = movement(species("white fir"), GrainCut::flatsawn, Length::millimetres(232), 8, 11);
    CHECK(grown == Length::nearest_mm(232 * 0.00245 * 3));
    CHECK(std::abs(grown.mm() - 1.705) <= 0.0005);
    CHECK(show(Length::millimetres(232) + grown, Graduation::mm_0_1) == "233.7");
    const Length in_inches =
        movement(species("white fir"), GrainCut::flatsawn, Length::inches(915, 100), 8, 11);
    CHECK(abs(in_inches - Length::inches(67, 1000)) <= Length::inches(5, 10'000));
}

TEST_CASE("a red oak bottom of 300 mm swings by 5.535 mm between 6 and 11 %") {  // 300 x 0.00369 x 5, by hand
    CHECK(swing("red oak", GrainCut::flatsawn, Length::millimetres(300), {6, 11}) ==
          Length::micrometres(5'535));
    CHECK(swing("red oak", GrainCut::quartersawn, Length::millimetres(300), {6, 11}) ==
          Length::micrometres(2'370));
}

TEST_CASE("movement is in step with width and with moisture, and drying undoes wetting") {
    std::mt19937_64 random(13);
    std::uniform_int_distribution<int> width_um(1'000, 900'000);
    std::uniform_real_distribution<double> moisture(0, 30);
    const Length two_ticks = Length::from_ticks(2);
    for (const Species& wood : known_species()) {
        for (int i = 0; i < 50; ++i) {
            const Length width = Length::micrometres(width_um(random));
            const double from = moisture(random), to = moisture(random), middle = (from + to) / 2;
            for (const GrainCut cut : grain_cuts()) {
                const Length moved = movement(wood, cut, width, from, to);
                CHECK((moved > Length{}) == (to > from));
                CHECK(movement(wood, cut, width, to, from) == -moved);
                CHECK(abs(movement(wood, cut, 2 * width, from, to) - 2 * moved) <= two_ticks);
                CHECK(abs(2 * movement(wood, cut, width, from, middle) - moved) <= two_ticks);
                CHECK(swing(wood.name, cut, width, {from, to}) == abs(moved));
            }
            CHECK(abs(movement(wood, GrainCut::flatsawn, width, from, to)) >=
                  abs(movement(wood, GrainCut::quartersawn, width, from, to)));
        }
    }
}

// Rule of thumb on a trade page (read): 0.0025 in per inch of flatsawn width for each percent.
TEST_CASE("flatsawn furniture woods move by about the rule of thumb") {
    for (const std::string name : {"cherry", "walnut", "soft maple", "ash", "poplar"}) {
        const Length six_inches = swing(name, GrainCut::flatsawn, Length::inches(6), {8, 9});
        CAPTURE(name);
        CHECK(abs(six_inches - Length::inches(15, 1000)) <= Length::inches(3, 1000));
    }
}

TEST_CASE("a bottom's swing from the air of winter and summer") {
    const auto winter = equilibrium_moisture_percent({20, 30});
    const auto summer = equilibrium_moisture_percent({20, 65});
    REQUIRE(winter.has_value());
    REQUIRE(summer.has_value());
    // 6.188 and 11.996 % (computed apart from this program); 400 x 0.00248 x 5.808 = 5.76 mm.
    const Length length = swing("cherry", GrainCut::flatsawn, Length::millimetres(400), {*winter, *summer});
    CHECK(std::abs(length.mm() - 5.762) <= 0.002);
}

TEST_CASE("an unknown wood is refused, with the woods that are known") {
    const auto length = panel_swing("balsam", GrainCut::flatsawn, Length::millimetres(300), {6, 11});
    REQUIRE_FALSE(length.has_value());
    CHECK(length.error().field == "species");
    CHECK(length.error().why.text(Graduation::in_64) == "how much `balsam` moves is not known here");
    CHECK(length.error().remedy.text(Graduation::in_64) == "give one of " + species_names());
}

// The equation's range: USDA Wood Handbook (2010), at eq. 13-2 (read).
TEST_CASE("the movement equation holds from 6 to 14 %") {
    CHECK(movement_holds(6, 14));
    CHECK(movement_holds(9, 7));
    CHECK_FALSE(movement_holds(5.9, 11));
    CHECK_FALSE(movement_holds(6, 14.1));
    CHECK_FALSE(movement_holds(15, 8));
}

TEST_CASE("a climate runs from dry to damp within what wood takes up") {
    CHECK_FALSE(check_climate({}).has_value());
    CHECK_FALSE(check_climate({0, 30}).has_value());
    CHECK_FALSE(check_climate({8, 8}).has_value());
    const double none = std::numeric_limits<double>::quiet_NaN();
    struct Row {
        Climate climate;
        const char* field;
        const char* why;
    };
    const Row rows[] = {
        {{-1, 11}, "driest", "wood does not move with moisture outside 0 to 30 %"},
        {{31, 32}, "driest", "wood does not move with moisture outside 0 to 30 %"},
        {{none, 11}, "driest", "wood does not move with moisture outside 0 to 30 %"},
        {{6, 65}, "dampest", "wood does not move with moisture outside 0 to 30 %"},
        {{6, none}, "dampest", "wood does not move with moisture outside 0 to 30 %"},
        {{11, 6}, "dampest", "the dampest month is drier than the driest"},
    };
    for (const Row& row : rows) {
        const auto refusal = check_climate(row.climate);
        REQUIRE(refusal.has_value());
        CHECK(refusal->field == row.field);
        CHECK(refusal->why.text(Graduation::in_64) == row.why);
        CHECK(refusal->remedy.text(Graduation::in_64) ==
              "give moisture contents from 0 to 30 %, the driest month's first");
    }
}
