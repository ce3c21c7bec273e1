// Holes for handles: where they are, and what their screws meet in the box behind. Common practice, no source, unless said otherwise.
#include "drawer/handle_holes.h"

#include <doctest/doctest.h>

namespace handles {

using namespace kw;

namespace {

Length mm(std::int64_t count) { return Length::millimetres(count); }

// A face of 400 x 180 mm before a box of 360 x 140 mm of 12 mm sides, whose groove is from 10 to 16 mm up.
BoxBehind behind() { return {mm(20), mm(15), {mm(360), mm(140), mm(450)}, mm(12), mm(10), mm(6)}; }

HoleCheck check(Length from_bottom, Length centres = mm(96)) {
    HandleAsk ask;
    ask.centres = centres;
    ask.height = HandleHeight::from_top;
    ask.from_top = mm(180) - from_bottom;
    return check_holes(handle_holes(ask, mm(400), mm(180)), ask.diameter, mm(400), mm(180), behind());
}

}  // namespace

TEST_CASE("two holes stand to both sides of the middle, one stands in it") {
    HandleAsk ask;
    ask.centres = mm(96);
    const HandleHoles two = handle_holes(ask, mm(400), mm(180));
    CHECK(two.from_left == std::vector<Length>{mm(152), mm(248)});
    CHECK(two.from_bottom == mm(90));
    ask.holes = 1;
    ask.height = HandleHeight::third;
    const HandleHoles one = handle_holes(ask, mm(400), mm(180));
    CHECK(one.from_left == std::vector<Length>{mm(200)});
    CHECK(one.from_bottom == mm(120));
    ask.height = HandleHeight::from_top;
    ask.from_top = mm(40);
    CHECK(handle_holes(ask, mm(400), mm(180)).from_bottom == mm(140));
}

TEST_CASE("centres that have no half in ticks stay as far apart as they are called") {
    HandleAsk ask;
    ask.centres = Length::from_ticks(Length::inches(3).ticks() + 1);
    const HandleHoles holes = handle_holes(ask, mm(400), mm(180));
    CHECK(holes.from_left[1] - holes.from_left[0] == ask.centres);
}

TEST_CASE("screws meet the front, its groove, the space beneath the bottom, or nothing, worked by hand") {
    // On the face the front goes from 15 to 155 mm up, its groove from 25 to 31 mm; a hole of 5 mm takes 2.5 mm to each side.
    CHECK(check(mm(90)).meets == HoleMeets::front);
    CHECK(check(mm(28)).meets == HoleMeets::groove);
    CHECK(check(mm(33)).meets == HoleMeets::groove);
    CHECK(check(mm(34)).meets == HoleMeets::front);
    CHECK(check(mm(22)).meets == HoleMeets::below_bottom);
    CHECK(check(mm(10)).meets == HoleMeets::nothing_below);
    CHECK(check(mm(152)).meets == HoleMeets::front);
    const HoleCheck above = check(mm(160));
    CHECK(above.meets == HoleMeets::nothing_above);
    CHECK(above.by == Length::micrometres(7500));
    CHECK(above.clear_at == Length::micrometres(152500));
    CHECK(check(*above.clear_at).meets == HoleMeets::front);
    const HoleCheck groove = check(mm(28));
    CHECK(groove.clear_at == Length::micrometres(33500));
    CHECK(check(*groove.clear_at).meets == HoleMeets::front);
    CHECK(check(mm(1)).meets == HoleMeets::edge_of_face);
}

TEST_CASE("holes so far apart that they meet the sides are told of, by how much") {
    // Between the sides from 32 to 368 mm: centres of 331 mm at most.
    CHECK(check(mm(90), mm(331)).meets == HoleMeets::front);
    const HoleCheck wide = check(mm(90), mm(335));
    CHECK(wide.meets == HoleMeets::side);
    CHECK(wide.by == mm(2));
    CHECK(check(mm(90), mm(399)).meets == HoleMeets::edge_of_face);
}

TEST_CASE("where the front has no wood above the groove no height is offered") {
    HandleAsk ask;
    ask.centres = mm(96);
    BoxBehind low = behind();
    low.box.height = mm(20);
    CHECK_FALSE(
        check_holes(handle_holes(ask, mm(400), mm(180)), ask.diameter, mm(400), mm(180), low).clear_at);
}

}  // namespace handles
