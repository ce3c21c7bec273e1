// Sheets: facts of the trade (common practice, no source), and random jobs held to the checker.
#include "cutting/sheets.h"

#include <doctest/doctest.h>

#include <limits>

#include "check.h"
#include "effort.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::in;
using laid::mm;

namespace {

SheetKind endless(Length length, Length width) { return {length, width, {}, {}, false, {}}; }

SheetPlan planned(const SheetJob& job) {
    const auto plan = plan_sheets(job, {2'000'000, {}});
    REQUIRE(plan);
    CHECK(laid::wrong_with(job, *plan) == std::nullopt);
    return *plan;
}

Refusal refusal_of(const SheetJob& job) {
    const auto plan = plan_sheets(job, {1'000'000, {}});
    REQUIRE_FALSE(plan);
    return plan.error();
}

}  // namespace

TEST_CASE(
    "a sheet of 4 x 8 ft gives eight pieces of 23 29/32 x 23 15/16 in at a kerf of 1/8 in, to the last 1/32 "
    "in") {
    SheetJob job{{{in(765, 32), in(383, 16), 8, false}}, {endless(in(96), in(48))}, in(1, 8)};
    CHECK(planned(job).sheets.size() == 1);
    CHECK(planned(job).proved);
    job.pieces[0].width += Length::from_ticks(1);
    CHECK(planned(job).sheets.size() == 2);
}

TEST_CASE("a piece with grain is not turned, and one without is where it saves a sheet") {
    SheetJob job{{{mm(400), mm(900), 2, false}}, {endless(mm(1000), mm(800))}, mm(3)};
    CHECK(refusal_of(job).field == "pieces.0.width");
    job.pieces[0].may_turn = true;
    const SheetPlan plan = planned(job);
    REQUIRE(plan.sheets.size() == 2);
    CHECK(plan.sheets.front().pieces.front().is_turned);
    job.sheets[0].width = mm(803);
    CHECK(planned(job).sheets.size() == 1);
}

TEST_CASE(
    "six pieces that fill a sheet take five cuts, those of one direction one after another, the largest "
    "first") {
    const SheetJob job{{{mm(500), mm(300), 6, false}}, {endless(mm(1003), mm(906))}, mm(3)};
    const SheetPlan plan = planned(job);
    REQUIRE(plan.sheets.size() == 1);
    CHECK(plan.sheets.front().offcuts.empty());
    const std::vector<Cut> cuts = cuts_in_order(plan.sheets.front());
    REQUIRE(cuts.size() == 5);
    CHECK(cuts.front().stage == 0);
    CHECK(cuts.back().stage > 0);
    for (std::size_t i = 1; i < cuts.size(); ++i) {
        if (cuts[i].stage != 0) continue;
        CHECK(cuts[i - 1].stage == 0);
        CHECK(cuts[i - 1].direction == cuts[i].direction);
        CHECK(cuts[i - 1].fence >= cuts[i].fence);
    }
}

TEST_CASE("trim comes off all four sides") {
    SheetJob job{{{mm(480), mm(280), 4, false}}, {endless(mm(1000), mm(600))}, mm(3)};
    job.sheets[0].trim = mm(18);
    const SheetPlan plan = planned(job);
    CHECK(plan.sheets.size() == 1);  // 18 + 480 + 3 + 480 + 18 = 999, 18 + 280 + 3 + 280 + 18 = 599
    CHECK(plan.sheets.front().cuts.front().area == Rectangle{mm(18), mm(18), mm(964), mm(564)});
    job.sheets[0].trim = mm(19);
    CHECK(planned(job).sheets.size() > 1);
}

TEST_CASE("offcuts are taken before a sheet is bought") {
    SheetJob job{
        {{mm(900), mm(700), 1, false}, {mm(400), mm(300), 1, false}}, {endless(mm(1000), mm(800))}, mm(3)};
    CHECK(planned(job).cost == 2);
    job.sheets.push_back({mm(420), mm(310), 1, {}, true, {}});
    const SheetPlan plan = planned(job);
    CHECK(plan.cost == 1);
    CHECK(plan.proved);
    CHECK(plan.sheets.back().sheet == 1);
}

TEST_CASE("two small sheets are taken where they are cheaper than a large one, and not where they aren't") {
    SheetJob job{
        {{mm(900), mm(700), 2, false}}, {endless(mm(2000), mm(800)), endless(mm(1000), mm(800))}, mm(3)};
    job.sheets[0].price = 6000;
    job.sheets[1].price = 2900;
    CHECK(planned(job).cost == 5800);
    job.sheets[1].price = 3100;
    CHECK(planned(job).cost == 6000);
    CHECK(planned(job).is_in_money);
}

TEST_CASE("a part that only the dear sheet takes costs at least a dear sheet, and that is proved") {
    SheetJob job{{{mm(1800), mm(300), 1, false}, {mm(400), mm(300), 2, false}},
                 {endless(mm(1000), mm(500)), endless(mm(2000), mm(1000))},
                 mm(3)};
    job.sheets[0].price = 1000;
    job.sheets[1].price = 9000;
    const SheetPlan plan = planned(job);
    CHECK(plan.cost == 9000);
    CHECK(plan.least_cost == 9000);
    CHECK(plan.proved);
}

TEST_CASE("where one sheet does, the smallest that does is taken, and the smallest offcut") {
    SheetJob job{{{mm(900), mm(700), 1, false}},
                 {endless(mm(2000), mm(800)), endless(mm(1000), mm(800)), endless(mm(1000), mm(1500))},
                 mm(3)};
    CHECK(planned(job).sheets.front().sheet == 1);
    job.sheets.push_back({mm(1100), mm(900), 1, {}, true, {}});
    job.sheets.push_back({mm(910), mm(710), 1, {}, true, {}});
    CHECK(planned(job).sheets.front().sheet == 4);
}

TEST_CASE("a knot in the middle of a panel leaves the pieces around it") {
    SheetJob job{{{mm(480), mm(600), 2, false}}, {endless(mm(1000), mm(600))}, mm(3)};
    job.sheets[0].on_hand = 1;
    CHECK(planned(job).sheets.size() == 1);
    job.sheets[0].defects = {{mm(485), mm(290), mm(30), mm(20)}};  // 485 left of it and right of it
    CHECK(planned(job).sheets.size() == 1);
    job.sheets[0].defects = {{mm(470), mm(290), mm(30), mm(20)}};
    CHECK(refusal_of(job).field == "sheets");
    job.pieces[0].count = 1;
    CHECK(planned(job).sheets.size() == 1);
}

TEST_CASE("a board with eight knots still gives what lies between them") {
    SheetJob job{{{mm(200), mm(100), 6, false}}, {endless(mm(2000), mm(300))}, mm(3)};
    job.sheets[0].on_hand = 1;
    for (int knot = 0; knot < 8; ++knot)
        job.sheets[0].defects.push_back({mm(100 + 230 * knot), mm(knot % 2 == 0 ? 40 : 210), mm(25), mm(25)});
    CHECK(planned(job).sheets.size() == 1);
}

TEST_CASE("a defect at the edge is trimmed away with what the blade takes") {
    SheetJob job{{{mm(998), mm(600), 1, false}}, {endless(mm(1000), mm(600))}, mm(3)};
    job.sheets[0].on_hand = 1;
    job.sheets[0].defects = {{mm(-5), mm(100), mm(7), mm(20)}};  // its last 2 mm are on the sheet
    const SheetPlan plan = planned(job);
    CHECK(plan.sheets.front().pieces.front().area.x == mm(2));
    // The first cut trims the edge: the stop is set to what stays.
    const std::vector<Cut> cuts = cuts_in_order(plan.sheets.front());
    REQUIRE(cuts.size() == 1);
    CHECK(cuts.front().direction == CutDirection::crosscut);
    CHECK(cuts.front().fence == mm(998));
    job.pieces[0].length = mm(999);
    CHECK(refusal_of(job).why.text(Graduation::mm_0_1) == "the piece fits only where a sheet has a defect");
}

TEST_CASE("what is smaller than the least offcut is waste") {
    SheetJob job{{{mm(900), mm(600), 1, false}}, {endless(mm(1000), mm(600))}, mm(3)};
    REQUIRE(planned(job).sheets.front().offcuts.size() == 1);
    CHECK(planned(job).sheets.front().offcuts.front() == Rectangle{mm(903), {}, mm(97), mm(600)});
    job.least_offcut_length = mm(98);
    CHECK(planned(job).sheets.front().offcuts.empty());
}

TEST_CASE("the yield is the area of the pieces by that of the whole sheets") {
    const SheetJob job{{{mm(500), mm(400), 2, false}}, {endless(mm(1000), mm(800))}, {}};
    CHECK(planned(job).yield == doctest::Approx(0.5));
}

TEST_CASE("a piece that fits no sheet is refused with what is too little of the one that fits best") {
    SheetJob job{
        {{mm(1010), mm(300), 1, false}}, {endless(mm(1000), mm(600)), endless(mm(800), mm(900))}, mm(3)};
    CHECK(refusal_of(job).field == "pieces.0.length");
    CHECK(refusal_of(job).why.text(Graduation::mm_0_1) ==
          "the piece is 1010.0 mm long, and the sheet that fits best gives 1000.0 mm: 10.0 mm too little");
    job.pieces[0] = {mm(700), mm(920), 1, false};
    CHECK(refusal_of(job).field == "pieces.0.width");
    CHECK(refusal_of(job).why.text({Graduation::mm_0_1, Language::german}) ==
          "das Teil ist 920,0 mm breit, und die Platte, die am besten passt, gibt 900,0 mm her: 20,0 mm zu "
          "wenig");
    CHECK(refusal_of(job).remedy.text(Graduation::mm_0_1) ==
          "get a sheet that gives 920.0 mm, its edges trimmed");
}

TEST_CASE("where sheets run out, it is said how many pieces are left over") {
    SheetJob job{{{mm(600), mm(500), 5, false}}, {endless(mm(1000), mm(600))}, mm(3)};
    job.sheets[0].on_hand = 3;
    CHECK(refusal_of(job).why.text(Graduation::mm_0_1) == "2 pieces find no place on what is on hand");
}

TEST_CASE("what makes no sense of sheets is refused by its field") {
    const SheetJob good{{{mm(600), mm(300), 3, false}}, {endless(mm(1000), mm(600))}, mm(3)};
    const auto field_of = [&good](const auto& spoil) {
        SheetJob job = good;
        spoil(job);
        return refusal_of(job).field;
    };
    CHECK(field_of([](SheetJob& job) { job.pieces[0].width = {}; }) == "pieces.0.width");
    CHECK(field_of([](SheetJob& job) { job.pieces[0].count = -2; }) == "pieces.0.count");
    CHECK(field_of([](SheetJob& job) { job.sheets.clear(); }) == "sheets");
    CHECK(field_of([](SheetJob& job) { job.sheets[0].width = {}; }) == "sheets.0.width");
    CHECK(field_of([](SheetJob& job) { job.sheets[0].is_offcut = true; }) == "sheets.0.on_hand");
    CHECK(field_of([](SheetJob& job) { job.sheets[0].trim = mm(300); }) == "sheets.0.trim");
    CHECK(field_of([](SheetJob& job) { job.sheets[0].price = -1; }) == "sheets.0.price");
    CHECK(field_of([](SheetJob& job) {
              job.sheets[0].defects = {{{}, {}, mm(5), mm(5)}};
          }) == "sheets.0.on_hand");
    CHECK(field_of([](SheetJob& job) {
              job.sheets[0].on_hand = 1;
              job.sheets[0].defects = {{mm(1000), {}, mm(5), mm(5)}};
          }) == "sheets.0.defects");
    CHECK(field_of([](SheetJob& job) {
              job.sheets[0].on_hand = 1;
              job.sheets[0].defects.assign(9, {mm(10), mm(10), mm(5), mm(5)});
          }) == "sheets.0.defects");
    CHECK(field_of([](SheetJob& job) { job.kerf = mm(-1); }) == "kerf");
}

TEST_CASE("every plan of sheets is right: random jobs, with defects and without") {
    laid::Random random(91);
    const int jobs = tests::cases(300);
    int planned_jobs = 0;
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        const SheetJob job = laid::random_sheets(random, {i % 10 == 0 ? 120 : 25, 3, i % 2 == 0});
        const auto plan = plan_sheets(job, {300'000, {}});
        if (!plan) {
            CHECK(plan.error().why.text(Graduation::mm_0_1) != "");
            continue;
        }
        CHECK(laid::wrong_with(job, *plan) == std::nullopt);
        ++planned_jobs;
    }
    CHECK(planned_jobs > jobs / 2);
}

TEST_CASE("the same sheets have the same plan, and a watch that says stop leaves the best that was found") {
    laid::Random random(92);
    const SheetJob job = laid::random_sheets(random, {60, 1, false});
    const auto plan = plan_sheets(job, {500'000, {}});
    const auto again = plan_sheets(job, {500'000, [](std::int64_t, std::int64_t) { return Searching::on; }});
    REQUIRE(plan);
    REQUIRE(again);
    REQUIRE(plan->sheets.size() == again->sheets.size());
    for (std::size_t s = 0; s < plan->sheets.size(); ++s) {
        REQUIRE(plan->sheets[s].pieces.size() == again->sheets[s].pieces.size());
        for (std::size_t p = 0; p < plan->sheets[s].pieces.size(); ++p)
            CHECK(plan->sheets[s].pieces[p].area == again->sheets[s].pieces[p].area);
    }
    int asked = 0;
    const auto stopped = plan_sheets(job, {1'000'000'000'000, [&asked](std::int64_t, std::int64_t) {
                                               return ++asked < 3 ? Searching::on : Searching::stop;
                                           }});
    REQUIRE(stopped);
    CHECK(laid::wrong_with(job, *stopped) == std::nullopt);
}

TEST_CASE("a watch that says stop later has no worse plan than one that says it sooner") {
    laid::Random random(93);
    const SheetJob job = laid::random_sheets(random, {80, 1, false});
    std::int64_t cost = std::numeric_limits<std::int64_t>::max();
    for (int patience = 1; patience < 12; ++patience) {
        int asked = 0;
        const auto plan = plan_sheets(job, {4'000'000, [&asked, patience](std::int64_t, std::int64_t) {
                                                return ++asked < patience ? Searching::on : Searching::stop;
                                            }});
        REQUIRE(plan);
        CHECK(plan->cost <= cost);
        cost = plan->cost;
    }
}

TEST_CASE("nobody buys a third of a sheet: where all that is bought costs the same, one sheet is the least") {
    SheetJob job{{{mm(900), mm(900), 2, false}}, {endless(mm(2000), mm(1000))}, mm(3)};
    job.sheets[0].price = 3850;
    job.sheets.push_back({mm(1000), mm(950), 1, {}, true, {}});
    const SheetPlan plan = planned(job);
    CHECK(plan.cost == 3850);
    CHECK(plan.least_cost == 3850);
    CHECK(plan.proved);
}
