// The closed joint's pictures, against the joint closed by hand: with the settings' own formulas (fit = k + shift + h - T,
// tongue length = f + k - s).

#include <doctest/doctest.h>

#include <random>

#include "draw/joint_cuts.h"
#include "draw/joint_view.h"
#include "draw/shapes_of.h"
#include "draw/turned.h"
#include "draw/view_job.h"

using namespace kw::draw;
using kw::Group;
using kw::Length;
using kw::Settings;

namespace {

const Group& locking_group(const kw::Work& work) {
    for (const Group& group : work.plan.groups)
        if (group.cuts_slot && group.cuts_end) return group;
    FAIL("no joint with one height");
    return work.plan.groups.front();
}

Length fit_of(const Group& group, const Settings& s) {
    return s.kerf + s.shift + s.height - group.work.insert_thickness;
}

// Direction of plain lining and of grain: told apart by what turns them.
bool lined_apart(const Fill& a, const Fill& b) {
    if (a.material == Material::end_grain && b.material == Material::end_grain)
        return (a.mirrored != b.mirrored) != (a.upright != b.upright);
    return a.material != b.material || a.upright != b.upright;
}

}  // namespace

TEST_CASE("a tongue too thick overlaps the dado's wall by as much as the blade is too low") {
    std::mt19937 dice(7);
    const auto work = view_job::work(view_job::Wanted{});
    const Group& group = locking_group(*work);
    for (int round = 0; round < 40; ++round) {
        Settings settings = group.stands;
        settings.height += Length::micrometres(std::uniform_int_distribution<int>(-400, 400)(dice));
        const Length fit = fit_of(group, settings);
        CAPTURE(fit.mm());
        const Drawing drawing = joint_view(*work, group, settings);
        const auto overlap = shapes_of::fills(drawing, Material::overlap);
        const std::string shown = kw::show_with_unit(abs(fit), kw::caliper_locale(work->job));
        if (fit < Length{}) {
            REQUIRE(overlap.size() == 1);
            const Length entering =
                kw::min(settings.fence + settings.kerf - settings.spacer, settings.height);
            CHECK(shapes_of::area_mm2(overlap) == doctest::Approx(-fit.mm() * entering.mm()));
            CHECK(shapes_of::says(drawing, "overlap " + shown));
        } else {
            CHECK(overlap.empty());
            const bool is_nothing = shown.rfind("0 ", 0) == 0;  // to a caliper
            CHECK(shapes_of::says(drawing, "loose by " + shown) == !is_nothing);
        }
    }
}

TEST_CASE("a tongue longer than the dado is deep holds the shoulder off, and the gap is drawn and named") {
    for (const view_job::Wanted& wanted : {view_job::Wanted{}, view_job::metric()}) {
        const auto work = view_job::work(wanted);
        const Group& group = locking_group(*work);
        Settings settings = group.stands;
        settings.spacer = settings.fence + settings.kerf - settings.height - Length::micrometres(300);
        const Drawing drawing = joint_view(*work, group, settings);
        const std::string gap = kw::show_with_unit(Length::micrometres(300), kw::caliper_locale(work->job));
        CHECK(shapes_of::says(drawing, "shoulder gap " + gap));
        CHECK_FALSE(shapes_of::says(drawing, "end gap"));
        const auto gaps = shapes_of::fills(drawing, Material::gap);
        REQUIRE(gaps.size() == 1);
        CHECK(shapes_of::box_of(gaps.front()).bottom_mm == doctest::Approx(-0.3));
    }
}

TEST_CASE("magnifying multiplies fit, shoulder gap and the error of the step, and nothing else") {
    std::mt19937 dice(11);
    std::uniform_int_distribution<int> off(-150, 150);
    const auto work = view_job::work(view_job::Wanted{});
    const Group& group = locking_group(*work);
    const Length shown = Length::millimetres(120);
    for (int round = 0; round < 40; ++round) {
        Settings settings = group.stands;
        settings.height += Length::micrometres(off(dice));
        settings.fence += Length::micrometres(off(dice));
        settings.spacer += Length::micrometres(3 * off(dice));
        const JointCuts cuts = joint_cuts(*work, group, settings);
        const int times = 1 + round % 6;
        const auto joint = closed(cuts, shown), large = closed(exaggerated(cuts, times), shown);
        REQUIRE(joint);
        REQUIRE(large);
        CHECK(*joint->fit == fit_of(group, settings));
        CHECK(*large->fit == times * *joint->fit);
        CHECK(*large->shoulder_gap == times * *joint->shoulder_gap);
        CHECK(large->face_step - cuts.step == times * (joint->face_step - cuts.step));
        CHECK(large->slot_width == joint->slot_width);
        CHECK(large->slot_depth == joint->slot_depth);
        CHECK(large->end_gap == joint->end_gap);
    }
}

TEST_CASE(
    "the magnified joint keeps its errors below a fifth of the slot, and the words keep the true sizes") {
    const auto work = view_job::work(view_job::metric());
    for (const Group& group : work->plan.groups) {
        CAPTURE(group.key);
        const JointCuts cuts = joint_cuts(*work, group, group.stands);
        const int times = fitting_exaggeration(cuts);
        CHECK(times > 1);
        const auto joint = closed(cuts, Length::millimetres(200));
        REQUIRE(joint);
        CHECK(times * *joint->fit <= joint->slot_width.scaled(1, 5));
        const Drawing drawing = joint_magnified(*work, group);
        CHECK(shapes_of::says(drawing, "clearances \u00d7 " + std::to_string(times)));
        CHECK(
            shapes_of::says(drawing, "loose by " + kw::show_with_unit(*joint->fit, kw::Graduation::mm_0_01)));
    }
}

TEST_CASE("receiver and insert are lined in different directions in every joint") {
    for (const kw::StockKind kind : {kw::StockKind::plywood, kw::StockKind::solid, kw::StockKind::panel}) {
        view_job::Wanted wanted;
        wanted.kind = kind;
        const auto work = view_job::work(wanted);
        for (const Group& group : work->plan.groups) {
            CAPTURE(group.key);
            const std::vector<Fill> wood = shapes_of::wood_in(joint_view(*work, group));
            REQUIRE(wood.size() == 2);
            CHECK(lined_apart(wood[0], wood[1]));
        }
    }
}

TEST_CASE("where slot and tongue need two heights, both groups draw one and the same joint") {
    view_job::Wanted wanted;
    wanted.side = Length::inches(1, 2);
    wanted.front = Length::inches(7, 8);
    wanted.kerf = Length::inches(3, 8);
    wanted.groove_cutter = "rip blade";
    const auto work = view_job::work(wanted);
    int ends = 0;
    for (const Group& group : work->plan.groups) {
        if (group.cuts_slot) continue;
        ++ends;
        const Group* slot = kw::partner_of(work->standing_design, group);
        REQUIRE(slot != nullptr);
        CHECK(joint_view(*work, group).shapes == joint_view(*work, *slot).shapes);
    }
    CHECK(ends == 1);
}

TEST_CASE("a rabbet has no fit, and its insert ends where the rabbet does") {
    kw::Job job = view_job::job(view_job::Wanted{});
    job.drawers.front().front.joint = "rabbet";
    const auto work = view_job::work(job);
    int open = 0;
    for (const Group& group : work->plan.groups) {
        if (!group.slot_is_open()) continue;
        ++open;
        const Drawing drawing = joint_view(*work, group);
        CHECK_FALSE(shapes_of::says(drawing, "loose"));
        CHECK_FALSE(shapes_of::says(drawing, "overlap"));
        CHECK(shapes_of::fills(drawing, Material::overlap).empty());
    }
    CHECK(open == 1);
}

TEST_CASE("a half lap cut too shallow shows the front proud and its shoulder open, each by as much") {
    view_job::Wanted wanted;
    wanted.front_joint = "half lap corner";
    const auto work = view_job::work(wanted);
    const Group& group = locking_group(*work);
    REQUIRE(group.slot_is_open());
    CHECK(shapes_of::fills(joint_view(*work, group), Material::gap).empty());
    Settings settings = group.stands;
    settings.height -= Length::inches(1, 64);
    const auto joint = closed(joint_cuts(*work, group, settings), Length::millimetres(100));
    REQUIRE(joint);
    CHECK(joint->face_step == -Length::inches(1, 64));
    CHECK(*joint->shoulder_gap == Length::inches(1, 64));
    const Drawing drawing = joint_magnified(*work, group, settings);
    CHECK(shapes_of::says(drawing, "shoulder gap 0.016 in"));
    CHECK(shapes_of::says(drawing, "end short 0.016 in"));
    CHECK(shapes_of::fills(drawing, Material::overlap).empty());
    CHECK_FALSE(shapes_of::fills(drawing, Material::gap).empty());
}

TEST_CASE(
    "a back with a tongue fills its dado with the inside half, the shoulder lies on the side, and its "
    "setback is "
    "no step") {
    view_job::Wanted wanted;
    wanted.back_joint = "tongue and dado";
    const auto work = view_job::work(wanted);
    int tongued = 0;
    for (const Group& group : work->plan.groups) {
        if (group.work.label != "back tongue and dado") continue;
        ++tongued;
        const Drawing drawing = joint_view(*work, group);
        const std::vector<Fill> wood = shapes_of::wood_in(drawing);
        REQUIRE(wood.size() == 2);
        const Fill &side = wood[0], &back = wood[1];
        const double setback = 25.4, half = 6.35;
        const double inside_half = setback + 1.5 * half, outside_half = setback + 0.5 * half;
        CHECK(shapes_of::covers(back, {inside_half, 1}));   // the tongue, in the dado
        CHECK(shapes_of::covers(side, {outside_half, 1}));  // beside it the side's own wood, behind the dado
        CHECK(shapes_of::covers(back, {inside_half, -1}));  // and below the side all of the back
        CHECK(shapes_of::covers(back, {outside_half, -1}));
        CHECK_FALSE(shapes_of::covers(back, {setback - 0.1, -1}));
        CHECK_FALSE(shapes_of::says(drawing, "end proud"));
        CHECK(shapes_of::says(drawing, "end gap"));
        CHECK(shapes_of::dimension(shapes_of::all<kw::draw::Dimension>(drawing), "lip") != nullptr);
    }
    CHECK(tongued == 1);
}

TEST_CASE("close around a back's tongue its whole thickness is seen, however thick beside the dado") {
    for (const Length thickness : {Length::inches(1, 2), Length::inches(3, 4)}) {
        view_job::Wanted wanted;
        wanted.back_joint = "tongue and dado";
        wanted.side = thickness;
        const auto work = view_job::work(wanted);
        for (const Group& group : work->plan.groups) {
            if (group.work.label != "back tongue and dado") continue;
            const Drawing drawing = joint_magnified(*work, group);
            const std::vector<Fill> wood = shapes_of::wood_in(drawing);
            REQUIRE(wood.size() == 2);
            const Box side = shapes_of::box_of(wood[0]), back = shapes_of::box_of(wood[1]);
            CHECK(back.left_mm > side.left_mm);
            CHECK(back.right_mm - back.left_mm == doctest::Approx(thickness.mm()).epsilon(0.02));
        }
    }
}

TEST_CASE("before and after stand side by side and do not touch") {
    const auto work = view_job::work(view_job::Wanted{});
    const Group& group = locking_group(*work);
    Settings before = group.stands;
    before.height -= Length::micrometres(200);
    const Drawing drawing = joint_before_after(*work, group, before, group.stands);
    CHECK(shapes_of::says(drawing, "before"));
    CHECK(shapes_of::says(drawing, "after"));
    const std::vector<Fill> wood = shapes_of::wood_in(drawing);
    REQUIRE(wood.size() == 4);
    const double first = std::max(shapes_of::box_of(wood[0]).right_mm, shapes_of::box_of(wood[1]).right_mm);
    const double second = std::min(shapes_of::box_of(wood[2]).left_mm, shapes_of::box_of(wood[3]).left_mm);
    CHECK(first < second);
    CHECK(shapes_of::fills(drawing, Material::overlap).size() == 1);  // before only
}

TEST_CASE("four right-angled turns bring a picture back, and one turns width into height") {
    const auto work = view_job::work(view_job::Wanted{});
    const Drawing drawing = joint_view(*work, locking_group(*work));
    const Box box = bounds(drawing), once = bounds(turned_left(drawing));
    CHECK(once.right_mm - once.left_mm == doctest::Approx(box.top_mm - box.bottom_mm));
    CHECK(turned_left(turned_left(turned_left(turned_left(drawing)))) == drawing);
    CHECK(moved(moved(drawing, 32, -8), -32, 8).shapes.size() == drawing.shapes.size());
    CHECK(bounds(moved(drawing, 32, -8)).left_mm == doctest::Approx(box.left_mm + 32));
}
