// The checker sees what is wrong with a plan: each plan here is a good one with one thing spoilt.
#include <doctest/doctest.h>

#include "check.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::mm;

namespace {

const Length tick = Length::from_ticks(1);

BoardJob good_boards() { return {{{mm(400), 3}, {mm(290), 2}}, {{mm(1000), 4, {}, false, mm(5)}}, mm(3)}; }

SheetJob good_sheets() {
    SheetJob job{{{mm(400), mm(300), 4, false}, {mm(290), mm(250), 3, true}},
                 {{mm(1000), mm(700), 2, {}, false, mm(5)}},
                 mm(3)};
    job.sheets[0].defects = {{mm(960), mm(10), mm(20), mm(20)}};
    return job;
}

template <class Job, class Plan, class Spoil>
std::string wrong_once(const Job& job, Plan plan, const Spoil& spoil) {
    REQUIRE(laid::wrong_with(job, plan) == std::nullopt);
    spoil(plan);
    return laid::wrong_with(job, plan).value_or("nothing");
}

}  // namespace

TEST_CASE("the checker sees what is wrong with a plan of boards") {
    const BoardJob job = good_boards();
    const auto plan = plan_boards(job);
    REQUIRE(plan);
    const auto wrong = [&](const auto& spoil) { return wrong_once(job, *plan, spoil); };
    CHECK(wrong([](BoardPlan& p) { p.boards[0].pieces[1].from -= tick; }) ==
          "no kerf before a piece, or a piece in the trim");
    CHECK(wrong([](BoardPlan& p) { p.boards[0].pieces[0].from -= tick; }) ==
          "no kerf before a piece, or a piece in the trim");
    CHECK(wrong([](BoardPlan& p) { p.boards[0].pieces.back().from += mm(500); }) ==
          "a piece beyond the trimmed board");
    CHECK(wrong([](BoardPlan& p) { p.boards[0].offcut += tick; }) == "an offcut of another length");
    CHECK(wrong([](BoardPlan& p) { p.boards.pop_back(); }) == "a piece too many or too few");
    CHECK(wrong([](BoardPlan& p) { p.boards.push_back(p.boards[0]); }) == "a piece too many or too few");
    CHECK(wrong([](BoardPlan& p) { ++p.cost; }) == "the cost isn't what the stock costs");
    CHECK(wrong([](BoardPlan& p) { p.least_cost = p.cost + 1; }) == "the bound is above the cost");
    CHECK(wrong([](BoardPlan& p) { p.proved = !p.proved; }) == "proved is not what bound and cost say");
    BoardJob fewer = job;
    fewer.boards[0].on_hand = 1;
    CHECK(laid::wrong_with(fewer, *plan) == "more of a kind than there are");
}

TEST_CASE("the checker sees what is wrong with a plan of sheets") {
    const SheetJob job = good_sheets();
    const auto plan = plan_sheets(job, {500'000, {}});
    REQUIRE(plan);
    const auto wrong = [&](const auto& spoil) { return wrong_once(job, *plan, spoil); };
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].pieces[0].area.length += tick; }) ==
          "a piece of another size");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].pieces[0].is_turned = !p.sheets[0].pieces[0].is_turned; }) !=
          "nothing");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].pieces[0].area.x = mm(4); }) ==
          "a piece beyond the trimmed sheet");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].pieces[1].area = p.sheets[0].pieces[0].area; }) != "nothing");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].pieces.pop_back(); }) == "pieces that no cut leads to");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].offcuts.pop_back(); }) == "offcuts that no cut leads to");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].cuts[0].fence += tick; }) ==
          "what is cut off isn't what the fence says");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].cuts[0].remainder = p.sheets[0].cuts[0].cut_off; }) ==
          "what remains isn't behind the kerf");
    CHECK(wrong([](SheetPlan& p) { p.sheets[0].cuts.push_back(p.sheets[0].cuts.back()); }) ==
          "a part that no cut leads to, or two do");
    CHECK(wrong([](SheetPlan& p) { --p.cost; }) == "the cost isn't what the stock costs");
    SheetJob knotty = job;
    knotty.sheets[0].defects.push_back({mm(20), mm(20), mm(900), mm(600)});
    CHECK(laid::wrong_with(knotty, *plan) == "a piece over a defect");
    SheetJob wider = job;
    wider.kerf = mm(4);
    CHECK(laid::wrong_with(wider, *plan) != std::nullopt);
}
