// The move search: against hand-worked couplings of the locking rabbet, and against trying every move.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "est_shop.h"
#include "testcut/chance.h"
#include "testcut/move_search.h"

namespace {

double moved(const kw::BestMove& best, std::size_t control) {
    for (const kw::Move& move : best.moves)
        if (move.control == control) return move.by_mm;
    return 0.0;
}

std::vector<double> where_set(const kw::Model& shop) {
    std::vector<double> controls;
    for (const kw::Control& control : shop.controls) controls.push_back(control.set_mm);
    return controls;
}

// The locking rabbet with every control stepless enough and every outcome tight, so that only the exact move
// will do.
kw::Model exacting_rabbet() {
    kw::Model shop = est::locking_rabbet();
    for (kw::Control& control : shop.controls) {
        control.resolution_mm = control.movable ? 0.05 : 0.0;
        control.move_spread_mm = control.move_gain_spread = 0.0;
    }
    for (kw::Outcome& outcome : shop.outcomes) outcome.below_mm = outcome.above_mm = 0.02;
    return shop;
}

// One control, one outcome: a dado's depth.
kw::Model one_control(double resolution, double tolerance) {
    kw::Model shop;
    shop.controls = {{"height", 6.0, 0.2, true, resolution, 0.0, 0.0, 1.0}};
    shop.outcomes = {{est::form("depth", {1.0}), 6.0, tolerance, tolerance}};
    return shop;
}

double worth(const kw::Model& shop, const kw::Belief& belief, const std::vector<kw::Move>& moves,
             double price) {
    double effort = 0.0;
    for (const kw::Move& move : moves) effort += shop.controls[move.control].effort;
    return kw::chance_in_tolerance(shop, kw::predict_moves(shop, belief, moves)) - price * effort;
}

}  // namespace

// The three couplings of the joint's derivation: dado depth = h, tongue thickness = T - h, tongue length = f
// + k - s, lip = f.
TEST_CASE(
    "raising the blade thins the tongue and deepens the dado by the same amount, and leaves its length") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief before = kw::belief_from_priors(shop);
    const kw::Belief after = kw::predict_move(shop, before, {est::height, 0.3});
    const auto change = [&](std::size_t reading) {
        const kw::Form& form = shop.readings[reading].form;
        return kw::marginal(after, form).mean_mm - kw::marginal(before, form).mean_mm;
    };
    CHECK(change(1) == doctest::Approx(0.3));             // dado depth
    CHECK(change(3) == doctest::Approx(-0.3));            // tongue thickness
    CHECK(change(4) == doctest::Approx(0.0).scale(1.0));  // tongue length
    CHECK(change(6) == doctest::Approx(0.3));             // fit
}

TEST_CASE(
    "moving the fence out moves the lip and lengthens the tongue; a thicker spacer shortens the tongue") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief before = kw::belief_from_priors(shop);
    const auto at = [&](const kw::Belief& belief, std::size_t reading) {
        return kw::marginal(belief, shop.readings[reading].form).mean_mm;
    };
    const kw::Belief out = kw::predict_move(shop, before, {est::fence, 0.2});
    CHECK(at(out, 2) - at(before, 2) == doctest::Approx(0.2));
    CHECK(at(out, 4) - at(before, 4) == doctest::Approx(0.2));
    const kw::Belief thicker = kw::predict_move(shop, before, {est::spacer, 0.2});
    CHECK(at(thicker, 2) - at(before, 2) == doctest::Approx(0.0).scale(1.0));
    CHECK(at(thicker, 4) - at(before, 4) == doctest::Approx(-0.2));
}

TEST_CASE("thicker stock asks for blade and fence together, and leaves the spacer") {
    // h = T - w + c and f = h + e; s = w + g + e has no T in it.
    const kw::Model shop = exacting_rabbet();
    std::vector<double> truth = where_set(shop);
    truth[est::stock] += 0.25;
    const kw::BestMove best = kw::best_move(shop, est::known(truth));
    CHECK(best.chance_after == 1.0);
    CHECK(moved(best, est::height) == doctest::Approx(0.25));
    CHECK(moved(best, est::fence) == doctest::Approx(0.25));
    CHECK(best.moves.size() == 2);
}

TEST_CASE("a wider stack of cutters asks for blade down, fence in and a thicker spacer, all by the same") {
    // h = T - w + c, f = h + e, s = w + g + e.
    const kw::Model shop = exacting_rabbet();
    for (const double wider : {0.2, -0.35}) {
        std::vector<double> truth = where_set(shop);
        truth[est::kerf] += wider;
        kw::Model shims = shop;
        shims.controls[est::spacer].resolution_mm = 0.05;
        const kw::BestMove best = kw::best_move(shims, est::known(truth));
        CHECK(best.chance_after == 1.0);
        CHECK(moved(best, est::height) == doctest::Approx(-wider));
        CHECK(moved(best, est::fence) == doctest::Approx(-wider));
        CHECK(moved(best, est::spacer) == doctest::Approx(wider));
    }
}

TEST_CASE("what is known exactly and out of tolerance is brought to the target within half a step") {
    est::Random random(401);
    for (int i = 0; i < 200; ++i) {
        const double step = random.uniform(0.02, 0.1);
        const kw::Model shop = one_control(step, random.uniform(0.06, 0.1));
        const double off = random.uniform(0.11, 2.0) * (random.below(2) == 0 ? 1.0 : -1.0);
        const kw::BestMove best = kw::best_move(shop, est::known({6.0 + off}));
        REQUIRE(best.moves.size() == 1);
        CHECK(best.chance_after == 1.0);
        CHECK(std::abs(off + best.moves[0].by_mm) <= 0.5 * step + 1e-9);
        CHECK(std::abs(std::remainder(best.moves[0].by_mm, step)) < 1e-9);
    }
}

TEST_CASE("with three controls known exactly, every outcome comes to its target within the controls' steps") {
    est::Random random(402);
    for (int i = 0; i < 200; ++i) {
        const kw::Model shop = exacting_rabbet();
        kw::Model fine = shop;
        for (kw::Control& control : fine.controls) control.resolution_mm = control.movable ? 0.01 : 0.0;
        std::vector<double> truth = where_set(shop);
        for (double& value : truth) value += random.normal(0.4);
        kw::MoveOptions effortless;
        effortless.effort_price = 0.0;
        const kw::BestMove best = kw::best_move(fine, est::known(truth), effortless);
        CHECK(best.chance_after == 1.0);
        const kw::Belief after = kw::predict_moves(fine, est::known(truth), best.moves);
        double miss = 0.0;
        for (const kw::Outcome& outcome : fine.outcomes)
            miss += std::pow(kw::marginal(after, outcome.form).mean_mm - outcome.target_mm, 2);
        // Rounding each control to its nearest step leaves at most 0.005 in the fit, 0.015 in the gap, 0.01
        // in the step.
        CHECK(std::sqrt(miss) <= std::hypot(0.005, 0.015, 0.01) + 1e-9);
    }
}

TEST_CASE("a stepless control is moved right to the target") {
    const kw::Model shop = one_control(0.0, 0.1);
    const kw::BestMove best = kw::best_move(shop, est::known({6.337}));
    REQUIRE(best.moves.size() == 1);
    CHECK(best.moves[0].by_mm == doctest::Approx(-0.337).epsilon(1e-6));
}

TEST_CASE("less than half a step is not moved, even when it is out of tolerance") {
    const kw::Model shop = one_control(0.5, 0.1);
    CHECK(kw::best_move(shop, est::known({6.2})).moves.empty());
    CHECK(kw::best_move(shop, est::known({6.2})).chance_after == 0.0);
    CHECK(kw::best_move(shop, est::known({6.45})).moves.size() == 1);
}

TEST_CASE("what is in tolerance already is left alone") {
    const kw::Model shop = est::locking_rabbet();
    const kw::BestMove best = kw::best_move(shop, est::known(where_set(shop)));
    CHECK(best.moves.empty());
    CHECK(best.chance_after == 1.0);
}

TEST_CASE("a move's own error is in the chance after it") {
    kw::Model shop = one_control(0.1, 0.1);
    shop.controls[0].move_spread_mm = 0.05;
    shop.controls[0].move_gain_spread = 0.10;
    const kw::BestMove best = kw::best_move(shop, est::known({5.0}));
    REQUIRE(best.moves.size() == 1);
    CHECK(best.moves[0].by_mm == doctest::Approx(1.0));
    const double sd = std::hypot(0.05, 0.10);
    CHECK(std::abs(best.chance_after - std::erf(0.1 / sd / std::sqrt(2.0))) < kw::chance_accuracy);
}

TEST_CASE("of two controls that do the same, the one with less effort is moved") {
    kw::Model shop;
    shop.controls = {{"fence", 0.0, 0.1, true, 0.05, 0.0, 0.0, 2.0},
                     {"shim", 0.0, 0.1, true, 0.05, 0.0, 0.0, 1.0}};
    shop.outcomes = {{est::form("near", {1.0, -1.0}), 0.0, 0.05, 0.05}};
    const kw::BestMove shim = kw::best_move(shop, est::known({0.5, 0.0}));
    REQUIRE(shim.moves.size() == 1);
    CHECK(shim.moves[0] == kw::Move{1, shim.moves[0].by_mm});
    CHECK(shim.moves[0].by_mm == doctest::Approx(0.5));
    std::swap(shop.controls[0].effort, shop.controls[1].effort);
    const kw::BestMove fence = kw::best_move(shop, est::known({0.5, 0.0}));
    REQUIRE(fence.moves.size() == 1);
    CHECK(fence.moves[0].control == 0);
    CHECK(fence.moves[0].by_mm == doctest::Approx(-0.5));
}

TEST_CASE("two coarse controls do together what neither does alone") {
    kw::Model shop;
    shop.controls = {{"wheel", 0.0, 0.1, true, 0.30, 0.0, 0.0, 1.0},
                     {"paper", 0.0, 0.1, true, 0.10, 0.0, 0.0, 1.0}};
    shop.outcomes = {{est::form("depth", {1.0, 0.0}), 0.0, 0.5, 0.5},
                     {est::form("near", {1.0, 1.0}), 0.0, 0.02, 0.02}};
    const kw::BestMove best = kw::best_move(shop, est::known({-0.7, 0.0}));
    CHECK(best.chance_after == 1.0);
    CHECK(moved(best, 0) == doctest::Approx(0.6));
    CHECK(moved(best, 1) == doctest::Approx(0.1));
}

TEST_CASE("moves are whole steps of movable controls, at most as many as allowed") {
    est::Random random(403);
    const kw::Model shop = est::locking_rabbet();
    for (int i = 0; i < 100; ++i) {
        std::vector<double> truth = where_set(shop);
        for (double& value : truth) value += random.normal(0.5);
        kw::MoveOptions options;
        options.most_moves = 1 + random.below(3);
        const kw::BestMove best = kw::best_move(shop, est::known(truth), options);
        CHECK(best.moves.size() <= options.most_moves);
        for (const kw::Move& move : best.moves) {
            const kw::Control& control = shop.controls[move.control];
            CHECK(control.movable);
            CHECK(move.by_mm != 0.0);
            CHECK(std::abs(std::remainder(move.by_mm, control.resolution_mm)) < 1e-9);
        }
    }
}

TEST_CASE("a shop seen in a mirror gets the mirrored move") {
    est::Random random(404);
    const kw::Model shop = est::locking_rabbet();
    kw::Model mirrored = shop;
    for (kw::Control& control : mirrored.controls) control.set_mm = -control.set_mm;
    for (kw::Outcome& outcome : mirrored.outcomes) {
        outcome.target_mm = -outcome.target_mm;
        std::swap(outcome.below_mm, outcome.above_mm);
    }
    for (int i = 0; i < 50; ++i) {
        kw::Belief belief = kw::belief_from_priors(shop);
        for (double& mean : belief.mean) mean += random.normal(0.3);
        for (double& entry : belief.covariance) entry *= 0.05;
        kw::Belief other = belief;
        for (double& mean : other.mean) mean = -mean;
        const kw::BestMove best = kw::best_move(shop, belief);
        const kw::BestMove mirror = kw::best_move(mirrored, other);
        REQUIRE(best.moves.size() == mirror.moves.size());
        for (std::size_t m = 0; m < best.moves.size(); ++m) {
            CHECK(best.moves[m].control == mirror.moves[m].control);
            CHECK(best.moves[m].by_mm == doctest::Approx(-mirror.moves[m].by_mm));
        }
        CHECK(best.chance_after == doctest::Approx(mirror.chance_after).epsilon(1e-4));
    }
}

TEST_CASE("no move of the three controls, of all within five steps, is worth more than the one found") {
    est::Random random(405);
    constexpr int steps = 5;
    const kw::MoveOptions options;
    for (int i = 0; i < 30; ++i) {
        kw::Model shop = est::locking_rabbet();
        if (i % 3 == 1) shop.outcomes[1].below_mm = 0.15;
        if (i % 3 == 2)
            for (kw::Control& control : shop.controls) control.resolution_mm *= 2.0;
        kw::Belief belief = kw::belief_from_priors(shop);
        for (const kw::Reading& seen : shop.readings) {
            if (seen.kind != kw::ReadingKind::plain || random.below(3) == 0) continue;
            const double value = kw::marginal(belief, seen.form).mean_mm + random.normal(0.12);
            belief = kw::observe(belief, seen.form, value, seen.spread_mm * (i % 2 == 0 ? 0.3 : 1.0));
        }
        double most = -1.0;
        for (int f = -steps; f <= steps; ++f) {
            for (int h = -steps; h <= steps; ++h) {
                for (int s = -steps; s <= steps; ++s) {
                    std::vector<kw::Move> moves;
                    const std::pair<std::size_t, int> all[] = {
                        {est::fence, f}, {est::height, h}, {est::spacer, s}};
                    for (const auto& [control, count] : all)
                        if (count != 0)
                            moves.push_back({control, count * shop.controls[control].resolution_mm});
                    most = std::max(most, worth(shop, belief, moves, options.effort_price));
                }
            }
        }
        // What nearness to the targets may cost (0.001), the coarser chances of the search, and no more.
        const kw::BestMove best = kw::best_move(shop, belief, options);
        CHECK(worth(shop, belief, best.moves, options.effort_price) > most - 0.002);
    }
}

TEST_CASE("where nothing is asked for, nothing moves") {
    kw::Model shop = est::locking_rabbet();
    shop.outcomes.clear();
    const kw::BestMove best = kw::best_move(shop, kw::belief_from_priors(shop));
    CHECK(best.moves.empty());
    CHECK(best.chance_after == 1.0);
}

TEST_CASE("an outcome's tolerance is half its width, or the deviation of its only closed side") {
    constexpr double open = std::numeric_limits<double>::infinity();
    const kw::Form form = est::form("any", {1.0});
    CHECK(kw::Outcome{form, 0.1, 0.1, 0.3}.tolerance_mm() == doctest::Approx(0.2));
    CHECK(kw::Outcome{form, 0.1, open, 0.3}.tolerance_mm() == 0.3);
    CHECK(kw::Outcome{form, 0.1, 0.1, open}.tolerance_mm() == 0.1);
    CHECK(kw::Outcome{form, 0.1, open, open}.tolerance_mm() == open);
}

TEST_CASE("a model with a form of the wrong length, no room or too many outcomes is not sound") {
    const kw::Model sound = est::locking_rabbet();
    CHECK(kw::is_sound(sound));
    const auto spoilt = [&](const auto& spoil) {
        kw::Model model = sound;
        spoil(model);
        return !kw::is_sound(model);
    };
    CHECK(spoilt([](kw::Model& m) { m.readings[3].form.weights.pop_back(); }));
    CHECK(spoilt([](kw::Model& m) { m.outcomes[0].form.weights.push_back(1.0); }));
    CHECK(spoilt([](kw::Model& m) { m.outcomes[0].below_mm = m.outcomes[0].above_mm = 0.0; }));
    CHECK(spoilt([](kw::Model& m) { m.outcomes.resize(5, m.outcomes[0]); }));
    CHECK(spoilt([](kw::Model& m) { m.controls[0].spread_mm = -0.1; }));
    CHECK(spoilt([](kw::Model& m) { m.controls[0].set_mm = std::nan(""); }));
    CHECK(spoilt([](kw::Model& m) { m.readings[0].spread_mm = -1.0; }));
    CHECK(spoilt([](kw::Model& m) { m = {}; }));
}
