// The fewest and cheapest sheets, where every way to cut a few pieces can be tried.
#include <doctest/doctest.h>

#include <map>

#include "all_boxes.h"
#include "check.h"
#include "cutting/bounds.h"
#include "cutting/pattern_bound.h"
#include "cutting/sheets.h"
#include "effort.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::mm;

namespace {

// The least cost of each set of pieces, by which sheets there are left: one sheet after another, each with any part of what is left.
class LeastCost {
public:
    explicit LeastCost(const SheetJob& job) : job_(job), boxes_(single_pieces(job), job.kerf) {
        for (const SheetKind& kind : job.sheets) {
            is_in_money_ = is_in_money_ && (kind.is_offcut || kind.price);
            left_.push_back(kind.on_hand.value_or(100));
        }
    }

    // Nothing: there is not stock enough.
    std::optional<std::int64_t> of_all() { return of(boxes_.sets() - 1); }

private:
    static std::vector<laid::BoxPiece> single_pieces(const SheetJob& job) {
        std::vector<laid::BoxPiece> pieces;
        for (const SheetPiece& piece : job.pieces)
            for (int i = 0; i < piece.count; ++i)
                pieces.push_back({piece.length, piece.width, piece.may_turn});
        return pieces;
    }

    std::optional<std::int64_t> of(std::size_t set) {
        if (set == 0) return 0;
        const auto key = std::make_pair(set, left_);
        if (const auto known = known_.find(key); known != known_.end()) return known->second;
        std::optional<std::int64_t> least;
        for (std::size_t k = 0; k < job_.sheets.size(); ++k) {
            if (left_[k] == 0) continue;
            --left_[k];
            for (std::size_t part = set; part > 0; part = (part - 1) & set)
                if (const auto rest = with(part, set, k); rest && (!least || *rest < *least)) least = rest;
            ++left_[k];
        }
        return known_[key] = least;
    }

    std::optional<std::int64_t> with(std::size_t part, std::size_t set, std::size_t k) {
        const SheetKind& kind = job_.sheets[k];
        // The first of the pieces is on some sheet: be it this one.
        if ((part & (~set + 1) & set) == 0 ||
            !boxes_.fit(part, kind.length - 2 * kind.trim, kind.width - 2 * kind.trim))
            return std::nullopt;
        const auto rest = of(set ^ part);
        if (!rest) return std::nullopt;
        const std::int64_t price = is_in_money_ ? kind.price.value_or(0) : kind.is_offcut ? 0 : 1;
        return *rest + price;
    }

    const SheetJob& job_;
    laid::AllBoxes boxes_;
    std::vector<int> left_;
    bool is_in_money_ = true;
    std::map<std::pair<std::size_t, std::vector<int>>, std::optional<std::int64_t>> known_;
};

// A job without kerf and trim, as the bounds are asked.
Packing as_asked(const SheetJob& job) {
    Packing packing;
    for (const SheetPiece& piece : job.pieces)
        packing.pieces.push_back({piece.length.ticks(), piece.width.ticks(), piece.count, piece.may_turn, 1});
    for (const SheetKind& kind : job.sheets) {
        const Region sheet{kind.length.ticks(), kind.width.ticks()};
        packing.stocks.push_back(
            {sheet, {{sheet}}, kind.price.value_or(kind.is_offcut ? 0 : 1), kind.on_hand.value_or(100)});
    }
    return packing;
}

}  // namespace

TEST_CASE("no plan of a few pieces is cheaper, and no bound is above the cheapest: every way was tried") {
    laid::Random random(101);
    const int jobs = tests::cases(250);
    int planned = 0;
    int proved = 0;
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        const SheetJob job = laid::random_sheets(random, {7, 3, false});
        const std::optional<std::int64_t> least = LeastCost(job).of_all();
        const auto plan = plan_sheets(job, {1'000'000, {}});
        REQUIRE(plan.has_value() == least.has_value());
        if (!plan) continue;
        CHECK(laid::wrong_with(job, *plan) == std::nullopt);
        CHECK(plan->cost == *least);
        CHECK(plan->least_cost <= *least);
        ++planned;
        proved += plan->proved ? 1 : 0;
    }
    CHECK(planned > jobs * 2 / 3);
    CHECK(proved > jobs / 2);
}

TEST_CASE(
    "neither bound is above the fewest sheets that any way comes to, and patterns prove what areas don't") {
    laid::Random random(102);
    const int jobs = tests::cases(150);
    int reached = 0;
    int beyond_areas = 0;
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        SheetJob job{{}, {{mm(random.between(60, 120)), mm(random.between(40, 80)), {}, {}, false, {}}}, {}};
        for (int kind = random.between(1, 3); kind > 0; --kind)
            job.pieces.push_back({mm(random.between(15, 60)), mm(random.between(10, 40)),
                                  random.between(1, 3), random.chance(30)});
        const std::int64_t least = *LeastCost(job).of_all();
        const Packing packing = as_asked(job);
        const std::int64_t by_areas = least_cost(packing);
        std::optional<Patterns> patterns = Patterns::of(packing);
        REQUIRE(patterns);
        const std::int64_t by_patterns = patterns->least_sheets(least + 1, 10'000'000);
        CHECK(by_areas <= least);
        CHECK(by_patterns <= least);
        CHECK(by_patterns > 0);
        reached += by_patterns == least ? 1 : 0;
        beyond_areas += by_patterns > by_areas ? 1 : 0;
    }
    CHECK(reached > jobs / 2);
    CHECK(beyond_areas > 0);
}

TEST_CASE("parts that only the dear sheets take are counted with these, and no bound is above the cheapest") {
    laid::Random random(103);
    const int jobs = tests::cases(200);
    int reached = 0;
    int beyond_area = 0;
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        SheetJob job{{}, {}, {}};
        for (int kind = random.between(2, 3); kind > 0; --kind) {
            job.sheets.push_back(
                {mm(40 * kind + random.between(0, 20)), mm(30 * kind), {}, 5 * kind * kind, false, {}});
            if (random.chance(30)) job.sheets.back().on_hand = random.between(0, 2);
        }
        job.sheets.front().on_hand = std::nullopt;  // the largest: all can be placed
        for (int kind = random.between(1, 3); kind > 0; --kind)
            job.pieces.push_back({mm(random.between(15, 80)), mm(random.between(10, 58)),
                                  random.between(1, 2), random.chance(30)});
        const std::int64_t least = LeastCost(job).of_all().value();
        const std::int64_t bound = least_cost(as_asked(job));
        CHECK(bound <= least);
        // By hand: no less than the cheapest sheet that takes the part that is dearest to place.
        std::int64_t dearest = 0;
        for (const SheetPiece& piece : job.pieces) {
            std::int64_t cheapest = 1'000'000;
            for (const SheetKind& kind : job.sheets) {
                const bool lies = piece.length <= kind.length && piece.width <= kind.width;
                const bool turned =
                    piece.may_turn && piece.width <= kind.length && piece.length <= kind.width;
                if (kind.on_hand.value_or(1) > 0 && (lies || turned))
                    cheapest = std::min(cheapest, *kind.price);
            }
            dearest = std::max(dearest, cheapest);
        }
        CHECK(bound >= dearest);
        reached += bound == least ? 1 : 0;
        beyond_area += bound > dearest ? 1 : 0;
    }
    CHECK(reached > jobs / 2);
    CHECK(beyond_area > 0);
}

TEST_CASE("what is on hand and can't hold the parts has a sheet bought, and no bound is above what must be") {
    laid::Random random(104);
    const int jobs = tests::cases(200);
    int bought = 0;
    int reached = 0;
    for (int i = 0; i < jobs; ++i) {
        CAPTURE(i);
        SheetJob job{{}, {{mm(100), mm(60), {}, {}, false, {}}}, {}};
        for (int kind = random.between(1, 2); kind > 0; --kind)
            job.sheets.push_back(
                {mm(random.between(40, 90)), mm(random.between(20, 50)), random.between(1, 2), {}, true, {}});
        for (int kind = random.between(1, 3); kind > 0; --kind)
            job.pieces.push_back({mm(random.between(20, 80)), mm(random.between(10, 50)),
                                  random.between(1, 2), random.chance(30)});
        const std::int64_t least = LeastCost(job).of_all().value();
        const std::int64_t bound = least_cost(as_asked(job));
        CHECK(bound <= least);
        bought += least > 0 ? 1 : 0;
        reached += least > 0 && bound == least ? 1 : 0;
    }
    CHECK(bought > jobs / 4);
    CHECK(reached > bought * 3 / 4);
}

TEST_CASE("three parts of which no two go on one sheet, and an offcut with room for one: two are bought") {
    // By hand: 60 and 60 lie neither beside each other on 100 mm nor above each other on 60 mm, since 35 and 35 are more.
    SheetJob job{{{mm(60), mm(35), 3, false}}, {{mm(100), mm(60), {}, {}, false, {}}}, {}};
    CHECK(least_cost(as_asked(job)) == 3);
    job.sheets.push_back({mm(70), mm(40), 1, {}, true, {}});
    CHECK(least_cost(as_asked(job)) == 2);
    const auto plan = plan_sheets(job);
    REQUIRE(plan);
    CHECK(plan->cost == 2);
    CHECK(plan->proved);
    // The large one and a small one don't go on the offcut together, and the two small ones do.
    SheetJob faces{{{mm(598), mm(160), 1, false}, {mm(312), mm(149), 2, false}},
                   {{mm(914), mm(305), {}, {}, false, {}}, {mm(660), mm(305), 1, {}, true, {}}},
                   {}};
    CHECK(least_cost(as_asked(faces)) == 1);
}
