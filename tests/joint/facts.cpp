// Facts of the trade about single joints. Common practice, no source, unless said otherwise.
#include <doctest/doctest.h>

#include "inches.h"
#include "joint/closed.h"
#include "joint/kinds.h"

using namespace kw;
using tests::in;

namespace {

JointAsk half_inch() {
    JointAsk ask;
    ask.receiver_thickness = in(1, 2);
    ask.insert_thickness = in(1, 2);
    ask.slot_width = in(1, 4);
    return ask;
}

std::optional<ClosedJoint> close(const JointDesign& joint, const JointAsk& ask) {
    const Region receiver = cut_section(Member::receiver, ask.receiver_thickness, in(3),
                                        designed_removals(joint, Member::receiver));
    const Region insert =
        cut_section(Member::insert, ask.insert_thickness, in(3), designed_removals(joint, Member::insert));
    return close_joint(receiver, insert, joint.seat, joint.reach);
}

}  // namespace

TEST_CASE("with half-inch stock and a quarter stack, rabbet, dado and tongue are all a quarter inch") {
    const auto joint = design_locking_rabbet(half_inch());
    REQUIRE(joint);
    CHECK(joint->slot().near == in(1, 4));
    CHECK(joint->slot().far() == in(1, 2));  // one stock thickness from the end
    CHECK(joint->slot().depth == in(1, 4));
    CHECK(joint->insert_cut()->depth == in(1, 4));
    CHECK(joint->reach == in(1, 4));
}

TEST_CASE("a locking rabbet without clearances closes without a gap and without an overlap") {
    const auto ask = half_inch();
    const auto closed = close(design_locking_rabbet(ask).value(), ask);
    REQUIRE(closed);
    CHECK(is_empty(closed->overlap));
    CHECK(is_empty(closed->gap));
    CHECK(closed->fit == Length{});
    CHECK(closed->face_step == Length{});
    CHECK(closed->shoulder_gap == Length{});
}

TEST_CASE("raising the blade thins the tongue and deepens the dado by the same amount") {
    const auto ask = half_inch();
    const JointDesign joint = design_locking_rabbet(ask).value();
    const Length raised = Length::micrometres(300);
    auto dado = designed_removals(joint, Member::receiver);
    auto rabbet = designed_removals(joint, Member::insert);
    dado[0].depth += raised;
    rabbet[0].depth += raised;
    const auto before = close(joint, ask);
    const auto after =
        close_joint(cut_section(Member::receiver, in(1, 2), in(3), dado),
                    cut_section(Member::insert, in(1, 2), in(3), rabbet), joint.seat, joint.reach);
    REQUIRE(before);
    REQUIRE(after);
    CHECK(before->entering - after->entering == raised);
    CHECK(after->slot_depth - before->slot_depth == raised);
    CHECK(*after->fit == raised);
    CHECK(after->tongue_length == before->tongue_length);
}

TEST_CASE("a thick front in thin sides takes two blade heights") {
    JointAsk ask = half_inch();
    ask.insert_thickness = in(3, 4);
    const auto joint = design_locking_rabbet(ask);
    REQUIRE(joint);
    CHECK(joint->insert_cut()->depth == in(1, 2));
    CHECK(joint->slot().depth == in(1, 2) - least_web(in(1, 2)));
    REQUIRE(joint->remarks.size() == 1);
    CHECK(joint->remarks[0].text(Graduation::in_64).find("two blade heights") == 0);
    CHECK(is_empty(close(*joint, ask)->overlap));
}

TEST_CASE("a dado as deep as the side is thick is refused, and the refusal says how deep is right") {
    JointAsk ask = half_inch();
    ask.depth = in(1, 2);
    const auto joint = design_locking_rabbet(ask);
    REQUIRE_FALSE(joint);
    CHECK(joint.error().field == "depth");
    CHECK(joint.error().why.text(Graduation::in_64) ==
          "the web would be too thin: a slot 1/2 in deep leaves 0 in of a board 1/2 in thick");
    CHECK(joint.error().remedy.text(Graduation::in_64) ==
          "make it at most 21/64 in + deep, or take thicker stock");
}

TEST_CASE("a back's dado is as wide as the back and its clearance, and about an inch from the rear end") {
    JointAsk ask = half_inch();
    ask.slot_width.reset();
    ask.near = in(1);
    ask.clearance = Length::inches(4, 1000);
    ask.end_relief = in(1, 64);
    const auto joint = design_dado(ask);
    REQUIRE(joint);
    CHECK(joint->slot().near == in(1));
    CHECK(joint->slot().width == in(1, 2) + Length::inches(4, 1000));
    const auto closed = close(*joint, ask);
    REQUIRE(closed);
    CHECK(*closed->fit == ask.clearance);
    CHECK(closed->end_gap == ask.end_relief);
    CHECK(closed->face_step == in(1));
}

TEST_CASE("a rabbeted side stands proud of its front by the step that was asked") {
    JointAsk ask = half_inch();
    ask.slot_width.reset();
    ask.step = in(1, 32);
    ask.end_relief = in(1, 64);  // for tongues: a rabbet's floor is what the board is clamped against
    const auto joint = design_rabbet(ask);
    REQUIRE(joint);
    const auto closed = close(*joint, ask);
    REQUIRE(closed);
    CHECK(closed->face_step == in(1, 32));
    CHECK(closed->end_gap == Length{});
    CHECK_FALSE(closed->fit.has_value());
    CHECK(is_empty(closed->overlap));
}

TEST_CASE("a groove is never deeper than two thirds of the thinnest board, and half is what is usual") {
    JointAsk ask = half_inch();
    ask.slot_width.reset();
    ask.near = in(3, 8);
    ask.insert_thickness = in(1, 4);
    CHECK(design_groove(ask)->slot().depth == in(1, 4));
    ask.depth = in(9, 32);
    CHECK(design_groove(ask)->remarks.size() == 1);
    ask.depth = in(3, 8);
    CHECK_FALSE(design_groove(ask));
}

TEST_CASE(
    "a tongue and dado with half-inch stock and a quarter stack: rabbet, tongue and dado a quarter inch") {
    JointAsk ask = half_inch();
    ask.near = in(1);
    const auto joint = design_tongue_and_dado(ask);
    REQUIRE(joint);
    CHECK(joint->slot().width == in(1, 4));
    CHECK(joint->slot().near ==
          in(5, 4));  // the setback is to the back's outside face, the dado a rabbet's depth farther in
    CHECK(joint->slot().depth == in(1, 4));
    CHECK(joint->insert_cut()->down == BoardFace::outside);
    CHECK(joint->insert_cut()->near == Length{});
    CHECK(joint->insert_cut()->width == in(1, 4));
    CHECK(joint->insert_cut()->depth == in(1, 4));
    CHECK(tongue_of(*joint) == in(1, 4));
    CHECK(joint->remarks.empty());
    const auto closed = close(*joint, ask);
    REQUIRE(closed);
    CHECK(is_empty(closed->overlap));
    CHECK(is_empty(closed->gap));
    CHECK(closed->face_step == in(1));
    CHECK(closed->shoulder_gap == Length{});
}

TEST_CASE(
    "the setback of a back is to its outside face, whether it goes into a dado whole or with a tongue") {
    JointAsk ask = half_inch();
    ask.near = in(7, 8);
    ask.clearance = Length::inches(4, 1000);
    ask.end_relief = in(1, 64);
    const auto tongue = close(design_tongue_and_dado(ask).value(), ask);
    const auto whole = close(design_dado(ask).value(), ask);
    REQUIRE(tongue);
    REQUIRE(whole);
    CHECK(tongue->face_step == in(7, 8));
    CHECK(whole->face_step == in(7, 8));
    CHECK(tongue->end_gap == whole->end_gap);  // and both enter equally far: one stop cuts both to length
}

TEST_CASE(
    "a back with a tongue may be flush with the sides' rear ends, and is told of the short grain there") {
    JointAsk ask = half_inch();
    CHECK_FALSE(design_dado(ask));  // which would leave nothing behind the back
    const auto joint = design_tongue_and_dado(ask);
    REQUIRE(joint);
    CHECK(joint->slot().near == in(1, 4));
    REQUIRE(joint->remarks.size() == 1);
    CHECK(joint->remarks[0].text(Graduation::in_64) ==
          "only 1/4 in of wood behind the back's dado: the short grain may break; 1/2 in or more is usual");
    ask.near = in(1, 4);
    CHECK(design_tongue_and_dado(ask)->remarks.empty());
}

TEST_CASE("a tongue and dado that can't be made is refused at the field to blame, with what would do") {
    const auto refused = [](const auto& change) {
        JointAsk ask = half_inch();
        ask.clearance = Length::inches(4, 1000);
        ask.end_relief = in(1, 64);
        ask.near = in(1);
        change(ask);
        const auto joint = design_tongue_and_dado(ask);
        REQUIRE_FALSE(joint);
        return joint.error().field + ": " + joint.error().why.text(Graduation::mm_0_01) + " | " +
               joint.error().remedy.text(Graduation::mm_0_01);
    };
    CHECK(refused([](JointAsk& ask) { ask.slot_width = in(1, 16); }) ==
          "dado_width: a dado 1.59 mm wide takes a tongue of only 1.49 mm − | "
          "make the dado at least 1.60 mm wide");
    CHECK(refused([](JointAsk& ask) { ask.slot_width = in(15, 32); }) ==
          "dado_width: a dado 11.91 mm − wide leaves a rabbet of only 0.90 mm − beside the tongue of a board "
          "12.70 mm thick | "
          "make the dado at most 11.30 mm wide, or let the whole board in with a `dado`");
    CHECK(refused([](JointAsk& ask) { ask.depth = in(3, 8); }) ==
          "depth: the web would be too thin: a slot 9.53 mm − deep leaves 3.18 mm − of a board 12.70 mm "
          "thick | "
          "make it at most 8.47 mm − deep, or take thicker stock");
    CHECK(refused([](JointAsk& ask) { ask.depth = in(1, 16); }) ==
          "depth: a dado 1.59 mm deep takes a tongue only 1.19 mm long | "
          "make it at least 1.90 mm − deep");
}

TEST_CASE("a step is a place where a back stands at its setback, and a step where a face should be flush") {
    JointAsk ask = half_inch();
    CHECK_FALSE(design_locking_rabbet(ask)->step_is_place);
    ask.near = in(1);
    CHECK(design_locking_rabbet(ask)->step_is_place);
    CHECK(design_tongue_and_dado(ask)->step_is_place);
    ask.near = in(1, 8);  // less than the lip needs anyway: the back is flush
    CHECK_FALSE(design_locking_rabbet(ask)->step_is_place);
}
