// Boards: facts of the trade (common practice, no source, unless said otherwise), and random jobs held to the checker.
#include "cutting/boards.h"

#include <doctest/doctest.h>

#include "check.h"
#include "effort.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::in;
using laid::mm;

namespace {

BoardKind endless(Length length) { return {length, {}, {}, false, {}}; }
BoardKind offcut(Length length, int count) { return {length, count, {}, true, {}}; }

std::size_t boards_for(const BoardJob& job) {
    const auto plan = plan_boards(job);
    REQUIRE(plan);
    CHECK(laid::wrong_with(job, *plan) == std::nullopt);
    CHECK(plan->proved);
    return plan->boards.size();
}

Refusal refusal_of(const BoardJob& job) {
    const auto plan = plan_boards(job);
    REQUIRE_FALSE(plan);
    return plan.error();
}

}  // namespace

TEST_CASE("four pieces of 23 29/32 in and three kerfs of 1/8 in are exactly an 8 ft board") {
    CHECK(boards_for({{{in(765, 32), 4}}, {endless(in(96))}, in(1, 8)}) == 1);
    CHECK(boards_for({{{in(765, 32) + Length::from_ticks(1), 4}}, {endless(in(96))}, in(1, 8)}) == 2);
}

TEST_CASE("a kerf that falls off the end of the board costs nothing") {
    // 997 + 3 is the board less 1 mm: the last cut is half in the air.
    const BoardJob job{{{mm(498), 2}}, {endless(mm(1000))}, mm(3)};
    const auto plan = plan_boards(job);
    REQUIRE(plan);
    CHECK(plan->boards.size() == 1);
    CHECK(plan->boards.front().offcut == Length{});
    CHECK(laid::wrong_with(job, *plan) == std::nullopt);
}

TEST_CASE("trimming the ends takes what it takes from the board, and the first piece begins behind it") {
    BoardJob job{{{mm(480), 2}}, {endless(mm(1000))}, mm(3)};
    job.boards.front().trim = mm(18);
    CHECK(boards_for(job) == 1);  // 18 + 480 + 3 + 480 + 18 = 999
    CHECK(plan_boards(job)->boards.front().pieces.front().from == mm(18));
    job.boards.front().trim = mm(19);
    CHECK(boards_for(job) == 2);
}

TEST_CASE("offcuts are taken where they save a board") {
    const BoardJob job{{{mm(900), 1}, {mm(400), 1}}, {endless(mm(1000)), offcut(mm(450), 1)}, mm(3)};
    const auto plan = plan_boards(job);
    REQUIRE(plan);
    CHECK(plan->cost == 1);
    CHECK(plan->boards.size() == 2);
    CHECK(plan->boards.back().board == 1);
    CHECK(plan->proved);
}

TEST_CASE("two short boards are taken where they are cheaper than a long one, and not where they aren't") {
    BoardJob job{{{mm(900), 2}}, {endless(mm(2000)), endless(mm(1000))}, mm(3)};
    job.boards[0].price = 2500;
    job.boards[1].price = 1200;
    const auto cheap = plan_boards(job);
    REQUIRE(cheap);
    CHECK(cheap->is_in_money);
    CHECK(cheap->cost == 2400);
    job.boards[1].price = 1300;
    CHECK(plan_boards(job)->cost == 2500);
    job.boards[1].price = std::nullopt;  // a price is missing: as few boards as possible
    CHECK_FALSE(plan_boards(job)->is_in_money);
    CHECK(plan_boards(job)->cost == 1);
}

TEST_CASE(
    "pieces of 7, 7, 6, 6, 5, 5, 4, 4, 3, 3 take five boards of 10, filled to the last: 7 + 3, 6 + 4, 5 + "
    "5") {
    const BoardJob job{
        {{mm(70), 2}, {mm(60), 2}, {mm(50), 2}, {mm(40), 2}, {mm(30), 2}}, {endless(mm(100))}, {}};
    CHECK(boards_for(job) == 5);
    CHECK(plan_boards(job)->yield == doctest::Approx(1));
}

TEST_CASE("nine pieces of a little over a third of a board take five boards, which no sum of lengths says") {
    // L2 of Martello and Toth counts two to a board: 1990, ch. 8, from memory.
    CHECK(boards_for({{{mm(334), 9}}, {endless(mm(1000))}, {}}) == 5);
}

TEST_CASE("where one board does, the shortest that does is taken") {
    const BoardJob job{{{mm(900), 1}}, {endless(mm(3000)), endless(mm(1000)), endless(mm(2000))}, mm(3)};
    const auto plan = plan_boards(job);
    REQUIRE(plan);
    CHECK(plan->boards.front().board == 1);
}

TEST_CASE("nothing to cut takes no board") {
    const auto plan = plan_boards({{}, {endless(mm(1000))}, mm(3)});
    REQUIRE(plan);
    CHECK(plan->boards.empty());
    CHECK(plan->proved);
    CHECK(plan->yield == 0);
}

TEST_CASE("a piece longer than any board is refused with what is too little") {
    BoardJob job{{{mm(500), 1}, {mm(1010), 1}}, {endless(mm(1000)), endless(mm(800))}, mm(3)};
    job.boards.front().trim = mm(5);
    const Refusal refusal = refusal_of(job);
    CHECK(refusal.field == "pieces.1.length");
    CHECK(refusal.why.text(Graduation::mm_0_1) ==
          "the piece is 1010.0 mm long, and the longest board gives 990.0 mm: 20.0 mm too little");
    CHECK(refusal.remedy.text(Graduation::mm_0_1) == "get a board that gives 1010.0 mm, its ends trimmed");
}

TEST_CASE("where stock runs out, it is said how many pieces are left over") {
    const BoardJob one{{{mm(600), 3}}, {{mm(1000), 2, {}, false, {}}}, mm(3)};
    CHECK(refusal_of(one).field == "boards");
    CHECK(refusal_of(one).why.text(Graduation::mm_0_1) == "1 piece finds no place on what is on hand");
    const BoardJob more{{{mm(600), 4}}, {{mm(1000), 2, {}, false, {}}}, mm(3)};
    CHECK(refusal_of(more).why.text({Graduation::mm_0_1, Language::german}) ==
          "2 Teile finden keinen Platz auf dem, was da ist");
}

TEST_CASE("what makes no sense is refused by its field") {
    const BoardJob good{{{mm(600), 3}}, {endless(mm(1000))}, mm(3)};
    const auto field_of = [&good](const auto& spoil) {
        BoardJob job = good;
        spoil(job);
        return refusal_of(job).field;
    };
    CHECK(field_of([](BoardJob& job) { job.pieces[0].length = {}; }) == "pieces.0.length");
    CHECK(field_of([](BoardJob& job) { job.pieces[0].count = 0; }) == "pieces.0.count");
    CHECK(field_of([](BoardJob& job) { job.pieces[0].count = 1'000'000; }) == "pieces.0.count");
    CHECK(field_of([](BoardJob& job) { job.boards.clear(); }) == "boards");
    CHECK(field_of([](BoardJob& job) { job.boards[0].length = mm(-1); }) == "boards.0.length");
    CHECK(field_of([](BoardJob& job) { job.boards[0].length = mm(1'000'000); }) == "boards.0.length");
    CHECK(field_of([](BoardJob& job) { job.boards[0].on_hand = -1; }) == "boards.0.on_hand");
    CHECK(field_of([](BoardJob& job) { job.boards[0].is_offcut = true; }) == "boards.0.on_hand");
    CHECK(field_of([](BoardJob& job) { job.boards[0].price = -1; }) == "boards.0.price");
    CHECK(field_of([](BoardJob& job) { job.boards[0].trim = mm(500); }) == "boards.0.trim");
    CHECK(field_of([](BoardJob& job) { job.kerf = mm(-3); }) == "kerf");
}

TEST_CASE("every plan of boards is right: random jobs") {
    laid::Random random(61);
    int planned = 0;
    const int jobs = tests::cases(300);
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        const BoardJob job = laid::random_boards(random, i % 10 == 0 ? 150 : 30);
        const auto plan = plan_boards(job, {1'000'000, {}});
        if (!plan) {
            CHECK(plan.error().field == "boards");
            continue;
        }
        CHECK(laid::wrong_with(job, *plan) == std::nullopt);
        ++planned;
    }
    CHECK(planned > jobs / 2);
}

TEST_CASE("the same job has the same plan, and a watch that lets it go on changes nothing") {
    laid::Random random(62);
    for (int i = 0; i < 20; ++i) {
        const BoardJob job = laid::random_boards(random, 60);
        const auto plan = plan_boards(job, {2'000'000, {}});
        const auto again = plan_boards(job, {2'000'000, [](std::int64_t best, std::int64_t bound) {
                                                 CHECK(bound <= best);
                                                 return Searching::on;
                                             }});
        REQUIRE(plan.has_value() == again.has_value());
        if (!plan) continue;
        REQUIRE(plan->boards.size() == again->boards.size());
        for (std::size_t b = 0; b < plan->boards.size(); ++b) {
            CHECK(plan->boards[b].board == again->boards[b].board);
            CHECK(plan->boards[b].offcut_from == again->boards[b].offcut_from);
        }
        CHECK(plan->least_cost == again->least_cost);
    }
}
