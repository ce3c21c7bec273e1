// The value of one panel: facts, and random panels against every way there is to cut them.
#include "cutting/panel_value.h"

#include <doctest/doctest.h>

#include "all_boxes.h"
#include "check.h"
#include "effort.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::mm;

namespace {

std::int64_t most_by_trying(const PanelJob& job) {
    std::vector<laid::BoxPiece> pieces;
    std::vector<std::int64_t> values;
    for (const PanelPiece& piece : job.pieces)
        for (int i = 0; i < piece.count; ++i) {
            pieces.push_back({piece.length, piece.width, piece.may_turn});
            values.push_back(piece.value);
        }
    const laid::AllBoxes boxes(pieces, job.kerf);
    std::int64_t most = 0;
    for (std::size_t set = 0; set < boxes.sets(); ++set) {
        std::int64_t value = 0;
        for (std::size_t p = 0; p < values.size(); ++p) value += (set >> p & 1U) != 0 ? values[p] : 0;
        if (value > most && boxes.fit(set, job.length, job.width)) most = value;
    }
    return most;
}

std::string refused_field(const PanelJob& job) {
    const auto plan = most_valuable(job);
    REQUIRE_FALSE(plan);
    return plan.error().field;
}

}  // namespace

TEST_CASE("no layout of a small panel is worth more: every way to cut it was tried") {
    laid::Random random(81);
    const int jobs = tests::cases(200);
    int partial = 0;
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        const PanelJob job = laid::random_panel(random, 8);
        const auto plan = most_valuable(job, {1'000'000, {}});
        REQUIRE(plan);
        CHECK(laid::wrong_with(job, *plan) == std::nullopt);
        CHECK(plan->value == most_by_trying(job));
        CHECK(plan->proved);
        std::int64_t all = 0;
        for (const PanelPiece& piece : job.pieces) all += piece.count * piece.value;
        partial += plan->value < all ? 1 : 0;
    }
    CHECK(partial > jobs / 2);
}

TEST_CASE("every layout of a larger panel is right, and never worth more than its bound") {
    laid::Random random(82);
    for (int i = 0; i < tests::cases(60); ++i) {
        CAPTURE(i);
        const PanelJob job = laid::random_panel(random, 40);
        const auto plan = most_valuable(job, {500'000, {}});
        REQUIRE(plan);
        CHECK(laid::wrong_with(job, *plan) == std::nullopt);
    }
}

// Four of 3 x 2 lie around one of 1 x 1 in 5 x 5, and no first cut goes straight through: the textbook figure, from memory.
TEST_CASE(
    "a pinwheel fills a panel, but no cuts from edge to edge set it apart: 19 of its 25 are had at most") {
    const std::vector<Rectangle> pinwheel = {{{}, {}, mm(3), mm(2)},
                                             {mm(3), {}, mm(2), mm(3)},
                                             {mm(2), mm(3), mm(3), mm(2)},
                                             {{}, mm(2), mm(2), mm(3)},
                                             {mm(2), mm(2), mm(1), mm(1)}};
    CHECK_FALSE(laid::can_be_set_apart(pinwheel, {}));
    const PanelJob job{
        mm(5),
        mm(5),
        {{mm(3), mm(2), 6, 2, false}, {mm(2), mm(3), 6, 2, false}, {mm(1), mm(1), 1, 1, false}},
        {}};
    const auto plan = most_valuable(job);
    REQUIRE(plan);
    CHECK(plan->proved);
    CHECK(plan->value == 19);
    CHECK(most_by_trying(job) == 19);
}

TEST_CASE("a piece larger than the panel, or worth nothing, stays out") {
    const PanelJob job{
        mm(300), mm(200), {{mm(301), mm(10), 50, 1, false}, {mm(20), mm(20), 0, 1, false}}, {}};
    const auto plan = most_valuable(job);
    REQUIRE(plan);
    CHECK(plan->proved);
    CHECK(plan->value == 0);
    REQUIRE(plan->layout.offcuts.size() == 1);
    CHECK(plan->layout.offcuts.front() == Rectangle{{}, {}, mm(300), mm(200)});
}

TEST_CASE("what makes no sense of a panel is refused by its field") {
    const PanelJob good{mm(300), mm(200), {{mm(30), mm(10), 5, 1, false}}, mm(3)};
    const auto field_of = [&good](const auto& spoil) {
        PanelJob job = good;
        spoil(job);
        return refused_field(job);
    };
    CHECK(field_of([](PanelJob& job) { job.length = {}; }) == "length");
    CHECK(field_of([](PanelJob& job) { job.width = mm(-1); }) == "width");
    CHECK(field_of([](PanelJob& job) { job.kerf = mm(-1); }) == "kerf");
    CHECK(field_of([](PanelJob& job) { job.pieces[0].width = {}; }) == "pieces.0.width");
    CHECK(field_of([](PanelJob& job) { job.pieces[0].count = 0; }) == "pieces.0.count");
    CHECK(field_of([](PanelJob& job) { job.pieces[0].value = -1; }) == "pieces.0.value");
}
