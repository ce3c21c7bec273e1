// Searches that are told to stop: no more is asked, and what is said of the rest holds.
#include <doctest/doctest.h>

#include <optional>

#include "check.h"
#include "cutting/fence_order.h"
#include "cutting/pattern_bound.h"
#include "cutting/sheets.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::mm;

namespace {

// Says stop when it is asked for the `patience`th time, and counts how often it is asked.
class Patience {
public:
    explicit Patience(int patience) : patience_(patience) {}
    Searching operator()() { return ++asked_ < patience_ ? Searching::on : Searching::stop; }
    int asked() const { return asked_; }

private:
    int patience_;
    int asked_ = 0;
};

// Parts a seventh to a half as long and as wide as the sheet, without kerf and trim.
Packing random_packing(laid::Random& random) {
    Packing packing;
    for (int kind = 0; kind < 30; ++kind)
        packing.pieces.push_back({mm(random.between(90, 300)).ticks(), mm(random.between(60, 200)).ticks(),
                                  random.between(2, 9), false, 1});
    const Region sheet{mm(600).ticks(), mm(400).ticks()};
    packing.stocks.push_back({sheet, {{sheet}}, 1, unlimited});
    return packing;
}

}  // namespace

TEST_CASE("a bound by patterns that is stopped is found sooner, and is no higher than the one that is not") {
    laid::Random random(141);
    const Packing packing = random_packing(random);
    std::optional<Patterns> whole = Patterns::of(packing);
    std::optional<Patterns> watched = Patterns::of(packing);
    std::optional<Patterns> stopped = Patterns::of(packing);
    REQUIRE(stopped);
    const std::int64_t bound = whole->least_sheets(1000, 10'000'000);
    Patience endless(1'000'000);
    CHECK(watched->least_sheets(1000, 10'000'000, [&](std::int64_t) { return endless(); }) == bound);
    CHECK(watched->looks() == whole->looks());
    CHECK(endless.asked() > 2);
    Patience short_one(2);
    CHECK(stopped->least_sheets(1000, 10'000'000, [&](std::int64_t) { return short_one(); }) <= bound);
    CHECK(stopped->looks() * 2 < whole->looks());
    CHECK(short_one.asked() == 2);
    const std::int64_t looks = stopped->looks();
    stopped->round(10'000'000, 1, [&](std::int64_t) { return short_one(); });
    CHECK(stopped->looks() == looks);
}

TEST_CASE("once it has said stop, whoever watches over sheets is asked no more, and the bound holds") {
    laid::Random random(93);
    const SheetJob job = laid::random_sheets(random, {80, 1, false});
    const auto best = plan_sheets(job, {4'000'000, {}});
    REQUIRE(best);
    int stopped = 0;
    for (int patience = 1; patience < 30; ++patience) {
        CAPTURE(patience);
        Patience asks(patience);
        const auto plan = plan_sheets(job, {4'000'000, [&](std::int64_t, std::int64_t) { return asks(); }});
        REQUIRE(plan);
        CHECK(asks.asked() <= patience);
        CHECK(laid::wrong_with(job, *plan) == std::nullopt);
        CHECK(plan->least_cost <= best->cost);
        CHECK(plan->least_cost <= plan->cost);
        stopped += asks.asked() == patience ? 1 : 0;
    }
    CHECK(stopped > 10);
}

TEST_CASE("an order of settings that is stopped has every cut, and no more is claimed than holds") {
    laid::Random random(142);
    std::vector<CutToOrder> cuts;
    for (int c = 0; c < 60; ++c)
        cuts.push_back({random.chance(50) ? CutDirection::rip : CutDirection::crosscut,
                        mm(random.between(1, 8)), random.chance(20) ? -1 : random.between(0, c) - 1});
    const FenceOrder whole = order_by_fence(cuts, {2'000'000, {}});
    Patience endless(1'000'000);
    const FenceOrder watched =
        order_by_fence(cuts, {2'000'000, [&](std::int64_t, std::int64_t) { return endless(); }});
    CHECK(watched.settings.size() == whole.settings.size());
    CHECK(watched.least == whole.least);
    CHECK(endless.asked() > 2);
    Patience at_once(1);
    const FenceOrder stopped =
        order_by_fence(cuts, {2'000'000, [&](std::int64_t, std::int64_t) { return at_once(); }});
    CHECK(at_once.asked() == 1);
    CHECK(stopped.least <= whole.settings.size());
    std::size_t made = 0;
    for (const FenceSetting& setting : stopped.settings) made += setting.cuts.size();
    CHECK(made == cuts.size());
}
