// The picture on its way from one setting to the next, against the two settings themselves.

#include "draw/setup_slide.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "draw/golden.h"
#include "draw/random_views.h"
#include "draw/shapes_of.h"

using namespace kw::draw;
using kw::Graduation;
using kw::Length;

namespace {

// A correction as a test cut asks for it, up to a few tenths of a millimetre each way.
SetupScene corrected(const SetupScene& scene, std::mt19937& dice) {
    const auto by = [&] {
        return Length::micrometres(std::uniform_int_distribution<int>(-40, 40)(dice) * 10);
    };
    SetupScene after = scene;
    if (after.fence > Length::micrometres(500)) after.fence += by();
    after.height += by();
    if (after.spacer > Length::micrometres(500)) after.spacer += by();
    return after;
}

template <class Check>
void for_corrections(Check check) {
    std::mt19937 dice(31);
    random_views::for_joint_setups([&](const kw::Work& work, const kw::Setup& setup) {
        const SetupScene before = *setup_scene(work, setup), after = corrected(before, dice);
        if (slides(before, after)) check(before, after);
    });
}

Box cutter_of(const Drawing& drawing) {
    return shapes_of::box_of(shapes_of::fills(drawing, Material::cutter).at(0));
}

Box fence_of(const Drawing& drawing) {
    return shapes_of::box_of(shapes_of::fills(drawing, Material::fence).at(0));
}

Drawing without_ghost(Drawing drawing) {
    std::erase_if(drawing.shapes, [](Shape& shape) {
        if (auto* dimension = std::get_if<Dimension>(&shape)) dimension->change.reset();
        const auto* line = std::get_if<Line>(&shape);
        return line && line->stroke == Stroke::stood;
    });
    return drawing;
}

SetupScene dado(const view_job::Wanted& wanted) {
    const auto work = view_job::work(wanted);
    for (const kw::Setup& setup : work->plan.setups)
        if (setup.work == "locking rabbet: side dado") return *setup_scene(*work, setup);
    FAIL("no dado");
    return {};
}

}  // namespace

TEST_CASE("a slide ends where the new setting stands, and begins where the old one stood") {
    int seen = 0;
    for_corrections([&](const SetupScene& before, const SetupScene& after) {
        ++seen;
        const auto near_at = [&](double fraction) { return cutter_of(setup_slide(before, after, fraction)); };
        const auto face_at = [&](double fraction) {
            return fence_of(setup_slide(before, after, fraction)).right_mm;
        };
        CHECK(face_at(1) == doctest::Approx(0));
        CHECK(near_at(0).left_mm - face_at(0) == doctest::Approx(before.fence.mm()));
        CHECK(near_at(1).left_mm - face_at(1) == doctest::Approx(after.fence.mm()));
        CHECK(near_at(0).top_mm == doctest::Approx(before.height.mm()));
        CHECK(near_at(1).top_mm == doctest::Approx(after.height.mm()));
        CHECK(near_at(0.5).top_mm == doctest::Approx((before.height + after.height).mm() / 2).epsilon(1e-4));
    });
    CHECK(seen > 50);
}

TEST_CASE("the cutter keeps its place on its way and the fence comes to it, as at the saw") {
    for_corrections([](const SetupScene& before, const SetupScene& after) {
        double last = (after.fence - before.fence).mm();
        CHECK(fence_of(setup_slide(before, after, 0)).right_mm == doctest::Approx(last));
        for (const double fraction : {0.0, 0.2, 0.6, 1.0}) {
            const Drawing drawing = setup_slide(before, after, fraction);
            CHECK(cutter_of(drawing).left_mm == doctest::Approx(after.fence.mm()));
            const double face = fence_of(drawing).right_mm;
            CHECK(std::abs(face) <= std::abs(last) + 1e-9);
            last = face;
        }
    });
}

TEST_CASE("what is seen does not jump on the way: the same room from beginning to end") {
    for_corrections([](const SetupScene& before, const SetupScene& after) {
        const Box box = bounds(setup_slide(before, after, 0));
        for (const double fraction : {0.1, 0.5, 1.0})
            CHECK(bounds(setup_slide(before, after, fraction)) == box);
    });
}

TEST_CASE("when the slide is over the picture is that of the new setting, with the ghost on it") {
    for_corrections([](const SetupScene& before, const SetupScene& after) {
        const Drawing end = without_ghost(setup_slide(before, after, 1)), plain = setup_view(after);
        // What is dimensioned; its number is a caliper's where the rule shows it as it stood.
        const auto words = [](const Drawing& drawing) {
            std::vector<std::string> all;
            for (const Dimension& d : shapes_of::all<Dimension>(drawing))
                all.push_back(d.text.substr(0, d.text.find_first_of("0123456789")));
            return all;
        };
        CHECK(words(end) == words(plain));
        CHECK(cutter_of(end) == cutter_of(plain));
        CHECK(fence_of(end) == fence_of(plain));
        CHECK(end.title == plain.title);
    });
}

TEST_CASE("what has moved, and nothing else, leaves its outline where it stood") {
    for_corrections([](const SetupScene& before, const SetupScene& after) {
        const auto differs = [&](Length a, Length b) {
            return kw::show(a - b, after.caliper) != kw::show(Length{}, after.caliper);
        };
        const auto ghosts = shapes_of::lines(setup_slide(before, after, 1), Stroke::stood);
        const std::size_t moved = std::size_t(differs(after.fence, before.fence)) +
                                  std::size_t(differs(after.height, before.height)) +
                                  std::size_t(differs(after.spacer, before.spacer));
        CHECK(ghosts.size() == moved);
        if (!differs(after.height, before.height)) return;
        const Line& cutter = ghosts[differs(after.fence, before.fence) ? 1 : 0];
        CHECK(cutter.points[1].y_mm == doctest::Approx(before.height.mm()));
        CHECK(cutter.points[1].x_mm == doctest::Approx(after.fence.mm()));
    });
}

TEST_CASE("where a scale is known to be off, the difference is what the scale is moved by") {
    SetupScene before = dado(view_job::Wanted{}), after = before;
    after.height += Length::inches(12, 1000);
    after.fence -= Length::inches(1, 16);
    before.fence_scale_off = Length::inches(20, 1000);
    after.fence_scale_off = Length::inches(30, 1000);
    after.height_scale_off = Length::inches(-5, 1000);
    // What makes up for the cutter is set, too.
    after.height_beyond = Length::inches(2, 1000);
    const auto dimensions = shapes_of::all<Dimension>(setup_slide(before, after, 1));
    const auto changed_at = [&](Side side) {
        const auto found = std::find_if(dimensions.begin(), dimensions.end(), [&](const Dimension& d) {
            return d.side == side && d.text.rfind("scale ", 0) == 0;
        });
        REQUIRE(found != dimensions.end());
        return found->change->text;
    };
    CHECK(changed_at(Side::right) == "+0.009 in up");
    CHECK(changed_at(Side::below) == "\u22120.052 in closer");
}

TEST_CASE("the difference stands under what is dimensioned, in the maker's words") {
    const SetupScene before = dado(view_job::Wanted{});
    SetupScene after = before;
    after.height += Length::inches(12, 1000);
    after.fence -= Length::inches(1, 16);
    const auto dimensions = shapes_of::all<Dimension>(setup_slide(before, after, 1));
    CHECK(shapes_of::dimension(dimensions, "height")->change->text == "+0.012 in up");
    CHECK(shapes_of::dimension(dimensions, "fence")->change->text == "\u22121/16 in closer");
    CHECK_FALSE(shapes_of::dimension(dimensions, "kerf")->change);
    const auto back = shapes_of::all<Dimension>(setup_slide(after, before, 1));
    CHECK(shapes_of::dimension(back, "height")->change->text == "\u22120.012 in down");
    CHECK(shapes_of::dimension(back, "fence")->change->text == "+1/16 in out");
}

TEST_CASE("a change is shown on the maker's graduation where that holds it, and by the caliper otherwise") {
    CHECK(change_text(Length::inches(17, 64), Graduation::in_64, Graduation::in_001) == "+17/64 in");
    CHECK(change_text(-Length::inches(12, 1000), Graduation::in_64, Graduation::in_001) == "\u22120.012 in");
    CHECK(change_text(Length::micrometres(300), Graduation::mm_0_1, Graduation::mm_0_01) == "+0.3 mm");
    CHECK(change_text(Length::micrometres(350), Graduation::mm_0_1, Graduation::mm_0_01) == "+0.35 mm");
    CHECK(change_text(Length::micrometres(2), Graduation::mm_0_1, Graduation::mm_0_01).empty());
}

TEST_CASE("another machine, another cutter, or nothing that a caliper shows: no slide") {
    const SetupScene scene = dado(view_job::Wanted{});
    SetupScene other = scene;
    CHECK_FALSE(slides(scene, other));
    other.height += Length::micrometres(2);
    CHECK_FALSE(slides(scene, other));
    other.height += Length::micrometres(100);
    CHECK(slides(scene, other));
    SetupScene elsewhere = other;
    elsewhere.machine = "router table";
    CHECK_FALSE(slides(scene, elsewhere));
    elsewhere = other;
    elsewhere.cutter = "another stack";
    CHECK_FALSE(slides(scene, elsewhere));
}

TEST_CASE("a slide is as it was kept: at its beginning, on its way, and over, with the ghost") {
    for (const bool metric : {false, true}) {
        const SetupScene before = dado(metric ? view_job::metric() : view_job::Wanted{});
        SetupScene after = before;
        after.height += Length::inches(12, 1000);
        after.fence += Length::inches(1, 4);
        for (const auto& [name, fraction] : {std::pair{"begin", 0.0}, {"half", 0.5}, {"end", 1.0}}) {
            const std::string file = std::string(metric ? "metric" : "inch") + "_slide_" + name;
            CAPTURE(file);
            CHECK(golden::is_as_kept(file, setup_slide(before, after, fraction)));
        }
    }
}
