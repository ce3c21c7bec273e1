// Readings and moves that contradict the rest: asked again, with the culprit named.
#include <doctest/doctest.h>

#include <cmath>

#include "est_shop.h"
#include "testcut/doubt.h"

namespace {

// Every reading as it would come out, without error, of controls that stand as set but for `off`.
std::vector<kw::Observation> readings(const kw::Model& shop, std::size_t control = 0, double off = 0.0) {
    std::vector<double> at;
    for (const kw::Control& c : shop.controls) at.push_back(c.set_mm);
    at[control] += off;
    std::vector<kw::Observation> out;
    for (const kw::Reading& reading : shop.readings) {
        const double value = kw::value_at(reading.form, at);
        out.push_back(
            kw::taken(reading, reading.kind == kw::ReadingKind::plain ? value : std::max(0.0, value)));
    }
    return out;
}

void set_value(kw::Observation& observation, double value) {
    observation.low_mm = observation.high_mm = value;
}

}  // namespace

TEST_CASE("readings that agree are taken, also of a machine that stands a good way off") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief prior = kw::belief_from_priors(shop);
    for (const double off : {0.0, 0.4, -0.6})
        for (const std::size_t control : {est::fence, est::height})
            CHECK(!kw::find_doubt(shop, prior, {}, readings(shop, control, off)));
}

TEST_CASE("each slip of each reading is asked again, by its name, and for what it looks like") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief prior = kw::belief_from_priors(shop);
    const std::pair<kw::Slip, double> slips[] = {{kw::Slip::ten_times, 10.0},
                                                 {kw::Slip::tenth, 0.1},
                                                 {kw::Slip::inches, 1.0 / 25.4},
                                                 {kw::Slip::millimetres, 25.4}};
    for (std::size_t r = 0; r < 6; ++r) {  // those that are several millimetres long
        for (const auto& [slip, factor] : slips) {
            auto seen = readings(shop);
            set_value(seen[r], seen[r].low_mm * factor);
            const auto doubt = kw::find_doubt(shop, prior, {}, seen);
            REQUIRE(doubt);
            CHECK(doubt->about == kw::Doubt::About::reading);
            CHECK(doubt->which == r);
            CHECK(doubt->looks_like == slip);
        }
    }
    auto seen = readings(shop, est::height, -0.4);  // tight by 0.3
    set_value(seen[6], -seen[6].low_mm);
    const auto doubt = kw::find_doubt(shop, prior, {}, seen);
    REQUIRE(doubt);
    CHECK(doubt->which == 6);
    CHECK(doubt->looks_like == kw::Slip::sign);
}

TEST_CASE("what a reading should have been is what all the others say (against taking them in one by one)") {
    est::Random random(902);
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief prior = kw::belief_from_priors(shop);
    for (int i = 0; i < 60; ++i) {
        auto seen = readings(shop, est::height, random.normal(0.2));
        seen.erase(seen.begin() + 7);  // the gap, which is no plain reading
        const std::size_t culprit = random.below(6);
        set_value(seen[culprit], seen[culprit].low_mm * 10.0);
        kw::Belief others = prior;
        for (std::size_t r = 0; r < seen.size(); ++r)
            if (r != culprit) others = kw::observe(others, seen[r].form, seen[r].low_mm, seen[r].spread_mm);
        const kw::Innovation expected = kw::innovation(others, seen[culprit]);
        const auto doubt = kw::find_doubt(shop, prior, {}, seen);
        REQUIRE(doubt);
        CHECK(doubt->which == culprit);
        CHECK(doubt->expected_mm == doctest::Approx(expected.expected_mm).epsilon(1e-9));
        CHECK(doubt->sigmas == doctest::Approx(expected.sigmas).epsilon(1e-7));
    }
}

TEST_CASE(
    "a blade that went down where it was to go up is asked about as a move, not as eight wrong readings") {
    const kw::Model shop = est::locking_rabbet();
    kw::Belief belief = kw::belief_from_priors(shop);
    belief = kw::observe_all(belief, readings(shop, est::height, -0.4));
    const std::vector<kw::Move> moves = {{est::height, 0.4}};
    belief = kw::predict_moves(shop, belief, moves);
    CHECK(!kw::find_doubt(shop, belief, moves, readings(shop)));
    const auto doubt = kw::find_doubt(shop, belief, moves, readings(shop, est::height, -0.8));
    REQUIRE(doubt);
    CHECK(doubt->about == kw::Doubt::About::move);
    CHECK(doubt->which == est::height);
    CHECK(doubt->looks_like == kw::Slip::sign);
    CHECK(doubt->found_mm - shop.controls[est::height].set_mm == doctest::Approx(-0.8).epsilon(0.05));
}

TEST_CASE("a fence set by the wrong end of the rule is asked about as a setting") {
    const kw::Model shop = est::locking_rabbet();
    const auto doubt =
        kw::find_doubt(shop, kw::belief_from_priors(shop), {}, readings(shop, est::fence, 4.0));
    REQUIRE(doubt);
    CHECK(doubt->about == kw::Doubt::About::setting);
    CHECK(doubt->which == est::fence);
}

TEST_CASE("a word that nobody would say of what was measured is asked again") {
    const kw::Model shop = est::locking_rabbet();
    auto seen = readings(shop);
    seen.push_back(kw::felt(est::fit_form(), kw::Feel::slides));  // clearance 0.1: right
    CHECK(!kw::find_doubt(shop, kw::belief_from_priors(shop), {}, seen));
    seen.back() = kw::felt(est::fit_form(), kw::Feel::will_not_enter);
    const auto doubt = kw::find_doubt(shop, kw::belief_from_priors(shop), {}, seen);
    REQUIRE(doubt);
    CHECK(doubt->which == seen.size() - 1);
}
