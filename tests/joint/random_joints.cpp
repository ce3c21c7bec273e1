// Random joints: what was asked is what the cut sections measure, and the polygons agree with Boost.Geometry.
#include <doctest/doctest.h>

#include <random>

#include "joint/boost_region.h"
#include "joint/closed.h"
#include "joint/kinds.h"

using namespace kw;
namespace bg = boost::geometry;
using tests::boost_rect;
using tests::BoostPoint;
using tests::BoostPolygon;
using tests::BoostRegion;

namespace {

constexpr int joints = 3000;

class Dice {
public:
    explicit Dice(unsigned seed) : random_(seed) {}
    Length between(std::int64_t low_um, std::int64_t high_um) {
        return Length::micrometres(std::uniform_int_distribution<std::int64_t>(low_um, high_um)(random_));
    }

private:
    std::mt19937 random_;
};

JointAsk random_ask(Dice& dice) {
    JointAsk ask;
    ask.receiver_thickness = dice.between(9'000, 20'000);
    ask.insert_thickness = dice.between(9'000, 20'000);
    ask.clearance = dice.between(0, 300);
    ask.end_relief = dice.between(0, 500);
    ask.step = dice.between(0, 1'000);
    return ask;
}

BoostRegion board_less(const Rect& board, const std::vector<Rect>& cuts) {
    const auto polygon = [](const Rect& r) {
        return boost_rect(r.left.mm(), r.bottom.mm(), r.right.mm(), r.top.mm());
    };
    BoostRegion region{polygon(board)};
    for (const Rect& cut : cuts) {
        BoostRegion rest;
        bg::difference(region, polygon(cut), rest);
        region = rest;
    }
    return region;
}

// Sections made by Boost from the same cuts; nothing but the numbers of the cuts is shared.
BoostRegion boost_section(Member member, Length thickness, Length shown,
                          const std::vector<Removal>& removals) {
    std::vector<Rect> cuts;
    for (const Removal& cut : removals) {
        const bool low = (member == Member::receiver) == (cut.down == BoardFace::inside);
        cuts.push_back(
            {cut.near, low ? Length{} : thickness - cut.depth, cut.far, low ? cut.depth : thickness});
    }
    return board_less({Length{}, Length{}, shown, thickness}, cuts);
}

BoostRegion placed(const BoostRegion& insert, Length face_step, Length in) {
    BoostRegion out = insert;
    bg::for_each_point(out, [&](BoostPoint& p) { p = BoostPoint(face_step.mm() + p.y(), in.mm() - p.x()); });
    bg::correct(out);
    return out;
}

double overlap_by_boost(const JointDesign& joint, const JointAsk& ask, const ClosedJoint& closed) {
    const Length shown = Length::millimetres(80);
    const auto receiver = boost_section(Member::receiver, ask.receiver_thickness, shown,
                                        designed_removals(joint, Member::receiver));
    const auto insert =
        boost_section(Member::insert, ask.insert_thickness, shown, designed_removals(joint, Member::insert));
    BoostRegion both;
    bg::intersection(receiver, placed(insert, closed.face_step, closed.slot_depth - closed.end_gap), both);
    return bg::area(both);
}

ClosedJoint closed_joint(const JointDesign& joint, const JointAsk& ask) {
    const Length shown = Length::millimetres(80);
    return close_joint(cut_section(Member::receiver, ask.receiver_thickness, shown,
                                   designed_removals(joint, Member::receiver)),
                       cut_section(Member::insert, ask.insert_thickness, shown,
                                   designed_removals(joint, Member::insert)),
                       joint.seat, joint.reach)
        .value();
}

}  // namespace

TEST_CASE("every random locking rabbet that is made measures as it was asked") {
    Dice dice(11);
    int made = 0;
    for (int i = 0; i < joints; ++i) {
        JointAsk ask = random_ask(dice);
        ask.slot_width = dice.between(3'000, 10'000);
        const auto joint = design_locking_rabbet(ask);
        if (!joint) continue;
        ++made;
        const ClosedJoint closed = closed_joint(*joint, ask);
        CHECK(closed.fit == ask.clearance);
        CHECK(closed.face_step == ask.step);
        CHECK(closed.shoulder_gap == Length{});
        CHECK(closed.end_gap == ask.end_relief);
        CHECK(is_empty(closed.overlap));
        CHECK(overlap_by_boost(*joint, ask, closed) < 1e-9);
        CHECK(ask.receiver_thickness - closed.slot_depth >= least_web(ask.receiver_thickness));
    }
    CHECK(made > joints / 2);
}

TEST_CASE("every random tongue and dado that is made measures as it was asked") {
    Dice dice(14);
    int made = 0;
    for (int i = 0; i < joints; ++i) {
        JointAsk ask = random_ask(dice);
        ask.slot_width = dice.between(3'000, 10'000);
        ask.near = dice.between(0, 30'000);
        if (i % 3 == 0) ask.depth = dice.between(1'000, 12'000);
        const auto joint = design_tongue_and_dado(ask);
        if (!joint) continue;
        ++made;
        const ClosedJoint closed = closed_joint(*joint, ask);
        CHECK(closed.fit == ask.clearance);
        CHECK(closed.slot_width == *ask.slot_width);
        CHECK(closed.face_step == ask.near);  // whatever step the front has
        CHECK(closed.shoulder_gap == Length{});
        CHECK(closed.end_gap == ask.end_relief);
        CHECK(closed.slot_depth == ask.depth.value_or(closed.slot_depth));
        CHECK(is_empty(closed.overlap));
        CHECK(overlap_by_boost(*joint, ask, closed) < 1e-9);
        CHECK(ask.receiver_thickness - closed.slot_depth >= least_web(ask.receiver_thickness));
        CHECK(closed.slot_near >= least_tongue);
    }
    CHECK(made > joints / 2);
}

TEST_CASE("every random half lap that is made closes without air, with the step that was asked") {
    Dice dice(15);
    int made = 0;
    for (int i = 0; i < joints; ++i) {
        JointAsk ask = random_ask(dice);
        if (i % 2 == 0) ask.insert_thickness = ask.receiver_thickness;
        if (i % 3 == 0) ask.depth = dice.between(1'000, 12'000);
        if (i % 5 == 0) ask.step = Length{};
        const auto joint = design_half_lap_corner(ask);
        if (!joint) continue;
        ++made;
        const ClosedJoint closed = closed_joint(*joint, ask);
        CHECK(closed.face_step == ask.step);
        CHECK(closed.shoulder_gap == Length{});
        CHECK(closed.end_gap == Length{});
        CHECK(is_empty(closed.overlap));
        CHECK(is_empty(closed.gap));
        CHECK(overlap_by_boost(*joint, ask, closed) < 1e-9);
        // Wood that met fills the corner but for the step: what the boards' rectangles cover, nothing counted twice.
        const Rect corner{Length{}, Length{}, ask.insert_thickness + ask.step, ask.receiver_thickness};
        const double wood = area_mm2(intersect(unite(closed.receiver, closed.insert), to_region(corner)));
        CHECK(wood == doctest::Approx((ask.insert_thickness + ask.step).mm() * ask.receiver_thickness.mm() -
                                      ask.step.mm() * closed.slot_depth.mm())
                          .epsilon(1e-9));
        CHECK(ask.receiver_thickness - closed.slot_depth >= least_web(ask.receiver_thickness));
        if (ask.insert_thickness == ask.receiver_thickness)
            CHECK(joint->insert_cut()->depth == joint->slot().depth);
    }
    CHECK(made > joints / 2);
}

TEST_CASE("polygon areas of cut boards agree with Boost.Geometry") {
    Dice dice(12);
    for (int i = 0; i < joints; ++i) {
        const Length thickness = dice.between(6'000, 20'000);
        std::vector<Removal> cuts;
        for (int n = 0; n < 3; ++n) {
            const Length near = dice.between(0, 40'000);
            cuts.push_back({n == 1 ? BoardFace::outside : BoardFace::inside, near,
                            near + dice.between(500, 12'000), dice.between(500, 5'900)});
        }
        const Length shown = Length::millimetres(60);
        const Region ours = cut_section(Member::receiver, thickness, shown, cuts);
        const BoostRegion theirs = boost_section(Member::receiver, thickness, shown, cuts);
        // Boost 1.74 moves coordinates onto an integer grid of its own while it cuts.
        CHECK(area_mm2(ours) == doctest::Approx(bg::area(theirs)).epsilon(1e-6));
    }
}

TEST_CASE("a tongue too thick by some hundredths shows as an overlap of that width over its length") {
    Dice dice(13);
    for (int i = 0; i < joints; ++i) {
        JointAsk ask = random_ask(dice);
        ask.slot_width = dice.between(4'000, 7'000);
        ask.clearance = Length{};
        const auto joint = design_locking_rabbet(ask);
        if (!joint) continue;
        const Length thick = dice.between(20, 400);
        auto rabbet = designed_removals(*joint, Member::insert);
        if (rabbet[0].depth <= thick) continue;
        rabbet[0].depth -= thick;
        const Length shown = Length::millimetres(80);
        const auto closed = close_joint(cut_section(Member::receiver, ask.receiver_thickness, shown,
                                                    designed_removals(*joint, Member::receiver)),
                                        cut_section(Member::insert, ask.insert_thickness, shown, rabbet),
                                        joint->seat, joint->reach);
        REQUIRE(closed);
        CHECK(*closed->fit == -thick);
        CHECK(area_mm2(closed->overlap) == doctest::Approx(thick.mm() * joint->reach.mm()).epsilon(1e-9));
    }
}
