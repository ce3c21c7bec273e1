// The closed corner with fingers: what is drawn, against the sizes of its fingers and sockets by hand.

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "draw/finger_cuts.h"
#include "draw/golden.h"
#include "draw/joint_view.h"
#include "draw/shapes_of.h"
#include "draw/symptom_view.h"
#include "draw/view_job.h"

using namespace kw::draw;
using kw::Group;
using kw::Length;
using kw::Settings;

namespace {

// So few fingers that all of them are shown.
view_job::Wanted few_fingers() {
    view_job::Wanted wanted = view_job::fingered({});
    wanted.kerf = Length::inches(5, 8);
    wanted.groove_cutter = "rip blade";
    return wanted;
}

const Group& finger_group(const kw::Work& work, bool cuts_slot = true) {
    for (const Group& group : work.plan.groups)
        if (kw::has_fingers(group.work.chosen.joint) && group.cuts_slot == cuts_slot) return group;
    FAIL("no fingers");
    return work.plan.groups.front();
}

}  // namespace

TEST_CASE("fingers wider than the sockets overlap in each of them, narrower ones leave a gap in each") {
    std::mt19937 dice(5);
    const auto work = view_job::work(few_fingers());
    const Group& group = finger_group(*work);
    const double height = Length::inches(4).mm(), thick = group.work.insert_thickness.mm();
    for (int round = 0; round < 40; ++round) {
        Settings settings = group.stands;
        const int by = std::uniform_int_distribution<int>(-300, 300)(dice);
        settings.fence += Length::micrometres(by);
        const double a = settings.fence.mm(), k = settings.kerf.mm();
        CAPTURE(by);
        const Drawing drawing = joint_view(*work, group, settings);
        // The insert's fingers begin at k, 2k + a, ...; the side's sockets at a, 2a + k, ...
        double overlap = 0, gap = 0;
        for (double from = 0; from < height; from += a + k) {
            const double side_ends = std::min(from + a, height), insert_begins = std::min(from + k, height);
            overlap += std::max(0.0, side_ends - insert_begins) * thick;
            gap += std::max(0.0, insert_begins - side_ends) * thick;
        }
        const double seen_overlap = shapes_of::area_mm2(shapes_of::fills(drawing, Material::overlap));
        CHECK(seen_overlap == doctest::Approx(overlap).epsilon(0.001));
        CHECK(shapes_of::area_mm2(shapes_of::fills(drawing, Material::gap)) ==
              doctest::Approx(gap).epsilon(0.001));
        const std::string shown =
            kw::show_with_unit(Length::nearest_mm(std::abs(k - a)), kw::caliper_locale(work->job));
        if (a - k > 0.02) CHECK(shapes_of::says(drawing, "overlap " + shown));
        if (k - a > 0.02) CHECK(shapes_of::says(drawing, "loose by " + shown));
    }
}

TEST_CASE("the wood of both boards, with the air between them, fills the corner") {
    std::mt19937 dice(6);
    const auto work = view_job::work(few_fingers());
    const Group& group = finger_group(*work);
    for (int round = 0; round < 20; ++round) {
        Settings settings = group.stands;
        settings.fence += Length::micrometres(std::uniform_int_distribution<int>(-300, 300)(dice));
        const Drawing drawing = joint_view(*work, group, settings);
        const auto wood = shapes_of::wood_in(drawing);
        REQUIRE(wood.size() == 2);
        const Box side = shapes_of::box_of(wood[0]);
        const double depth = settings.height.mm(), pitch = (settings.fence + settings.kerf).mm();
        const double whole = Length::inches(4).mm() * (depth + std::max(1.1 * depth, 0.6 * pitch));
        CHECK(side.left_mm == doctest::Approx(0));
        CHECK(shapes_of::area_mm2(wood) + shapes_of::area_mm2(shapes_of::fills(drawing, Material::gap)) -
                  shapes_of::area_mm2(shapes_of::fills(drawing, Material::overlap)) ==
              doctest::Approx(whole).epsilon(0.001));
    }
}

TEST_CASE("what is drawn of a long row is the closed corner cut off, and nothing else") {
    for (const view_job::Wanted& wanted : {view_job::fingered({}), view_job::fingered(view_job::metric())}) {
        const auto work = view_job::work(wanted);
        const Group& group = finger_group(*work);
        const FingerCuts cuts = finger_cuts(*work, group, group.stands);
        const kw::ClosedFingers whole = closed(cuts, Length::millimetres(100));
        const auto wood = shapes_of::wood_in(joint_view(*work, group));
        REQUIRE(wood.size() == 4);  // the bottom few fingers, and the top edge
        // From the bottom edge up, at half of the depth; of the top, from the top edge down.
        const Length half = cuts.seen.depth.scaled(1, 2);
        const double top = shapes_of::box_of(wood[2]).top_mm;
        const Length height = cuts.height;
        for (const auto& [end, seen] : {std::pair{&whole.receiver, 0}, {&whole.insert, 1}})
            for (const kw::Span& finger : kw::solid_along_x(*end, half)) {
                const double middle = (finger.first + finger.second).mm() / 2;
                if (finger.second < 2 * cuts.seen.pitch)
                    CHECK(shapes_of::covers(wood[static_cast<std::size_t>(seen)], {half.mm(), middle}));
                if (height - finger.first < cuts.seen.pitch)
                    CHECK(shapes_of::covers(wood[static_cast<std::size_t>(2 + seen)],
                                            {half.mm(), top - (height.mm() - middle)}));
            }
    }
}

TEST_CASE("sockets too deep let the side's fingers stand proud, too shallow the other board's") {
    const auto work = view_job::work(view_job::fingered({}));
    const Group& group = finger_group(*work);
    for (const int by : {-300, 300}) {
        Settings settings = group.stands;
        settings.height += Length::micrometres(by);
        const Drawing drawing = joint_view(*work, group, settings);
        const std::string amount =
            kw::show_with_unit(Length::micrometres(300), kw::caliper_locale(work->job));
        CHECK(shapes_of::says(drawing, (by > 0 ? "proud " : "short ") + amount));
        CHECK(drawing.title.find((by > 0 ? "fingers proud " : "fingers short ") + amount) !=
              std::string::npos);
        const auto wood = shapes_of::wood_in(drawing);
        CHECK(shapes_of::box_of(wood[0]).left_mm == doctest::Approx(0));
        CHECK(shapes_of::box_of(wood[1]).left_mm == doctest::Approx(by / 1000.0));
    }
}

TEST_CASE("magnifying multiplies fit and standing proud, and moves neither pitch nor bottom edges") {
    std::mt19937 dice(12);
    std::uniform_int_distribution<int> off(-150, 150);
    const auto work = view_job::work(view_job::fingered({}));
    const Group& group = finger_group(*work);
    const Length tick = Length::from_ticks(2);
    for (int round = 0; round < 40; ++round) {
        Settings settings = group.stands;
        settings.fence += Length::micrometres(off(dice));
        settings.kerf += Length::micrometres(off(dice));
        settings.height += Length::micrometres(off(dice));
        const FingerCuts cuts = finger_cuts(*work, group, settings);
        const int times = 1 + round % 6;
        const FingerCuts large = exaggerated(cuts, times);
        CHECK(fit_of(cuts) == settings.kerf - settings.fence);
        CHECK(kw::abs(fit_of(large) - times * fit_of(cuts)) <= tick);
        CHECK(proud_of(large) == times * proud_of(cuts));
        CHECK(large.seen.pitch == cuts.seen.pitch);
        CHECK(kw::abs(large.seen.near + large.seen.width - large.seen.pitch) <= tick);
        CHECK(large.entering.near == Length{});
    }
}

TEST_CASE(
    "a board whose sockets have a height of their own is seen from its own outside, a socket at its bottom") {
    view_job::Wanted wanted = view_job::fingered({});
    wanted.front = Length::inches(3, 4);
    wanted.back_joint = "dado";
    const auto work = view_job::work(wanted);
    const Group& own = finger_group(*work, false);
    const Group& side = finger_group(*work);
    CHECK(joint_view(*work, own).title.find("front from outside") != std::string::npos);
    CHECK(joint_view(*work, side).title.find("right side from outside") != std::string::npos);
    const auto dimensions = shapes_of::all<Dimension>(joint_view(*work, own));
    const Dimension* socket = shapes_of::dimension(dimensions, "socket");
    REQUIRE(socket != nullptr);
    CHECK(socket->from.y_mm == doctest::Approx(0));
    const auto of_side = shapes_of::all<Dimension>(joint_view(*work, side));
    CHECK(shapes_of::dimension(of_side, "finger")->from.y_mm == doctest::Approx(0));
    // As deep as the other board is thick.
    CHECK(own.stands.height == Length::inches(1, 2));
    CHECK(side.stands.height == Length::inches(3, 4));
    CHECK(shapes_of::says(joint_view(*work, own), "loose by"));
}

TEST_CASE(
    "the pictures to be tapped: no gap beside a finger that no paper goes beside, one that three sheets do") {
    const auto work = view_job::work(few_fingers());
    const Group& group = finger_group(*work);
    const auto picture = [&](const char* word) {
        return symptom_view(*work, group, *kw::sight_of_word(word));
    };
    CHECK(shapes_of::fills(picture("no paper beside it"), Material::gap).empty());
    CHECK_FALSE(shapes_of::fills(picture("three sheets beside it"), Material::gap).empty());
    const auto proud_mm = [&](const char* word) {
        const auto wood = shapes_of::wood_in(picture(word));
        return shapes_of::box_of(wood.at(1)).left_mm - shapes_of::box_of(wood.at(0)).left_mm;
    };
    CHECK(proud_mm("side proud") > 0.3);
    CHECK(proud_mm("side shy") < -0.3);
    CHECK(proud_mm("flush") == doctest::Approx(0));
    for (const char* word : {"flush", "side proud", "no paper beside it"}) {
        CHECK(shapes_of::all<Label>(picture(word)).empty());
        CHECK(shapes_of::lines(picture(word), Stroke::pencil_beneath).empty());
    }
}

TEST_CASE("readings that are nonsense are drawn as what they say, and no row is without end") {
    const auto work = view_job::work(view_job::fingered({}));
    const Group& group = finger_group(*work);
    for (const double wide_mm : {-6.0, 0.0, 0.2, 30.0}) {
        Settings settings = group.stands;
        settings.fence = settings.kerf = Length::nearest_mm(wide_mm);
        CHECK(joint_view(*work, group, settings).shapes.size() < 1000);
        CHECK(joint_magnified(*work, group, settings).shapes.size() < 1000);
    }
}

TEST_CASE("a tight row before a correction, and a symptom, are as they were kept") {
    for (const bool metric : {false, true}) {
        const auto work =
            view_job::work(view_job::fingered(metric ? view_job::metric() : view_job::Wanted{}));
        const Group& group = finger_group(*work);
        Settings tight = group.stands;
        tight.fence += Length::micrometres(200);
        tight.height += Length::micrometres(250);
        const std::string prefix = metric ? "metric" : "inch";
        CHECK(golden::is_as_kept(prefix + "_before_after_tight_box_joint",
                                 joint_before_after(*work, group, tight, group.stands)));
        CHECK(golden::is_as_kept(prefix + "_symptom_box_joint_proud",
                                 symptom_view(*work, group, *kw::sight_of_word("side proud"))));
    }
}
