// Facts of the trade about setups. Common practice, no source.
#include <doctest/doctest.h>

#include <random>

#include "inches.h"
#include "joint/kinds.h"
#include "setup/setup.h"

using namespace kw;
using tests::in;

namespace {

JointWork locking_rabbet_work(const JointAsk& ask, const std::string& machine, MachineKind kind,
                              Length kerf) {
    JointWork work;
    work.chosen = {
        design_locking_rabbet(ask).value(), usual_machine(machine, kind),
        Cutter{"quarter", kind == MachineKind::table_saw ? CutterKind::dado_stack : CutterKind::bit, machine,
               kerf}};
    work.label = "locking rabbet";
    work.receiver_thickness = ask.receiver_thickness;
    work.insert_thickness = ask.insert_thickness;
    work.guide = "miter gauge";
    work.receivers = {{"a.1.side_left", Reference::front_end}, {"a.1.side_right", Reference::front_end}};
    work.inserts = {{"a.1.front", Reference::left_end}, {"a.1.front", Reference::right_end}};
    return work;
}

JointAsk half_inch() {
    JointAsk ask;
    ask.receiver_thickness = in(1, 2);
    ask.insert_thickness = in(1, 2);
    ask.slot_width = in(1, 4);
    return ask;
}

}  // namespace

TEST_CASE(
    "half-inch stock and a quarter stack: height and spacer are a quarter inch, far side one stock thickness "
    "out") {
    for (const MachineKind kind : {MachineKind::table_saw, MachineKind::router_table}) {
        const auto groups = groups_of(locking_rabbet_work(half_inch(), "machine", kind, in(1, 4)));
        REQUIRE(groups.size() == 1);  // one height serves both
        CHECK(groups[0].designed.fence + groups[0].designed.kerf == in(1, 2));
        CHECK(groups[0].designed.height == in(1, 4));
        CHECK(groups[0].designed.spacer == in(1, 4));
        CHECK_FALSE(is_sacrificial(groups[0].designed));
        CHECK_FALSE(needs_nibble(groups[0].designed));
    }
}

TEST_CASE(
    "end relief makes the spacer thicker than the fence's setting: it is cut into, and said to be "
    "sacrificial") {
    JointAsk ask = half_inch();
    ask.end_relief = in(1, 64);
    const auto groups = groups_of(locking_rabbet_work(ask, "saw", MachineKind::table_saw, in(1, 4)));
    const auto setups = setups_of(groups[0]);
    CHECK(setups[1].sacrificial);
    CHECK(setups[1].spacer - setups[1].fence == in(1, 64));
}

TEST_CASE("a blade makes the dado in two passes, near side first, and nibbles the rabbet") {
    const auto groups = groups_of(locking_rabbet_work(half_inch(), "saw", MachineKind::table_saw, in(1, 8)));
    const auto setups = setups_of(groups[0]);
    REQUIRE(setups.size() == 3);
    CHECK(setups[0].work == "locking rabbet: side dado, pass 1 of 2");
    CHECK(setups[1].work == "locking rabbet: rabbet");
    CHECK(setups[2].work == "locking rabbet: side dado, pass 2 of 2");
    CHECK(setups[2].fence - setups[0].fence == in(1, 8));
    CHECK(setups[1].passes[0].nibble);
    CHECK(setups[1].fence == setups[0].fence);
}

TEST_CASE("a thick front in thin sides is two groups with two heights") {
    JointAsk ask = half_inch();
    ask.insert_thickness = in(3, 4);
    const auto groups = groups_of(locking_rabbet_work(ask, "saw", MachineKind::table_saw, in(1, 4)));
    REQUIRE(groups.size() == 2);
    CHECK(groups[0].cuts_slot);
    CHECK_FALSE(groups[0].cuts_end);
    CHECK(groups[1].cuts_end);
    CHECK(groups[0].designed.height < groups[1].designed.height);
}

TEST_CASE("passes with any kerf clear a slot of any width exactly, with no ridge between them") {
    std::mt19937 random(5);
    for (int i = 0; i < 2000; ++i) {
        const Length kerf =
            Length::micrometres(std::uniform_int_distribution<std::int64_t>(1'000, 9'000)(random));
        const Length width =
            Length::micrometres(std::uniform_int_distribution<std::int64_t>(1'000, 20'000)(random));
        if (width < kerf) continue;
        const Cut cut{Member::receiver,        BoardFace::inside,
                      Length::millimetres(10), width,
                      Length::millimetres(4),  "dado"};
        const Settings settings = settings_for_slot(cut, kerf);
        const int passes = passes_for(width, kerf);
        CHECK(fence_of_pass(settings, 0, passes) == cut.near);
        CHECK(fence_of_pass(settings, passes - 1, passes) + kerf == cut.far());
        for (int pass = 1; pass < passes; ++pass)
            CHECK(fence_of_pass(settings, pass, passes) <= fence_of_pass(settings, pass - 1, passes) + kerf);
    }
}

TEST_CASE(
    "a slot is planned with the passes that its cutter is known to need, and as called where that will do") {
    Cutter stack;
    stack.kerf = Length::micrometres(6350);
    const auto planned = [&](int width_um, int wider_um) {
        stack.known_wider = Length::micrometres(wider_um);
        return planned_passes(Length::micrometres(width_um), stack);
    };
    CHECK(planned(12200, 0) == 2);
    CHECK(planned(12200, -100) == 2);
    CHECK(planned(12200, -300) == 3);
    CHECK(planned(12800, 0) == 3);
    CHECK(planned(12800, 60) == 2);
    // A ridge that does not stand is no reason for a pass more.
    CHECK(planned(12700, -10) == 2);
    CHECK(planned(12700, -60) == 3);
    // As wide as the slot, or wider: one. And one as called stays one.
    CHECK(planned(6500, 0) == 2);
    CHECK(planned(6500, 200) == 1);
    CHECK(planned(6350, -300) == 1);
    // No cutter is less than half of what it is called.
    CHECK(planned(12200, -6000) == 2);
    // Enough that no ridge is left, and never more than touch each other.
    for (int width_um = 6400; width_um < 20000; width_um += 137)
        for (int wider_um = -900; wider_um <= 900; wider_um += 45) {
            const double kerf_mm = 6.35 + 0.001 * wider_um, out_mm = 0.001 * width_um - kerf_mm;
            const int passes = planned(width_um, wider_um);
            CAPTURE(width_um);
            CAPTURE(wider_um);
            if (passes > 1) CHECK(out_mm / (passes - 1) <= kerf_mm + 0.05);
            else CHECK(out_mm <= 0.03);
            const int called = planned(width_um, 0);
            if (passes > called) CHECK(out_mm / (passes - 2) > kerf_mm);
        }
}

TEST_CASE("equal settings are one setup for the whole batch") {
    JointWork first = locking_rabbet_work(half_inch(), "saw", MachineKind::table_saw, in(1, 4));
    JointWork second = first;
    second.receivers = {{"b.1.side_left", Reference::front_end}};
    auto groups = groups_of(first);
    for (const Group& group : groups_of(second)) groups.push_back(group);
    const auto merged = merge_groups(groups);
    REQUIRE(merged.size() == 1);
    CHECK(merged[0].work.receivers.size() == 3);
}

TEST_CASE("a cutter wider than the arbor takes is not used") {
    const Shop shop{{usual_machine("saw", MachineKind::table_saw)},
                    {{"wide stack", CutterKind::dado_stack, "saw", in(7, 8)}}};
    JointAsk ask = half_inch();
    ask.slot_width.reset();
    ask.insert_thickness = in(1);
    ask.receiver_thickness = in(1);
    const auto chosen = choose_cutter(shop, {}, [&](Length) {
        return design_dado([&] {
            ask.near = in(1);
            return ask;
        }());
    });
    REQUIRE_FALSE(chosen);
    CHECK(chosen.error().why.text(Graduation::in_64) ==
          "the cutter is 7/8 in wide and the arbor of `saw` takes no more than 13/16 in");
}

TEST_CASE(
    "passes leave no wood standing between them, however narrow the cutter turns out and far the fence "
    "goes") {
    std::mt19937 dice(31);
    for (int i = 0; i < 300; ++i) {
        auto group =
            groups_of(locking_rabbet_work(half_inch(), "saw", MachineKind::table_saw, in(1, 8))).front();
        group.stands.kerf = Length::micrometres(2700 + std::int64_t(dice() % 600));
        group.stands.shift = Length::micrometres(2900 + std::int64_t(dice() % 1200));
        std::vector<Setup> slots;
        for (const Setup& setup : setups_of(group))
            if (setup.work != "locking rabbet: rabbet") slots.push_back(setup);
        CHECK(slots.front().fence == group.stands.fence);
        CHECK(slots.back().fence == group.stands.fence + group.stands.shift);
        for (std::size_t p = 1; p < slots.size(); ++p)
            // What is thinner than this does not stand (common practice, no source).
            CHECK(slots[p].fence <= slots[p - 1].fence + slots[p - 1].kerf + Length::micrometres(50));
    }
}
