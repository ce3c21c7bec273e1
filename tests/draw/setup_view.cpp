// The pictures of setups, against the setups themselves and the geometry of the cut.

#include <doctest/doctest.h>

#include "draw/random_views.h"
#include "draw/setup_view.h"
#include "draw/shapes_of.h"
#include "draw/view_job.h"

using namespace kw::draw;
using kw::Length;
using kw::Setup;
using kw::Stage;

namespace {

template <class Check>
void for_joint_setups(Check check) {
    random_views::for_joint_setups(
        [&](const kw::Work& work, const Setup& setup) { check(work, setup, setup_view(work, setup)); });
}

std::string text(const kw::Work& work, Length length) { return kw::show_with_unit(length, work.job.locale); }

}  // namespace

TEST_CASE("the work lies on the table and touches the fence or the spacer") {
    for_joint_setups([](const kw::Work&, const Setup& setup, const Drawing& drawing) {
        const auto wood = shapes_of::wood_in(drawing);
        REQUIRE(wood.size() == 1);
        const Box box = shapes_of::box_of(wood.front());
        CHECK(box.bottom_mm == doctest::Approx(0));
        const bool end_is_cut_away = setup.passes.front().nibble || setup.fence <= setup.spacer;
        if (!end_is_cut_away) CHECK(box.left_mm == doctest::Approx(setup.spacer.mm()));
        CHECK(box.left_mm >= setup.spacer.mm() - 1e-9);
    });
}

TEST_CASE("the cutter stands where the setup says, and no wood is left where it stands") {
    for_joint_setups([](const kw::Work&, const Setup& setup, const Drawing& drawing) {
        const auto cutters = shapes_of::fills(drawing, Material::cutter);
        REQUIRE(cutters.size() == 1);
        const Box box = shapes_of::box_of(cutters.front());
        CHECK(box.left_mm == doctest::Approx(setup.fence.mm()));
        CHECK(box.right_mm == doctest::Approx((setup.fence + setup.kerf).mm()));
        CHECK(box.top_mm == doctest::Approx(setup.height->mm()));
        const Fill board = shapes_of::wood_in(drawing).front();
        const double middle = (box.left_mm + box.right_mm) / 2;
        CHECK_FALSE(shapes_of::covers(board, {middle, 0.5 * box.top_mm}));
        CHECK(shapes_of::covers(board, {box.right_mm - 0.01, box.top_mm + 0.01}));
        CHECK(shapes_of::covers(board, {box.right_mm + 0.01, 0.5 * box.top_mm}));
    });
}

TEST_CASE("every control that is set stands on the picture, as long as it is and in the maker's reading") {
    for_joint_setups([](const kw::Work& work, const Setup& setup, const Drawing& drawing) {
        const auto dimensions = shapes_of::all<Dimension>(drawing);
        const auto check = [&](const char* word, Length length, bool upright) {
            const Dimension* d = shapes_of::dimension(dimensions, word);
            REQUIRE(d != nullptr);
            CHECK(d->text == word + (" " + text(work, length)));
            const double drawn = upright ? d->to.y_mm - d->from.y_mm : d->to.x_mm - d->from.x_mm;
            CHECK(drawn == doctest::Approx(length.mm()));
        };
        check("fence", setup.fence, false);
        check("height", *setup.height, true);
        check("kerf", setup.kerf, false);
        if (setup.spacer > Length{})
            check(setup.sacrificial ? "sacrificial spacer" : "spacer", setup.spacer, false);
        else CHECK(dimensions.size() == 3);
    });
}

TEST_CASE("the picture says which face lies down and what touches the fence") {
    const auto work = view_job::work(view_job::Wanted{});
    int dados = 0, rabbets = 0, grooves = 0;
    for (const Setup& setup : work->plan.setups) {
        const Drawing drawing = setup_view(*work, setup);
        if (setup.work == "locking rabbet: side dado") {
            ++dados;
            CHECK(shapes_of::says(drawing, "inside face down"));
            CHECK(shapes_of::says(drawing, "front end against the fence"));
        }
        if (setup.work == "locking rabbet: rabbet") {
            ++rabbets;
            CHECK(shapes_of::says(drawing, "outside face down"));
            CHECK(shapes_of::says(drawing, "left and right ends against the spacer"));
        }
        if (setup.guide == "rip fence" && setup.stage == Stage::joint) {
            ++grooves;
            CHECK(shapes_of::says(drawing, "inside face down"));
            CHECK(shapes_of::says(drawing, "bottom edge against the fence"));
        }
    }
    CHECK(dados == 1);
    CHECK(rabbets == 1);
    CHECK(grooves >= 1);
}

TEST_CASE("a spacer that the cutter runs into is drawn as one to be cut into") {
    int sacrificial = 0;
    for_joint_setups([&](const kw::Work&, const Setup& setup, const Drawing& drawing) {
        CHECK(shapes_of::fills(drawing, Material::sacrificial_spacer).size() ==
              (setup.sacrificial ? 1u : 0u));
        const bool plain = setup.spacer > Length{} && !setup.sacrificial;
        CHECK(shapes_of::fills(drawing, Material::spacer).size() == (plain ? 1u : 0u));
        sacrificial += setup.sacrificial ? 1 : 0;
    });
    CHECK(sacrificial > 0);
}

TEST_CASE("a later pass of a slot shows what the passes before it took") {
    const auto work = view_job::work(view_job::Wanted{});
    int later = 0;
    for (const Setup& setup : work->plan.setups) {
        if (setup.work.find("pass 2 of") == std::string::npos) continue;
        ++later;
        const kw::Group& group = *work->plan.group_with_id(setup.group);
        const Drawing drawing = setup_view(*work, setup);
        const Point in_first{group.stands.fence.mm() + 0.1, 0.5 * setup.height->mm()};
        CHECK_FALSE(shapes_of::covers(shapes_of::wood_in(drawing).front(), in_first));
        const auto removed = shapes_of::fills(drawing, Material::removed);
        REQUIRE(removed.size() == 1);
        CHECK(shapes_of::covers(removed.front(), in_first));
    }
    CHECK(later >= 1);
}

TEST_CASE("a strip that is to be nibbled is marked, and only then") {
    int nibbled = 0;
    for_joint_setups([&](const kw::Work&, const Setup& setup, const Drawing& drawing) {
        const bool nibble = setup.passes.front().nibble;
        CHECK(shapes_of::says(drawing, "nibble") == nibble);
        if (!nibble) return;
        ++nibbled;
        const Point in_strip{(setup.spacer + setup.fence).mm() / 2, setup.height->mm() / 2};
        CHECK_FALSE(shapes_of::covers(shapes_of::wood_in(drawing).front(), in_strip));
        CHECK(shapes_of::covers(shapes_of::fills(drawing, Material::removed).front(), in_strip));
    });
    CHECK(nibbled > 0);
}

TEST_CASE(
    "solid wood shows long grain where an end is cut and end grain where an edge is grooved; plywood its "
    "plies") {
    for_joint_setups([](const kw::Work& work, const Setup& setup, const Drawing& drawing) {
        const kw::Part& part = *work.plan.part_with_id(setup.passes.front().part);
        const bool plies = work.job.stock_named(part.stock)->kind == kw::StockKind::plywood;
        const Material solid = setup.guide == "rip fence" ? Material::end_grain : Material::long_grain;
        CHECK(shapes_of::wood_in(drawing).front().material == (plies ? Material::plywood : solid));
    });
}

TEST_CASE("cuts to size show the finished size between fence or stop and the near side of the blade") {
    for (const view_job::Wanted& wanted : {view_job::Wanted{}, view_job::metric()}) {
        const auto work = view_job::work(wanted);
        int seen = 0;
        for (const Setup& setup : work->plan.setups) {
            if (setup.stage == Stage::joint) continue;
            CAPTURE(setup.work);
            ++seen;
            const Drawing drawing = setup_view(*work, setup);
            const auto dimensions = shapes_of::all<Dimension>(drawing);
            const char* word = setup.guide == "rip fence" ? "fence" : "stop";
            const Dimension* size = shapes_of::dimension(dimensions, word);
            REQUIRE(size != nullptr);
            CHECK(size->text == word + (" " + text(*work, setup.fence)));
            const auto cutters = shapes_of::fills(drawing, Material::cutter);
            REQUIRE(cutters.size() == 1);
            CHECK(shapes_of::box_of(cutters.front()).left_mm == doctest::Approx(size->to.x_mm));
            CHECK(size->to.x_mm - size->from.x_mm <= setup.fence.mm() + 1e-9);
            CHECK(shapes_of::says(drawing, setup.guide));
        }
        CHECK(seen >= 4);
    }
}

namespace {

// Of the pencilled loop, which keeps its hand (see part_view.cpp), and of the bare ground round it.
bool is_loop(const Shape& shape) {
    const Line* line = std::get_if<Line>(&shape);
    return line && line->points.size() > 3 &&
           (line->stroke == Stroke::pencil || line->stroke == Stroke::halo);
}

// Both ways round, the same shapes in the same places, hatches and words' sides included; words themselves are not mirrored.
bool is_mirror_image(Drawing a, Drawing b) {
    CHECK(std::erase_if(a.shapes, is_loop) == std::erase_if(b.shapes, is_loop));
    return mirrored_about_x(a, 0) == b;
}

std::vector<double> widths(const Drawing& drawing, Material material) {
    std::vector<double> all;
    for (const Fill& fill : shapes_of::fills(drawing, material)) {
        const Box box = shapes_of::box_of(fill);
        all.push_back(box.right_mm - box.left_mm);
    }
    return all;
}

}  // namespace

TEST_CASE("with the fence at the right the machine is seen in a mirror, and the words and sizes stay") {
    random_views::for_setups([](const kw::Work& work, const Setup& setup) {
        const Drawing left = setup_view(work, setup),
                      right = setup_view(work, setup, {.fence_left = false, .to_far_side = false});
        if (setup.guide == "stop") {
            CHECK(left == right);
            return;
        }
        CHECK(is_mirror_image(left, right));
        CHECK(shapes_of::box_of(shapes_of::fills(right, Material::fence).at(0)).left_mm ==
              doctest::Approx(
                  setup.stage == Stage::joint
                      ? 0
                      : -shapes_of::box_of(shapes_of::fills(left, Material::fence).at(0)).right_mm));
        CHECK(widths(left, Material::cutter).at(0) == doctest::Approx(widths(right, Material::cutter).at(0)));
        for (const Material wood : {Material::plywood, Material::long_grain, Material::end_grain})
            CHECK(widths(left, wood).size() == widths(right, wood).size());
        const auto a = shapes_of::all<Dimension>(left), b = shapes_of::all<Dimension>(right);
        REQUIRE(a.size() == b.size());
        for (std::size_t i = 0; i < a.size(); ++i) {
            CHECK(a[i].text == b[i].text);
            CHECK(std::abs(a[i].to.x_mm - a[i].from.x_mm) ==
                  doctest::Approx(std::abs(b[i].to.x_mm - b[i].from.x_mm)));
            CHECK((a[i].side == Side::right) == (b[i].side == Side::left));
        }
    });
}

TEST_CASE("the fence is dimensioned to the cutter's far side where the maker measures so") {
    random_views::for_joint_setups([](const kw::Work& work, const Setup& setup) {
        const Drawing drawing = setup_view(work, setup, {.fence_left = true, .to_far_side = true});
        const auto dimensions = shapes_of::all<Dimension>(drawing);
        const Dimension* far = shapes_of::dimension(dimensions, "fence to far side");
        REQUIRE(far != nullptr);
        CHECK(far->text == "fence to far side " + text(work, setup.fence + setup.kerf));
        CHECK(far->from.x_mm == doctest::Approx(0));
        CHECK(far->to.x_mm == doctest::Approx((setup.fence + setup.kerf).mm()));
        CHECK(dimensions.size() == (setup.spacer > Length{} ? 4u : 3u));
    });
}
