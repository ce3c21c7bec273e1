// The box joint, worked on paper. That fingers and sockets are as wide as the cutter, and as long as the other board is thick, is what a
// box joint is; that one board begins with a finger and the other with a socket, too. Common practice, no source.
#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "inches.h"
#include "joint/boost_region.h"
#include "joint/fingers.h"
#include "joint/kinds.h"

using namespace kw;
using tests::in;

namespace {

JointAsk quarter_fingers() {
    JointAsk ask;
    ask.receiver_thickness = in(1, 2);
    ask.insert_thickness = in(1, 2);
    ask.kerf = in(1, 4);
    ask.height = in(4);
    return ask;
}

SocketRow row_of(const Cut& cut) { return {cut.near, cut.width, cut.pitch.value(), cut.depth}; }

ClosedFingers closed_corner(const JointDesign& joint, const JointAsk& ask, Length slid = {}) {
    return close_fingers(fingered_end(row_of(joint.slot()), ask.height, in(2)),
                         fingered_end(row_of(*joint.insert_cut()), ask.height, in(2)), ask.insert_thickness,
                         slid);
}

std::string fingers_refused(const JointAsk& ask) {
    const auto joint = design_box_joint(ask);
    REQUIRE_FALSE(joint);
    return joint.error().field + ": " + joint.error().why.text(Graduation::in_64) + " | " +
           joint.error().remedy.text(Graduation::in_64);
}

}  // namespace

TEST_CASE("quarter-inch fingers in half-inch boards four inches high are eight, four of each board") {
    const JointDesign joint = design_box_joint(quarter_fingers()).value();
    CHECK(joint.slot().near == in(1, 4));  // the side begins with a finger
    CHECK(joint.slot().width == in(1, 4));
    CHECK(joint.slot().pitch == in(1, 2));
    CHECK(joint.slot().depth == in(1, 2));
    CHECK(joint.insert_cut()->near == Length{});  // and the front with a socket
    CHECK(sockets_up(joint.slot().near, in(1, 2), in(4)) == 8);
    CHECK(sockets_up(Length{}, in(1, 2), in(4)) == 8);
    CHECK(joint.reach == in(1, 2));  // the front's fingers go right through
}

TEST_CASE("a box joint without clearance closes without a gap and without an overlap, to the top edge") {
    const JointAsk ask = quarter_fingers();
    const ClosedFingers corner = closed_corner(design_box_joint(ask).value(), ask);
    CHECK(is_empty(corner.gap));
    CHECK(is_empty(corner.overlap));
    CHECK(corner.proud == Length{});
    // Half of the corner, four inches high and half an inch deep, is the front's: on paper 1 square inch.
    CHECK(area_mm2(corner.insert) == doctest::Approx(25.4 * 25.4));
}

TEST_CASE(
    "a pin a hair too far from the cutter makes every finger too wide by that hair, and no joint closes") {
    const JointAsk ask = quarter_fingers();
    JointDesign joint = design_box_joint(ask).value();
    const Length off = Length::micrometres(50);
    for (Cut& cut : joint.cuts) {
        if (cut.member == Member::receiver) cut.near += off;
        *cut.pitch += off;
    }
    const ClosedFingers corner = closed_corner(joint, ask);
    // Each finger is too wide by as much, and the corner is half an inch deep. On paper: the side has eight fingers and 50 um more of
    // each is over the front's, and the front's seven whole ones likewise; the one at the top edge is sawn off with it.
    CHECK(area_mm2(corner.overlap) > 7 * 0.05 * 12.7);
    // Over eight sockets it has added up: the last is 8 times as far up.
    const auto fingers = solid_along_x(corner.receiver, hair);
    CHECK(fingers.back().first == 7 * in(1, 2) + 7 * off);
}

TEST_CASE("clearance is beside every finger once, and sliding a board by less than that still closes it") {
    JointAsk ask = quarter_fingers();
    ask.clearance = Length::micrometres(100);
    const JointDesign joint = design_box_joint(ask).value();
    CHECK(joint.slot().near == in(1, 4) - ask.clearance);
    CHECK(is_empty(closed_corner(joint, ask).overlap));
    CHECK(is_empty(closed_corner(joint, ask, -Length::micrometres(99)).overlap));
    CHECK_FALSE(is_empty(closed_corner(joint, ask, Length::micrometres(10)).overlap));
    CHECK_FALSE(is_empty(closed_corner(joint, ask, -Length::micrometres(110)).overlap));
}

TEST_CASE("fingers that are to be planed off stand proud by the step, and the parts grow by it") {
    JointAsk ask = quarter_fingers();
    ask.step = in(1, 64);
    const JointDesign joint = design_box_joint(ask).value();
    CHECK(joint.slot().depth == in(1, 2) + in(1, 64));
    CHECK(joint.insert_cut()->depth == in(1, 2) + in(1, 64));
    CHECK(joint.reach == in(1, 2) + in(1, 64));
    CHECK(closed_corner(joint, ask).proud == in(1, 64));
}

TEST_CASE("sockets are as deep as the other board is thick") {
    JointAsk ask = quarter_fingers();
    ask.insert_thickness = in(3, 4);
    const JointDesign joint = design_box_joint(ask).value();
    CHECK(joint.slot().depth == in(3, 4));
    CHECK(joint.insert_cut()->depth == in(1, 2));
}

TEST_CASE("what no jig can cut is refused with what would do") {
    JointAsk ask = quarter_fingers();
    ask.height = in(15, 16);
    CHECK(fingers_refused(ask) ==
          "cutter: sockets 1/4 in wide leave fewer than two fingers and two sockets in a height of 15/16 in"
          " | take a cutter at most 15/64 in wide");
    ask = quarter_fingers();
    ask.clearance = in(1, 4);
    CHECK(fingers_refused(ask).starts_with("cutter: a cutter 1/4 in wide leaves fingers of only 0"));
    ask = quarter_fingers();
    ask.slot_width = in(3, 8);
    CHECK(fingers_refused(ask) ==
          "dado_width: its sockets are as wide as the cutter, 1/4 in, and not 3/8 in"
          " | take a cutter of that width, or leave the width out");
    ask = quarter_fingers();
    ask.depth = in(1, 4);
    CHECK(fingers_refused(ask).starts_with("depth: "));
}

TEST_CASE("a row ends at the top edge in a finger or in a socket, whole or in part") {
    // A side's row of quarter fingers: from 4 in up a finger begins, from 4 1/4 in a socket.
    const auto top = [](Length height) { return top_of_row(in(1, 4), in(1, 4), in(1, 2), height); };
    CHECK_FALSE(top(in(4)).is_finger);
    CHECK(top(in(4)).width == in(1, 4));
    CHECK(top(in(4) + in(1, 16)).is_finger);
    CHECK(top(in(4) + in(1, 16)).width == in(1, 16));
    CHECK(top(in(4) + in(1, 4)).width == in(1, 4));
    CHECK_FALSE(top(in(4) + in(3, 8)).is_finger);
    CHECK(top(in(4) + in(3, 8)).width == in(1, 8));
    CHECK(whole_sockets_up(in(1, 4), in(1, 4), in(1, 2), in(4) - in(1, 32)) == 7);
}

namespace {

// Boost computes on a grid of its own: so much may be off, of 20 fingers 20 mm deep.
constexpr double grid_mm2 = 0.005;

// Fingers one by one, by nothing but their number and the widths.
tests::BoostRegion boost_fingers(double first, double width, double pitch, double height, double low,
                                 double high) {
    tests::BoostRegion all;
    for (double at = first; at < height; at += pitch) {
        tests::BoostRegion sum;
        const double from = std::max(0.0, at), to = std::min(height, at + width);
        if (to - from < 1e-9) continue;
        boost::geometry::union_(all, tests::boost_rect(from, low, to, high), sum);
        all = sum;
    }
    return all;
}

}  // namespace

TEST_CASE("random box joints overlap and gape by as much as Boost.Geometry finds of the same fingers") {
    std::mt19937 random(51);
    const auto um = [&](int low, int high) {
        return Length::micrometres(std::uniform_int_distribution<int>(low, high)(random));
    };
    for (int i = 0; i < 400; ++i) {
        JointAsk ask;
        ask.receiver_thickness = um(9'000, 20'000);
        ask.insert_thickness = um(9'000, 20'000);
        ask.kerf = um(3'000, 13'000);
        ask.clearance = um(0, 300);
        ask.step = um(0, 800);
        ask.height = um(60'000, 250'000);
        JointDesign joint = design_box_joint(ask).value();
        // As cut: the pin elsewhere, and the cutter not as wide as it is called.
        const Length pin = um(0, 400) - Length::micrometres(200),
                     wider = um(0, 400) - Length::micrometres(200);
        for (Cut& cut : joint.cuts) {
            if (cut.member == Member::receiver) cut.near += pin;
            cut.width += wider;
            *cut.pitch += pin + wider;
        }
        const Length slid = um(0, 200) - Length::micrometres(100);
        const ClosedFingers corner = closed_corner(joint, ask, slid);
        const double kerf = joint.slot().width.mm(), finger = joint.slot().near.mm(), pitch = kerf + finger,
                     height = ask.height.mm(), deep = joint.slot().depth.mm(), proud = ask.step.mm();
        const tests::BoostRegion side = boost_fingers(0.0, finger, pitch, height, 0.0, deep);
        tests::BoostRegion front;
        for (const tests::BoostPolygon& one : boost_fingers(kerf, finger, pitch, height, proud, deep)) {
            tests::BoostPolygon up = one;
            boost::geometry::for_each_point(up, [&](tests::BoostPoint& p) { p.x(p.x() + slid.mm()); });
            front.push_back(up);
        }
        tests::BoostRegion both, either, open;
        boost::geometry::intersection(side, front, both);
        boost::geometry::union_(side, front, either);
        boost::geometry::difference(tests::boost_rect(0.0, proud, height, deep), either, open);
        CHECK(std::abs(area_mm2(corner.overlap) - boost::geometry::area(both)) < grid_mm2);
        CHECK(std::abs(area_mm2(corner.gap) - boost::geometry::area(open)) < grid_mm2);
    }
}

TEST_CASE("a row that does not go on up the board has an end all the same") {
    const Length height = in(4);
    for (const Length pitch : {Length{}, -in(1), Length::from_ticks(1)}) {
        CHECK(sockets_up(in(1, 4), pitch, height) < 200);
        CHECK(whole_sockets_up(in(1, 4), in(1, 4), pitch, height) < 200);
    }
}
