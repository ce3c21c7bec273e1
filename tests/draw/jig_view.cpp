// The pictures of boards on an indexing jig, against the setups and where the jig brings the sockets.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "draw/board_lie.h"
#include "draw/board_marks.h"
#include "draw/golden.h"
#include "draw/joint_view.h"
#include "draw/part_view.h"
#include "draw/pencil_in.h"
#include "draw/random_views.h"
#include "draw/setup_slide.h"
#include "draw/shapes_of.h"
#include "draw/words_on_words.h"

using namespace kw::draw;
using kw::BoardFace;
using kw::Length;
using kw::Reference;
using kw::Role;
using kw::Setup;

namespace {

constexpr double hair_mm = 0.05;

Fill board_in(const Drawing& drawing) {
    const auto wood = shapes_of::wood_in(drawing);
    REQUIRE(wood.size() == 1);
    return wood.front();
}

Box only(const Drawing& drawing, Material material) {
    const auto fills = shapes_of::fills(drawing, material);
    REQUIRE(fills.size() == 1);
    return shapes_of::box_of(fills.front());
}

std::string shown_text(const kw::Work& work, Length length) {
    return kw::show_with_unit(length, work.job.locale);
}

}  // namespace

TEST_CASE("pin and cutter stand a finger apart on the table, the cutter as high as the sockets are deep") {
    int seen = 0;
    random_views::for_jig_setups([&](const kw::Work& work, const Setup& setup) {
        ++seen;
        const Drawing drawing = setup_view(work, setup);
        const Box cutter = only(drawing, Material::cutter), pin = only(drawing, Material::fence);
        CHECK(pin.right_mm == doctest::Approx(0));
        CHECK(pin.bottom_mm == doctest::Approx(0));
        CHECK(pin.right_mm - pin.left_mm < setup.kerf.mm() + 1e-9);  // or no socket would go over it
        CHECK(cutter.left_mm == doctest::Approx(setup.fence.mm()));
        CHECK(cutter.right_mm == doctest::Approx((setup.fence + setup.kerf).mm()));
        CHECK(cutter.top_mm == doctest::Approx(setup.height->mm()));
        CHECK(cutter.bottom_mm < 0);
        CHECK(board_in(drawing).upright);  // its length stands up
    });
    CHECK(seen > 30);
}

// The far wall of a socket lies against the pin: then the next socket is a finger farther up, whatever the pin is thick.
TEST_CASE("the socket before is over the pin, its far wall against it, those before stand beyond") {
    int seen = 0;
    random_views::for_jig_setups([&](const kw::Work& work, const Setup& setup) {
        if (setup.spacer > Length{}) return;
        ++seen;
        const Drawing drawing = setup_view(work, setup);
        const Fill board = board_in(drawing);
        const double a = setup.fence.mm(), k = setup.kerf.mm(), low = 0.5 * setup.height->mm();
        const double edge = -2 * (a + k);  // two sockets are cut
        CHECK(shapes_of::box_of(board).left_mm == doctest::Approx(edge));
        const auto is_wood = [&](double x) { return shapes_of::covers(board, {x, low}); };
        CHECK(is_wood(hair_mm));
        CHECK_FALSE(is_wood(-hair_mm));
        for (int socket = 0; socket <= 2; ++socket) {
            const double near = edge + a + socket * (a + k);
            CHECK(is_wood(near - hair_mm));
            CHECK_FALSE(is_wood(near + hair_mm));
            CHECK_FALSE(is_wood(near + k - hair_mm));
            CHECK(is_wood(near + k + hair_mm));
        }
        CHECK(is_wood(a + (a + k) + k / 2));  // the next is not cut yet
        CHECK(shapes_of::covers(board, {a + k / 2, setup.height->mm() + hair_mm}));
    });
    CHECK(seen > 15);
}

TEST_CASE("with the spacer on the pin the bottom edge is where the cutter begins: its first socket") {
    int seen = 0;
    random_views::for_jig_setups([&](const kw::Work& work, const Setup& setup) {
        if (setup.spacer == Length{}) return;
        ++seen;
        const Drawing drawing = setup_view(work, setup);
        const Box spacer = only(drawing, Material::spacer);
        CHECK(spacer.left_mm == doctest::Approx(0));
        CHECK(spacer.right_mm == doctest::Approx(setup.fence.mm()));
        const Fill board = board_in(drawing);
        const double low = 0.5 * setup.height->mm(), high = setup.height->mm() + hair_mm;
        CHECK(shapes_of::covers(board, {setup.fence.mm() + hair_mm, high}));
        CHECK_FALSE(shapes_of::covers(board, {setup.fence.mm() - hair_mm, high}));
        CHECK_FALSE(shapes_of::covers(board, {(setup.fence + setup.kerf).mm() - hair_mm, low}));
        CHECK(shapes_of::covers(board, {(setup.fence + setup.kerf).mm() + hair_mm, low}));
    });
    CHECK(seen > 15);
}

// At the first of them the sockets are no deeper than the bit is high.
TEST_CASE("where the bit comes up in passes, pin and spacer are drawn lower than the first of them") {
    view_job::Wanted wanted = view_job::fingered({});
    wanted.bit_pass = Length::inches(1, 8);
    const auto work = view_job::work(wanted);
    int seen = 0;
    for (const Setup& setup : work->plan.setups) {
        if (!setup.index) continue;
        ++seen;
        const Drawing drawing = setup_view(*work, setup);
        CHECK(only(drawing, Material::fence).top_mm < Length::inches(1, 8).mm());
        if (setup.spacer > Length{})
            CHECK(only(drawing, Material::spacer).top_mm < Length::inches(1, 8).mm());
        CHECK(only(drawing, Material::cutter).top_mm == doctest::Approx(setup.height->mm()));
    }
    CHECK(seen == 2);
}

TEST_CASE("gap, height, spacer and how far the board is set over stand on the picture") {
    random_views::for_jig_setups([](const kw::Work& work, const Setup& setup) {
        // A pin has one side, whichever side of the cutter the fence is measured to.
        const Drawing drawing = setup_view(work, setup, {.fence_left = true, .to_far_side = true});
        const auto dimensions = shapes_of::all<Dimension>(drawing);
        const auto check = [&](const char* word, Length length, bool upright) {
            const Dimension* d = shapes_of::dimension(dimensions, word);
            REQUIRE(d != nullptr);
            CHECK(d->text == word + (" " + shown_text(work, length)));
            const double drawn = upright ? d->to.y_mm - d->from.y_mm : d->to.x_mm - d->from.x_mm;
            CHECK(drawn == doctest::Approx(length.mm()));
        };
        check("pin", setup.fence, false);
        check("height", *setup.height, true);
        if (setup.spacer > Length{}) check("spacer", setup.spacer, false);
        // With the spacer's size above the board, beside the arrow.
        if (setup.spacer > Length{}) CHECK(shapes_of::says(drawing, shown_text(work, *setup.index)));
        else check("set over", *setup.index, false);
        CHECK(dimensions.size() == 3u);
        CHECK(shapes_of::says(drawing, references_text(setup, work.job.locale.words()) + " down"));
        CHECK(shapes_of::says(drawing, "bottom edge"));
        const auto arrows = shapes_of::lines(drawing, Stroke::arrow);
        REQUIRE(arrows.size() == 1);
        CHECK(arrows[0].points.front().x_mm - arrows[0].points.back().x_mm ==
              doctest::Approx(setup.index->mm()));
    });
}

TEST_CASE("with the pin at the right the jig is seen in a mirror") {
    random_views::for_jig_setups([](const kw::Work& work, const Setup& setup) {
        const Drawing left = setup_view(work, setup),
                      right = setup_view(work, setup, {.fence_left = false, .to_far_side = false});
        CHECK(mirrored_about_x(left, 0) == right);
        CHECK(only(right, Material::fence).left_mm == doctest::Approx(0));
    });
}

// A board turned in the hand. A front is seen as in the drawer, its outside toward you; a quarter turn brings its left end down and
// its bottom edge to the right, where a pin at the right is. For a pin at the left it is turned about its upright axis.
TEST_CASE("a front on its left end shows its outside with the pin at the right, and its inside at the left") {
    CHECK(standing_lie(Role::front, Reference::left_end, false).toward_maker == BoardFace::outside);
    CHECK(standing_lie(Role::front, Reference::left_end, true).toward_maker == BoardFace::inside);
    CHECK(standing_lie(Role::front, Reference::left_end).up == Reference::right_end);
}

TEST_CASE("the other end, the opposite board and the pin on the other side each turn the face away") {
    const auto face = [](Role role, Reference down, bool pin_left = true) {
        return standing_lie(role, down, pin_left).toward_maker;
    };
    for (const bool left : {true, false}) {
        CHECK(face(Role::front, Reference::left_end, left) != face(Role::front, Reference::right_end, left));
        CHECK(face(Role::front, Reference::left_end, left) != face(Role::back, Reference::left_end, left));
        CHECK(face(Role::side_left, Reference::front_end, left) !=
              face(Role::side_right, Reference::front_end, left));
        CHECK(face(Role::side_left, Reference::front_end, left) !=
              face(Role::side_left, Reference::rear_end, left));
    }
    CHECK(face(Role::side_left, Reference::front_end, true) !=
          face(Role::side_left, Reference::front_end, false));
    // Around the box: the front's right end and the right side's front end make one corner.
    CHECK(face(Role::front, Reference::right_end) == face(Role::side_right, Reference::rear_end));
}

TEST_CASE(
    "the board in the jig stands on its end with all its sockets, its bottom edge at the pin or the spacer") {
    int seen = 0;
    random_views::for_jig_setups([&](const kw::Work& work, const Setup& setup) {
        for (const PartLie& lie : part_lies(work, setup)) {
            ++seen;
            const kw::Pass& pass = setup.passes[lie.pass];
            const Drawing drawing = part_view(work, setup, lie);
            const Fill board = board_in(drawing);
            const double edge = setup.spacer.mm(), low = 0.5 * setup.height->mm();
            const double wide = work.plan.part_with_id(pass.part)->size.width.mm();
            CHECK(shapes_of::box_of(board).right_mm == doctest::Approx(edge + wide));
            // Along a line through the fingers wood and air change at every wall.
            int walls = 0;
            bool was_wood = false;
            for (double x = edge - 0.5; x < edge + wide + 0.5; x += 0.02) {
                const bool is_wood = shapes_of::covers(board, {x, low});
                walls += is_wood != was_wood ? 1 : 0;
                was_wood = is_wood;
            }
            const int fingers = walls / 2;
            const bool begins_with_finger = setup.spacer == Length{};
            CHECK(walls % 2 == 0);
            CHECK(std::abs(fingers - pass.cuts) <= 1);
            if (begins_with_finger) CHECK(fingers >= pass.cuts);
            else CHECK(fingers <= pass.cuts);
            CHECK(shapes_of::says(drawing, std::string(name_of(pass.reference)) + " down"));
            CHECK(shapes_of::says(drawing, std::string(name_of(opposite(pass.reference)))));
        }
    });
    CHECK(seen > 60);
}

TEST_CASE("in the jig too the loop has one hand, and the other where the marked face is turned away") {
    Drawing alone;
    add_face_mark(alone, {{0, 0}, {0, 1}});
    const double hand = pencil_in::winding(pencil_in::loops(alone).at(0));
    int through = 0, seen = 0;
    random_views::for_jig_setups([&](const kw::Work& work, const Setup& setup) {
        for (const bool pin_left : {true, false})
            for (const PartLie& lie : part_lies(work, setup)) {
                const auto marks = pencil_in::loops(
                    part_view(work, setup, lie, {.fence_left = pin_left, .to_far_side = false}));
                REQUIRE(marks.size() == 1);
                const bool away =
                    standing_lie(lie.role, setup.passes[lie.pass].reference, pin_left).toward_maker !=
                    marked_face;
                (away ? through : seen)++;
                CHECK((pencil_in::winding(marks[0]) * hand < 0) == away);
                CHECK((marks[0].stroke == Stroke::pencil_beneath) == away);
                // Its tail is on the bottom edge, at the pin.
                CHECK(std::abs(marks[0].points.back().x_mm) == doctest::Approx(setup.spacer.mm()));
            }
    });
    CHECK(seen > 50);
    CHECK(through > 50);
}

TEST_CASE("from one jig setup to the next the pin moves and the cutter keeps its place; a jig is no fence") {
    const auto work = view_job::work(view_job::fingered({}));
    std::optional<SetupScene> jig, table;
    for (const Setup& setup : work->plan.setups) {
        if (setup.stage != kw::Stage::joint) continue;
        auto& scene = setup.index ? jig : table;
        if (!scene) scene = setup_scene(*work, setup);
    }
    REQUIRE(jig);
    REQUIRE(table);
    CHECK_FALSE(slides(*jig, *table));
    CHECK_FALSE(slides(*table, *jig));
    SetupScene after = *jig;
    after.fence += Length::inches(12, 1000);
    after.height -= Length::inches(20, 1000);
    REQUIRE(slides(*jig, after));
    const Box box = bounds(setup_slide(*jig, after, 0));
    for (const double fraction : {0.0, 0.5, 1.0}) {
        const Drawing drawing = setup_slide(*jig, after, fraction);
        CHECK(only(drawing, Material::cutter).left_mm == doctest::Approx(after.fence.mm()));
        CHECK(only(drawing, Material::fence).right_mm ==
              doctest::Approx((1 - fraction) * Length::inches(12, 1000).mm()).epsilon(1e-4));
        CHECK(bounds(drawing) == box);
        CHECK(shapes_of::lines(drawing, Stroke::stood).size() == 2);
    }
    const auto dimensions = shapes_of::all<Dimension>(setup_slide(*jig, after, 1));
    CHECK(shapes_of::dimension(dimensions, "pin")->change->text == "+0.012 in out");
    CHECK(shapes_of::dimension(dimensions, "height")->change->text == "\u22120.020 in down");
}

TEST_CASE("putting the spacer on the pin is a slide that says so, and taking it off another") {
    const auto work = view_job::work(view_job::fingered({}));
    std::vector<SetupScene> scenes;
    for (const Setup& setup : work->plan.setups)
        if (setup.index) scenes.push_back(*setup_scene(*work, setup));
    REQUIRE(scenes.size() == 2);
    const bool side_first = scenes[0].spacer == Length{};
    const SetupScene &side = scenes[side_first ? 0 : 1], &end = scenes[side_first ? 1 : 0];
    REQUIRE(slides(side, end));
    const auto on = shapes_of::all<Dimension>(setup_slide(side, end, 1));
    REQUIRE(shapes_of::dimension(on, "spacer") != nullptr);
    CHECK(shapes_of::dimension(on, "spacer")->change->text == "put on");
    CHECK(shapes_of::says(setup_slide(end, side, 1), "spacer off"));
}

namespace {

// No words on words, and all of it on the sheet.
void check_words(const Drawing& drawing, double width, double height) {
    CAPTURE(drawing.title);
    CAPTURE(width);
    const auto meeting = words_on_words(drawing, width, height);
    CAPTURE((meeting.empty() ? std::string() : meeting.front()));
    CHECK(meeting.empty());
    const View view = fitted(drawing, width, height, 1, paper_text_width);
    const PixelBox words = extent(annotate(drawing, view, paper_text_width));
    CHECK(words.left >= 0);
    CHECK(words.top >= 0);
    CHECK(words.right <= width);
    CHECK(words.bottom <= height);
}

}  // namespace

TEST_CASE("on no sheet of the window's do a jig's words lie on others or leave it") {
    random_views::for_jig_setups([](const kw::Work& work, const Setup& setup) {
        for (const bool left : {true, false}) {
            const SetupViewOptions options{.fence_left = left, .to_far_side = false};
            const Drawing drawing = setup_view(work, setup, options);
            for (const auto& [width, height] : {std::pair{800.0, 500.0}, {616.0, 294.0}, {438.0, 249.0}})
                check_words(drawing, width, height);
            for (const PartLie& lie : part_lies(work, setup))
                check_words(part_view(work, setup, lie, options), 330, 190);
        }
    });
}

TEST_CASE("no words lie over the arrow by which a board is set over") {
    random_views::for_jig_setups([](const kw::Work& work, const Setup& setup) {
        for (const bool left : {true, false}) {
            const Drawing drawing = setup_view(work, setup, {.fence_left = left, .to_far_side = false});
            const auto arrows = shapes_of::lines(drawing, Stroke::arrow);
            REQUIRE(arrows.size() == 1);
            for (const auto& [width, height] : {std::pair{800.0, 500.0}, {616.0, 294.0}, {438.0, 249.0}}) {
                const View view = fitted(drawing, width, height, 1, paper_text_width);
                const Pixel from = to_pixel(view, arrows[0].points.front()),
                            to = to_pixel(view, arrows[0].points.back());
                for (const PlacedText& text : annotate(drawing, view, paper_text_width).texts) {
                    CAPTURE(text.text);
                    const bool is_across =
                        text.box.left < std::max(from.x, to.x) && text.box.right > std::min(from.x, to.x);
                    CHECK_FALSE((is_across && text.box.top < from.y && text.box.bottom > from.y));
                }
            }
        }
    });
}

TEST_CASE("nor do those of a corner with fingers") {
    random_views::for_jig_setups([](const kw::Work& work, const Setup& setup) {
        const kw::Group& group = *work.plan.group_with_id(setup.group);
        kw::Settings off = group.stands;
        off.fence += Length::micrometres(180);
        off.height += Length::micrometres(220);
        for (const auto& [width, height] : {std::pair{800.0, 500.0}, {610.0, 530.0}, {486.0, 366.0}}) {
            check_words(joint_view(work, group), width, height);
            check_words(joint_magnified(work, group, off), width, height);
            check_words(joint_before_after(work, group, off, group.stands), width, height);
        }
    });
}

TEST_CASE("a board of few sockets is shown at its last one, up to its top edge") {
    for (const Length kerf : {Length::inches(5, 8), Length::inches(13, 16)}) {
        view_job::Wanted wanted = view_job::fingered({});
        wanted.kerf = kerf;
        wanted.groove_cutter = "rip blade";
        const auto work = view_job::work(wanted);
        for (const Setup& setup : work->plan.setups) {
            if (!setup.index) continue;
            const int cuts = setup.passes.front().cuts;
            REQUIRE(cuts <= 4);
            const Drawing drawing = setup_view(*work, setup);
            const int before = setup.spacer > Length{} ? 0 : std::min(2, cuts - 1);
            const Box board = shapes_of::box_of(board_in(drawing));
            const double edge = setup.spacer.mm() - before * setup.index->mm();
            CHECK(board.left_mm == doctest::Approx(edge));
            if (before == cuts - 1) CHECK(board.right_mm == doctest::Approx(edge + Length::inches(4).mm()));
            check_words(drawing, 800, 500);
        }
    }
}

TEST_CASE("boards in the jig are as they were kept") {
    for (const bool metric : {false, true}) {
        const auto work =
            view_job::work(view_job::fingered(metric ? view_job::metric() : view_job::Wanted{}));
        for (const Setup& setup : work->plan.setups) {
            if (!setup.index) continue;
            const PartLie lie = part_lies(*work, setup).front();
            const std::string file = std::string(metric ? "metric" : "inch") + "_part_in_jig_" +
                                     (setup.spacer > Length{} ? "with_spacer" : "at_pin");
            CAPTURE(file);
            CHECK(golden::is_as_kept(file, part_view(*work, setup, lie)));
        }
    }
}
