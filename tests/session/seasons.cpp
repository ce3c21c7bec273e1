// Solid parts over the year. The coefficients are the USDA Wood Handbook's (2010), table 13-5: sugar maple 0.00353 across a flatsawn board and
// 0.00165 across a quartersawn one, for each percent; the equation is its 13-2. Worked by hand here.
#include <doctest/doctest.h>

#include <algorithm>

#include "job/plan.h"
#include "job/seasons.h"
#include "sample_job.h"

using namespace kw;

namespace {

Json with_solid(const char* cut) {
    Json json = tests::sample_json();
    json["climate"] = {{"driest", 6}, {"dampest", 11}};
    json["stock"].push_back({{"name", "maple"},
                             {"thickness", "19 mm"},
                             {"kind", "solid"},
                             {"species", "sugar maple"},
                             {"cut", cut},
                             {"moisture", 8}});
    return json;
}

Json with_face(const char* style, const char* gap, const char* cut = "flatsawn") {
    Json json = with_solid(cut);
    json["drawers"][0]["face"] = {{"style", style}, {"stock", "maple"}, {"left", gap},
                                  {"right", gap},   {"top", gap},       {"bottom", gap}};
    return json;
}

std::vector<Problem> problems_of(const Json& json) {
    const auto made = design(read_job(json).value());
    return made ? std::vector<Problem>{} : made.error();
}

std::vector<std::string> season_words(const Json& json) {
    const Job job = read_job(json).value();
    const Design made = design(job).value();
    std::vector<std::string> out;
    for (const Note& note : season_notes(job, made.drawers.at(0)))
        out.push_back(note.text.text(Graduation::mm_0_1));
    return out;
}

}  // namespace

TEST_CASE("a flatsawn board of 200 mm at 8 % swells by 2.1 mm to 11 %, and shrinks by 1.4 mm to 6 %") {
    const Job job = read_job(with_solid("flatsawn")).value();
    const auto season = season_of(*job.stock_named("maple"), job.climate, Length::millimetres(200));
    REQUIRE(season);
    CHECK(season->swells.mm() == doctest::Approx(200 * 0.00353 * 3).epsilon(1e-6));
    CHECK(season->shrinks.mm() == doctest::Approx(200 * 0.00353 * 2).epsilon(0.01));
    const Job standing = read_job(with_solid("quartersawn")).value();
    CHECK(
        season_of(*standing.stock_named("maple"), standing.climate, Length::millimetres(200))->swells.mm() ==
        doctest::Approx(200 * 0.00165 * 3).epsilon(1e-6));
    CHECK_FALSE(season_of(*job.stock_named("ply 12"), job.climate, Length::millimetres(200)));
}

TEST_CASE(
    "an inset face that would jam in the dampest month is refused at its gap, with the gap that would do") {
    // 5 1/4 in less both gaps is 132.55 mm; by 3 % it swells 1.40 mm, and two gaps of 1/40 in are 1.27 mm.
    const auto jams = problems_of(with_face("inset", "0.4 mm"));
    REQUIRE(jams.size() == 1);
    CHECK(jams[0].pointer == "/drawers/0/face/top");
    CHECK(jams[0].why.text(Graduation::mm_0_1) ==
          "by the dampest month the solid face stands 1.4 mm higher, and the gaps above and below it are 0.8 "
          "mm in "
          "all: it would jam");
    CHECK(jams[0].remedy.text(Graduation::mm_0_1) == "make both together at least 2.4 mm");
    CHECK(problems_of(with_face("inset", "1.2 mm")).empty());
    // Quartersawn it moves less than half as much.
    CHECK(problems_of(with_face("inset", "0.4 mm", "quartersawn")).empty());
}

TEST_CASE("how far the gaps go over the year is told, and faces that may meet") {
    // (133.35 - 4) x 0.00353 x 3 = 1.37 and x 2 = 0.91.
    CHECK(season_words(with_face("inset", "2 mm")) ==
          std::vector<std::string>{
              "over the year the gaps above and below the solid face go from 2.6 mm + to 4.9 mm in all"});
    Json overlay = with_face("overlay", "10 mm");
    CHECK(season_words(overlay).empty());
    overlay["drawers"][0]["face"]["reveal"] = "2 mm";
    CHECK(season_words(overlay) ==
          std::vector<std::string>{"by the dampest month a solid face stands 1.6 mm higher, and the reveal "
                                   "to the next is 2.0 mm: they "
                                   "may meet"});
}

TEST_CASE("solid sides that would jam in their opening are refused at the slide's clearance") {
    Json json = with_solid("flatsawn");
    json["stock"][2]["thickness"] = "12 mm";
    json["drawers"][0]["sides"]["stock"] = "maple";
    CHECK(season_words(json).size() == 1);
    json["drawers"][0]["slide"]["top"] = "0.5 mm";
    json["drawers"][0]["slide"]["bottom"] = "0.5 mm";
    const auto jams = problems_of(json);
    REQUIRE(jams.size() == 1);
    CHECK(jams[0].pointer == "/drawers/0/slide/top");
}

TEST_CASE("a panel written as it is called is asked about, and one that was measured is not") {
    Json json = tests::sample_json();
    const auto asked = [&](const char* thickness, const char* kind) {
        json["stock"][0]["thickness"] = thickness;
        json["stock"][0]["kind"] = kind;
        return nominal_notes(read_job(json).value()).size();
    };
    CHECK(asked("3/4", "plywood") == 1);
    CHECK(asked("18 mm", "plywood") == 1);
    CHECK(asked("18 mm", "panel") == 0);    // fibre board may well measure what it is called
    CHECK(asked("23/32", "plywood") == 0);  // what 3/4 in plywood usually measures (PS 1-07, trade pages)
    CHECK(asked("17.7 mm", "plywood") == 0);
    CHECK(asked("3/4", "solid") == 0);  // boards are planed to their size
}
