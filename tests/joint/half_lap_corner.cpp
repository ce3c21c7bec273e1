// The half lap at a corner, worked on paper. That what is left of each board fills the other's rabbet is what a half lap is; half of
// each board is common practice, no source.
#include <doctest/doctest.h>

#include "inches.h"
#include "joint/closed.h"
#include "joint/kinds.h"

using namespace kw;
using tests::in;

namespace {

JointAsk boards(Length sides, Length front) {
    JointAsk ask;
    ask.receiver_thickness = sides;
    ask.insert_thickness = front;
    return ask;
}

ClosedJoint lapped(const JointDesign& joint, const JointAsk& ask, Length deeper = {}) {
    auto side = designed_removals(joint, Member::receiver);
    auto front = designed_removals(joint, Member::insert);
    side[0].depth += deeper;
    front[0].depth += deeper;
    return close_joint(cut_section(Member::receiver, ask.receiver_thickness, in(3), side),
                       cut_section(Member::insert, ask.insert_thickness, in(3), front), joint.seat,
                       joint.reach)
        .value();
}

std::string refused(const JointAsk& ask) {
    const auto joint = design_half_lap_corner(ask);
    REQUIRE_FALSE(joint);
    return joint.error().field + ": " + joint.error().why.text(Graduation::in_64) + " | " +
           joint.error().remedy.text(Graduation::in_64);
}

}  // namespace

TEST_CASE("in half-inch boards both rabbets of a half lap are a quarter inch wide and a quarter inch deep") {
    const auto joint = design_half_lap_corner(boards(in(1, 2), in(1, 2)));
    REQUIRE(joint);
    CHECK(joint->slot().near == Length{});
    CHECK(joint->slot().width == in(1, 4));
    CHECK(joint->slot().depth == in(1, 4));
    CHECK(joint->insert_cut()->width == in(1, 4));
    CHECK(joint->insert_cut()->depth == in(1, 4));
    CHECK(joint->insert_cut()->down == BoardFace::inside);  // all four are cut with the inside face down
    CHECK(joint->reach == in(1, 4));
    CHECK(joint->remarks.empty());
}

TEST_CASE("a half lap shows the side's lap from the front, and nothing of the front from the side") {
    const JointAsk ask = boards(in(1, 2), in(1, 2));
    const ClosedJoint closed = lapped(design_half_lap_corner(ask).value(), ask);
    // Along the line just behind the front's outside face: the front as far as its lap goes, then a quarter inch of the side.
    const Length behind = Length::from_ticks(1);
    const auto side = solid_along_y(closed.receiver, behind);
    const auto front = solid_along_y(closed.insert, behind);
    REQUIRE(side.size() == 1);
    REQUIRE(front.size() == 1);
    CHECK(front[0].second == in(1, 4));
    CHECK(side[0] == Span{in(1, 4), in(1, 2)});
    CHECK(is_empty(closed.gap));
    CHECK(is_empty(closed.overlap));
}

TEST_CASE("a three-quarter front lapped into half-inch sides keeps half of its own thickness") {
    // On paper: side 1/2 in, rabbet 1/4 in deep. Front 3/4 in, rabbet 3/8 in deep and 1/4 in long; its lap is 3/8 in, and so
    // is the side's rabbet wide.
    const JointAsk ask = boards(in(1, 2), in(3, 4));
    const auto joint = design_half_lap_corner(ask);
    REQUIRE(joint);
    CHECK(joint->slot().width == in(3, 8));
    CHECK(joint->slot().depth == in(1, 4));
    CHECK(joint->insert_cut()->width == in(1, 4));
    CHECK(joint->insert_cut()->depth == in(3, 8));
    REQUIRE(joint->remarks.size() == 1);
    CHECK(joint->remarks[0].text(Graduation::in_64) ==
          "two settings for the laps: 3/8 in wide and 1/4 in deep in the sides, 1/4 in wide and 3/8 in deep "
          "on the "
          "front's ends");
    CHECK(is_empty(lapped(*joint, ask).gap));
}

TEST_CASE("a half lap's rabbet in the sides is wider by the step, and boards equally thick keep one height") {
    JointAsk ask = boards(in(1, 2), in(1, 2));
    ask.step = in(1, 32);
    ask.depth = in(5, 16);
    ask.end_relief = in(1, 64);  // for tongues: an open line at a lap's end would be seen
    ask.clearance = in(1, 64);   // for tongues too: a lap rests against one wall alone
    const auto joint = design_half_lap_corner(ask);
    REQUIRE(joint);
    CHECK(joint->slot().width == in(3, 16) + in(1, 32));
    CHECK(joint->insert_cut()->depth == in(5, 16));
    const ClosedJoint closed = lapped(*joint, ask);
    CHECK(closed.face_step == in(1, 32));
    CHECK(closed.end_gap == Length{});
    CHECK(is_empty(closed.gap));
}

TEST_CASE(
    "raising the blade for both rabbets of a half lap leaves the side proud, and its lap short of the "
    "floor") {
    const JointAsk ask = boards(in(1, 2), in(1, 2));
    const Length raised = in(1, 64);
    const ClosedJoint closed = lapped(design_half_lap_corner(ask).value(), ask, raised);
    CHECK(closed.face_step == raised);
    CHECK(closed.end_gap == raised);
    CHECK(closed.shoulder_gap == Length{});
}

TEST_CASE("lowering it leaves the front proud, and its shoulder open beside the lap") {
    const JointAsk ask = boards(in(1, 2), in(1, 2));
    const Length lowered = in(1, 64);
    const ClosedJoint closed = lapped(design_half_lap_corner(ask).value(), ask, -lowered);
    CHECK(closed.face_step == -lowered);
    CHECK(closed.shoulder_gap == lowered);
    // The open shoulder is as wide as the front's rabbet is deep, and no more of the corner is air.
    CHECK(area_mm2(closed.gap) == doctest::Approx(lowered.mm() * (in(1, 4) - lowered).mm()).epsilon(1e-9));
}

TEST_CASE("a half lap that leaves too little of a board is refused with what would do") {
    JointAsk ask = boards(in(1, 2), in(1, 2));
    ask.depth = in(3, 8);
    CHECK(refused(ask) ==
          "depth: the web would be too thin: a slot 3/8 in deep leaves 1/8 in of a board 1/2 in thick | "
          "make it at most 21/64 in + deep, or take thicker stock");
    ask.depth = in(1, 32);
    CHECK(refused(ask) ==
          "depth: a rabbet 1/32 in deep holds only that much of the board | make it at least 1/16 in deep");
    CHECK(refused(boards(in(1, 2), in(3, 32))) ==
          "stock: a board 3/32 in thick leaves a lap of only 3/64 in | take a board at least 1/8 in − thick");
}
