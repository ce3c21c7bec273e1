// The test cut of a half lap at a corner: what the estimator says of it is what its cut sections measure, and how it goes in
// simulated shops. Spreads and errors of the shops are common practice, no source.
#include <doctest/doctest.h>

#include <random>

#include "shop/many_shops.h"
#include "testcut/recut.h"

namespace {

using kw::Length;

Length lap_mm(double value) { return Length::nearest_mm(value); }

shop::Task half_lap(double sides_mm = 12.1, double front_mm = 12.1) {
    kw::JointAsk ask;
    ask.receiver_thickness = lap_mm(sides_mm);
    ask.insert_thickness = lap_mm(front_mm);
    kw::JointWork work;
    work.chosen.joint = kw::find_joint_type("half lap corner", kw::Place::front)->design(ask).value();
    work.chosen.machine = kw::usual_machine("saw", kw::MachineKind::table_saw);
    work.chosen.cutter = {"quarter stack", kw::CutterKind::dado_stack, "saw", Length::inches(1, 4)};
    work.receiver_thickness = ask.receiver_thickness;
    work.insert_thickness = ask.insert_thickness;
    work.insert_uneven = Length::micrometres(20);
    const std::vector<kw::Group> groups = kw::groups_of(work);
    shop::Task task{groups.back(),
                    std::nullopt,
                    {lap_mm(0.1), lap_mm(0.1), lap_mm(0.15), lap_mm(0.25), lap_mm(0.5)},
                    0.9};
    if (groups.size() > 1) task.slot = groups.front();
    return task;
}

double expected(const kw::Model& model, const kw::Belief& belief, const char* reading) {
    return kw::marginal(belief, kw::reading_named(model, reading)->form).mean_mm;
}

kw::ClosedJoint closed(const shop::Task& task, const kw::Settings& at) {
    const kw::JointWork& work = task.group.work;
    const kw::Settings& side = task.slot ? task.slot->stands : at;
    return kw::close_joint(kw::cut_section(kw::Member::receiver, work.receiver_thickness, lap_mm(80),
                                           {kw::end_removal(side, kw::BoardFace::inside)}),
                           kw::cut_section(kw::Member::insert, work.insert_thickness, lap_mm(80),
                                           {kw::end_removal(at, kw::BoardFace::inside)}),
                           work.chosen.joint.seat, work.chosen.joint.reach)
        .value();
}

}  // namespace

TEST_CASE("boards equally thick are lapped by one fence, one height and one spacer; others by two settings") {
    const kw::Group one = half_lap().group;
    CHECK(one.cuts_slot);
    CHECK(one.cuts_end);
    // On paper: half of 12.1 mm is 6.05 mm, 0.3 mm less than the stack is wide, and that much of it runs in the spacer.
    CHECK(one.designed.fence == Length{});
    CHECK(one.designed.height == lap_mm(6.05));
    CHECK(one.designed.spacer == lap_mm(0.3));
    const std::vector<kw::Setup> setups = kw::setups_of(one);
    REQUIRE(setups.size() == 2);
    CHECK(setups[0].spacer == setups[1].spacer);
    CHECK(setups[0].sacrificial);
    const shop::Task two = half_lap(12.1, 19.0);
    REQUIRE(two.slot);
    CHECK(two.slot->designed.height == lap_mm(6.05));
    CHECK(two.group.designed.height == lap_mm(9.5));
    CHECK(kw::far_at_end(two.slot->designed) == lap_mm(9.5));
    CHECK(kw::far_at_end(two.group.designed) == lap_mm(6.05));
}

TEST_CASE("what a half lap's readings are expected to be is what its sections measure (polygons)") {
    std::mt19937 random(41);
    std::uniform_real_distribution<double> off(-0.4, 0.4);
    for (const shop::Task& task : {half_lap(), half_lap(12.1, 19.0), half_lap(18.0, 18.0)}) {
        const kw::Model model =
            kw::model_of(task.group, task.tolerances, task.partner(), {task.group.designed});
        for (int i = 0; i < 200; ++i) {
            kw::Belief belief = kw::belief_from_priors(model);
            for (const char* control : {"fence", "height", "kerf"})
                belief.mean[*kw::control_named(model, control)] += off(random);
            const kw::ClosedJoint joint = closed(task, kw::settings_by(model, task.group.designed, belief));
            CHECK(expected(model, belief, "width") == doctest::Approx(joint.slot_width.mm()).epsilon(1e-5));
            CHECK(expected(model, belief, "depth") == doctest::Approx(joint.slot_depth.mm()).epsilon(1e-5));
            CHECK(expected(model, belief, "lap_thickness") ==
                  doctest::Approx(joint.entering.mm()).epsilon(1e-5));
            CHECK(expected(model, belief, "lap_length") ==
                  doctest::Approx(joint.tongue_length->mm()).epsilon(1e-5));
            CHECK(std::max(0.0, expected(model, belief, "shoulder_gap")) ==
                  doctest::Approx(joint.shoulder_gap->mm()).epsilon(1e-5));
            CHECK(expected(model, belief, "face_step") ==
                  doctest::Approx(joint.face_step.mm()).epsilon(1e-5));
        }
    }
}

TEST_CASE("whether the same ends of a half lap will do is the same by the model and by the sections cut") {
    std::mt19937 random(42);
    const shop::Task task = half_lap();
    const kw::Model model = kw::model_of(task.group, task.tolerances, nullptr, {task.group.designed});
    const kw::Belief prior = kw::belief_from_priors(model);
    const kw::Settings old = kw::settings_by(model, task.group.designed, prior);
    int same = 0;
    for (int i = 0; i < 300; ++i) {
        std::vector<kw::Move> moves;
        for (const char* control : {"fence", "height", "spacer"})
            if (random() % 2 == 0)
                moves.push_back({*kw::control_named(model, control), 0.05 * double(random() % 5) - 0.1});
        const kw::Settings next =
            kw::settings_by(model, task.group.designed, kw::predict_moves(model, prior, moves));
        CHECK(kw::recuts(model, prior, moves) == kw::same_ends_will_do(task.group, old, next));
        same += kw::recuts(model, prior, moves);
    }
    CHECK(same > 20);
    CHECK(same < 280);
}

TEST_CASE("with a caliper a half lap takes hardly more test cuts than one who knows every error needs") {
    constexpr int shops = 300;
    const shop::ManyShops all = shop::in_many_shops(shop::all_kinds().front(), half_lap(), shops);
    MESSAGE("cuts: ", all.knows, " by one who knows, ", all.program, " by the program; bad locks ",
            all.bad_locks);
    CHECK(all.program < 1.25 * all.knows);
    CHECK(all.bad_locks < shops / 10);  // it locks at nine in ten
}
