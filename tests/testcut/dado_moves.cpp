// How a dado is brought to its width: with the shims that are owned, or with a second pass.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "est_shop.h"
#include "setup/shims.h"
#include "testcut/correct.h"
#include "testcut/joint_model.h"

using kw::Length;

namespace {

Length mm(double value) { return Length::nearest_mm(value); }

// A dado for 12.1 mm stock with a clearance of 0.1, by one pass of a cutter of that width.
kw::Group dado(kw::CutterKind kind, std::vector<Length> in_it, std::vector<Length> spare, int ends) {
    kw::JointAsk ask;
    ask.receiver_thickness = ask.insert_thickness = mm(12.1);
    ask.clearance = mm(0.1);
    ask.end_relief = mm(0.4);
    ask.near = mm(25);
    kw::JointWork work;
    work.chosen.joint = kw::find_joint_type("dado", kw::Place::back)->design(ask).value();
    work.chosen.machine = kw::usual_machine("saw", kw::MachineKind::table_saw);
    work.chosen.cutter = {"stack", kind, "saw", mm(12.2), std::move(in_it), std::move(spare)};
    work.receiver_thickness = work.insert_thickness = ask.insert_thickness;
    work.receivers.resize(std::size_t(ends), {"side", kw::Reference::rear_end});
    return kw::groups_of(work).front();
}

kw::Model model_of(const kw::Group& group, const kw::Settings& dial) {
    const kw::GroupTolerances tolerances{mm(0.1), mm(0.1), mm(0.15), mm(0.25), mm(0.5)};
    return kw::movable_from(kw::model_of(group, tolerances, nullptr, {group.designed}), group, dial);
}

// All known, and the slot wider than it should be by so much.
kw::Belief wide_by(const kw::Model& model, double by_mm) {
    kw::Belief belief = kw::belief_from_priors(model);
    std::fill(belief.covariance.begin(), belief.covariance.end(), 0.0);
    belief.mean[*kw::control_named(model, "kerf")] += by_mm;
    return belief;
}

double moved(const kw::Model& model, const kw::BestMove& best, const char* control) {
    for (const kw::Move& move : best.moves)
        if (model.controls[move.control].name == control) return move.by_mm;
    return 0.0;
}

kw::BestMove best_for(const kw::Group& group, double wide_by_mm) {
    const kw::Model model = model_of(group, group.designed);
    return kw::best_move(model, wide_by(model, wide_by_mm), {0.02, 0.0, 3});
}

}  // namespace

TEST_CASE("a slot is widened and narrowed by what the owned shims add up to, and by nothing else") {
    est::Random random(1101);
    for (int i = 0; i < 200; ++i) {
        std::vector<Length> in_it, spare;
        for (std::size_t s = 0; s <= random.below(4); ++s)
            (random.below(2) ? in_it : spare)
                .push_back(Length::micrometres(50 * std::int64_t(1 + random.below(10))));
        // Many drawers, so that a second pass would be the dearer way.
        const kw::Group group = dado(kw::CutterKind::dado_stack, in_it, spare, 80);
        const kw::Model model = model_of(group, group.designed);
        const kw::BestMove best = kw::best_move(model, wide_by(model, random.normal(0.4)), {0.002, 0.0, 3});
        const double by = moved(model, best, "kerf");
        const auto sums = kw::shim_sums(group.work.chosen.cutter);
        const Length total = kw::shims_in(group.work.chosen.cutter) + mm(by);
        CHECK(std::any_of(sums.begin(), sums.end(),
                          [&](Length sum) { return kw::abs(sum - total) < mm(1e-4); }));
    }
}

TEST_CASE("what was put in is counted: the next correction starts from the shims that are in now") {
    const kw::Group group = dado(kw::CutterKind::dado_stack, {}, {mm(0.1), mm(0.2)}, 80);
    kw::Settings dial = group.designed;
    dial.kerf += mm(0.3);
    const kw::Model model = model_of(group, dial);
    const auto& amounts = model.controls[*kw::control_named(model, "kerf")].amounts_mm;
    REQUIRE(amounts.size() == 4);
    CHECK(amounts.front() == doctest::Approx(-0.3));  // all out
    CHECK(amounts.back() == 0.0);                     // no more to put in
}

TEST_CASE("a bit takes no shims: a slot that is too narrow gets a second pass, one too wide gets nothing") {
    const kw::Group group = dado(kw::CutterKind::bit, {}, {}, 4);
    const kw::Model model = model_of(group, group.designed);
    const kw::BestMove narrow = best_for(group, -0.3);
    CHECK(moved(model, narrow, "shift") == doctest::Approx(0.3));
    CHECK(moved(model, narrow, "kerf") == 0.0);
    CHECK(narrow.chance_after > 0.9);
    CHECK(best_for(group, 0.3).moves.empty());
}

TEST_CASE("a second pass that is too far out comes back, but never nearer than the first") {
    const kw::Group group = dado(kw::CutterKind::bit, {}, {}, 4);
    kw::Settings dial = group.designed;
    dial.shift = mm(0.3);
    kw::Model model = model_of(group, dial);
    kw::Belief belief = wide_by(model, 0.0);
    belief.mean[*kw::control_named(model, "shift")] = 0.3;
    for (const double wide : {0.1, 0.2, 0.3, 0.5, 0.9}) {
        belief.mean[*kw::control_named(model, "kerf")] = 12.2 - 0.3 + wide;
        const double by = moved(model, kw::best_move(model, belief, {0.02, 0.0, 3}), "shift");
        CHECK(by <= 0.0);
        CHECK(by >= -0.3 - 1e-9);
    }
}

TEST_CASE(
    "for two drawers the fence is moved for a second pass, for thirty the stack gets a shim (common "
    "practice, no source)") {
    const auto few = dado(kw::CutterKind::dado_stack, {}, {mm(0.3)}, 4),
               many = dado(kw::CutterKind::dado_stack, {}, {mm(0.3)}, 60);
    CHECK(moved(model_of(few, few.designed), best_for(few, -0.3), "shift") == doctest::Approx(0.3));
    CHECK(moved(model_of(many, many.designed), best_for(many, -0.3), "kerf") == doctest::Approx(0.3));
}

TEST_CASE("an added pass makes two setups of one, and only while it is there") {
    kw::Group group = dado(kw::CutterKind::bit, {}, {}, 4);
    CHECK(kw::setups_of(group).size() == 1);
    group.stands.shift = mm(0.3);
    const auto setups = kw::setups_of(group);
    REQUIRE(setups.size() == 2);
    CHECK(setups[0].fence == group.stands.fence);
    CHECK(setups[1].fence == group.stands.fence + mm(0.3));
    CHECK(setups[0].test_cut);
    CHECK_FALSE(setups[1].test_cut);
}

TEST_CASE(
    "a joint that is likely out is corrected though the move is dear; one that is likely good enough is "
    "not") {
    kw::Model model;
    model.controls = {{"kerf", 12.0, 0.0, true, 0.05, 0.0, 0.0, 40.0}};
    model.outcomes = {{est::form("width", {1.0}), 12.2, 0.1, 0.1}};
    const auto advised = [&](double at, double sd) {
        kw::Belief belief = est::known({at});
        belief.covariance[0] = sd * sd;
        return kw::advise(model, belief);
    };
    const kw::Advice out = advised(12.0, 0.01);
    CHECK(out.kind == kw::AdviceKind::move);
    REQUIRE(out.moves.size() == 1);
    CHECK(out.moves[0].by_mm == doctest::Approx(0.2));
    // Eighty-odd in a hundred, and a move for the rest that costs most of a test cut.
    const kw::Advice good = advised(12.16, 0.06);
    CHECK(good.chance_in_tolerance > 0.75);
    CHECK(good.chance_in_tolerance < 0.9);
    CHECK(good.kind == kw::AdviceKind::lock);
}
