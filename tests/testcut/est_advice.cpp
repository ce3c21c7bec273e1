// Lock, move or measure.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "est_shop.h"
#include "testcut/chance.h"
#include "testcut/correct.h"
#include "testcut/observe.h"

namespace {

double unsureness(const kw::Model& shop, const kw::Belief& belief) {
    double sum = 0.0;
    for (const kw::Outcome& outcome : shop.outcomes)
        sum += std::pow(kw::marginal(belief, outcome.form).sd_mm / outcome.tolerance_mm(), 2);
    return sum;
}

const kw::Reading& named(const kw::Model& shop, const std::string& name) {
    return *std::find_if(shop.readings.begin(), shop.readings.end(),
                         [&](const kw::Reading& reading) { return reading.form.name == name; });
}

}  // namespace

TEST_CASE("a joint that is sure to fit is locked, with no moves; a higher demand is not met") {
    kw::Model shop = est::locking_rabbet();
    kw::Belief belief = kw::belief_from_priors(shop);
    for (const kw::Reading& reading : shop.readings)
        if (reading.kind == kw::ReadingKind::plain)
            belief =
                kw::observe(belief, reading.form, kw::value_at(reading.form, belief.mean), reading.spread_mm);
    const kw::Advice lock = kw::advise(shop, belief);
    CHECK(lock.kind == kw::AdviceKind::lock);
    CHECK(lock.chance_in_tolerance > 0.9);
    CHECK(lock.moves.empty());
    CHECK(lock.reading.empty());

    kw::AdviceOptions stricter;
    stricter.wanted_chance = 0.9999;
    CHECK(kw::advise(shop, belief, stricter).kind != kw::AdviceKind::lock);
}

TEST_CASE("a joint known to be off is moved, and the chances are those before and after") {
    const kw::Model shop = est::locking_rabbet();
    std::vector<double> truth;
    for (const kw::Control& control : shop.controls) truth.push_back(control.set_mm);
    truth[est::height] -= 0.4;
    const kw::Belief belief = est::known(truth);
    const kw::Advice advice = kw::advise(shop, belief);
    REQUIRE(advice.kind == kw::AdviceKind::move);
    REQUIRE(advice.moves.size() == 1);
    CHECK(advice.moves[0].control == est::height);
    CHECK(advice.moves[0].by_mm == doctest::Approx(0.4));
    CHECK(advice.chance_in_tolerance == 0.0);
    CHECK(advice.chance_after_move ==
          kw::chance_in_tolerance(shop, kw::predict_moves(shop, belief, advice.moves)));
}

TEST_CASE("before anything is read, a reading is asked for, and it is the one that tells most") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief belief = kw::belief_from_priors(shop);
    const kw::Advice advice = kw::advise(shop, belief);
    REQUIRE(advice.kind == kw::AdviceKind::measure);
    CHECK(advice.moves.empty());
    // A plain reading's effect on the variances does not depend on what it will say.
    const auto left = [&](const kw::Reading& reading) {
        return unsureness(shop, kw::observe(belief, reading.form, 0.0, reading.spread_mm));
    };
    const double least = left(named(shop, advice.reading));
    for (const kw::Reading& reading : shop.readings)
        if (reading.kind == kw::ReadingKind::plain) CHECK(least <= left(reading) + 1e-12);
}

TEST_CASE("the expected gain of a plain reading is what the outcomes' variances lose") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief belief = kw::belief_from_priors(shop);
    for (const kw::Reading& reading : shop.readings) {
        if (reading.kind != kw::ReadingKind::plain) continue;
        const double lost = unsureness(shop, belief) -
                            unsureness(shop, kw::observe(belief, reading.form, 1.0, reading.spread_mm));
        CHECK(kw::expected_gain(shop, belief, reading) == doctest::Approx(lost).epsilon(1e-9));
    }
}

TEST_CASE("the expected gain of a gap that may be zero is the mean over what it may say (simulated)") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Reading& gap = named(shop, "shoulder_gap");
    for (const double shift : {-0.5, 0.4, 1.0}) {
        est::Random random(501);
        kw::Belief belief = kw::belief_from_priors(shop);
        belief.mean[est::fence] += shift;
        kw::Model shifted = shop;
        shifted.controls[est::fence].set_mm += shift;
        double lost = 0.0;
        constexpr int shops = 20000;
        for (int i = 0; i < shops; ++i) {
            const double value = est::read_off(gap, est::draw(shifted, random), random);
            lost += (unsureness(shop, belief) -
                     unsureness(shop, kw::observe_all(belief, {kw::taken(gap, value)}))) /
                    shops;
        }
        CHECK(kw::expected_gain(shop, belief, gap) == doctest::Approx(lost).epsilon(0.02));
    }
}

TEST_CASE("a reading is asked for as often as allowed, and with none left the move is made") {
    const kw::Model shop = est::locking_rabbet();
    kw::Belief belief = kw::belief_from_priors(shop);
    belief.mean[est::height] += 0.5;
    kw::AdviceOptions options;
    options.most_times = 2;
    const auto& read = options.already_read;
    for (;;) {
        const kw::Advice advice = kw::advise(shop, belief, options);
        if (advice.kind != kw::AdviceKind::measure) break;
        REQUIRE(std::count(read.begin(), read.end(), advice.reading) < options.most_times);
        options.already_read.push_back(advice.reading);
    }
    for (const kw::Reading& reading : shop.readings)
        options.already_read.insert(options.already_read.end(), 2, reading.form.name);
    CHECK(kw::advise(shop, belief, options).kind == kw::AdviceKind::move);
}

TEST_CASE(
    "when the machine is too coarse and all is known, the advice is to lock, at a chance that says so") {
    kw::Model shop;
    shop.controls = {{"height", 6.0, 0.2, true, 0.5, 0.0, 0.0, 1.0}};
    shop.readings = {{est::form("depth", {1.0}), 0.05, kw::ReadingKind::plain}};
    shop.outcomes = {{est::form("depth", {1.0}), 6.0, 0.1, 0.1}};
    const kw::Advice advice = kw::advise(shop, est::known({6.2}));
    CHECK(advice.kind == kw::AdviceKind::lock);
    CHECK(advice.chance_in_tolerance == 0.0);
    CHECK(advice.chance_after_move == 0.0);
}

TEST_CASE("a reading that would tell next to nothing is not asked for, however low the chance") {
    kw::Model shop;
    shop.controls = {{"height", 6.0, 0.2, true, 0.5, 0.0, 0.0, 1.0}};
    shop.readings = {{est::form("depth", {1.0}), 5.0, kw::ReadingKind::plain}};  // a spread of 5 mm
    shop.outcomes = {{est::form("depth", {1.0}), 6.0, 0.1, 0.1}};
    CHECK(kw::advise(shop, kw::belief_from_priors(shop)).kind == kw::AdviceKind::lock);
    shop.readings[0].spread_mm = 0.1;
    CHECK(kw::advise(shop, kw::belief_from_priors(shop)).kind == kw::AdviceKind::measure);
}

TEST_CASE("following the advice comes to a lock in a few test cuts, in every shop") {
    const kw::Model shop = est::locking_rabbet();
    est::Random random(502);
    constexpr int shops = 300;
    int cuts = 0;
    int worst = 0;
    for (int s = 0; s < shops; ++s) {
        std::vector<double> truth = est::draw(shop, random);
        kw::Belief belief = kw::belief_from_priors(shop);
        kw::AdviceOptions options;
        int here = 1;
        for (kw::Advice advice = kw::advise(shop, belief); advice.kind != kw::AdviceKind::lock && here < 30;
             advice = kw::advise(shop, belief, options)) {
            if (advice.kind == kw::AdviceKind::measure) {
                const kw::Reading& reading = named(shop, advice.reading);
                belief = kw::observe_all(belief, {kw::taken(reading, est::read_off(reading, truth, random))});
                options.already_read.push_back(advice.reading);
                continue;
            }
            for (const kw::Move& move : advice.moves) {
                const kw::Control& control = shop.controls[move.control];
                truth[move.control] += move.by_mm + random.normal(control.move_spread_mm) +
                                       random.normal(control.move_gain_spread) * move.by_mm;
            }
            belief = kw::predict_moves(shop, belief, advice.moves);
            options.already_read.clear();
            ++here;
        }
        cuts += here;
        worst = std::max(worst, here);
    }
    CHECK(double(cuts) / shops < 2.2);
    CHECK(worst <= 4);
}
