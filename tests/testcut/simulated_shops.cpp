// Whole test cuts in simulated shops: few shops of each kind, with a wide margin. `./dev bench testcuts` has the figures.
#include <doctest/doctest.h>

#include "est_shop.h"
#include "shop/slips.h"
#include "testcut/recut.h"

namespace {

// A locking rabbet of one height in 12.1 mm stock, with a stack of a quarter inch.
shop::Task rabbet() {
    kw::JointAsk ask;
    ask.receiver_thickness = ask.insert_thickness = kw::Length::micrometres(12100);
    ask.slot_width = kw::Length::inches(1, 4);
    ask.clearance = kw::Length::micrometres(100);
    ask.end_relief = kw::Length::micrometres(400);
    kw::JointWork work;
    work.chosen.joint = kw::find_joint_type("locking rabbet", kw::Place::front)->design(ask).value();
    work.chosen.machine = kw::usual_machine("saw", kw::MachineKind::table_saw);
    work.chosen.cutter = {"quarter stack", kw::CutterKind::dado_stack, "saw", kw::Length::inches(1, 4)};
    work.receiver_thickness = work.insert_thickness = ask.insert_thickness;
    work.insert_uneven = kw::Length::micrometres(20);
    const auto mm = [](double value) { return kw::Length::nearest_mm(value); };
    return {kw::groups_of(work).front(), std::nullopt, {mm(0.1), mm(0.1), mm(0.15), mm(0.25), mm(0.5)}, 0.9};
}

double mean_cuts(const shop::KindOfShop& kind, const char* who, int shops) {
    const shop::Task task = rabbet();
    double cuts = 0.0;
    for (int s = 0; s < shops; ++s) {
        shop::TrueShop shop(kind, std::uint64_t(s));
        shop.begin(task.group);
        const std::string mover = who;
        cuts += mover == "knows" ? shop::play(task, shop, *shop::all_knowing(task, shop)).cuts
                : mover == "habit"
                    ? shop::play(task, shop, *shop::one_at_a_time(task, shop)).cuts
                    : shop::play(task, shop, *shop::by_the_program(task, shop, {task.group.designed})).cuts;
    }
    return cuts / shops;
}

}  // namespace

TEST_CASE(
    "with a caliper the program needs hardly more test cuts than one who knows every error, and fewer than "
    "the habit") {
    const shop::KindOfShop owner = shop::all_kinds().front();
    const double knows = mean_cuts(owner, "knows", 300), program = mean_cuts(owner, "program", 300);
    CHECK(program < 1.12 * knows);
    CHECK(program < 0.9 * mean_cuts(owner, "habit", 300));
}

TEST_CASE("by feel alone it needs more, and still fewer than the habit") {
    const shop::KindOfShop feel = shop::all_kinds().back();
    const double program = mean_cuts(feel, "program", 200);
    CHECK(program > mean_cuts(feel, "knows", 200));
    CHECK(program < 0.85 * mean_cuts(feel, "habit", 200));
}

TEST_CASE("a reading ten times too large is asked again, and hardly ever one that is right") {
    shop::Caught slips, none;
    for (int s = 0; s < 400; ++s) {
        shop::try_slip(rabbet(), shop::all_kinds().front(), std::uint64_t(s), shop::SlipMade::ten_times,
                       slips);
        shop::try_slip(rabbet(), shop::all_kinds().front(), std::uint64_t(s), shop::SlipMade::none, none);
    }
    CHECK(slips.asked_that_matter > 0.97 * slips.matter);
    CHECK(none.asked < 0.02 * none.times);
}

TEST_CASE(
    "whether the same ends will do is the same by the model's forms and by the sections cut (polygons)") {
    est::Random random(903);
    const shop::Task task = rabbet();
    const kw::Model model = kw::model_of(task.group, task.tolerances, nullptr, {task.group.designed});
    const kw::Belief prior = kw::belief_from_priors(model);
    const kw::Settings old = kw::settings_by(model, task.group.designed, prior);
    int same = 0;
    for (int i = 0; i < 300; ++i) {
        std::vector<kw::Move> moves;
        for (const char* control : {"fence", "height", "spacer", "kerf"})
            if (random.below(2) == 0)
                moves.push_back({*kw::control_named(model, control), 0.05 * double(random.below(5)) - 0.1});
        const kw::Settings next =
            kw::settings_by(model, task.group.designed, kw::predict_moves(model, prior, moves));
        CHECK(kw::recuts(model, prior, moves) == kw::same_ends_will_do(task.group, old, next));
        same += kw::recuts(model, prior, moves);
    }
    CHECK(same > 20);
    CHECK(same < 280);
}
