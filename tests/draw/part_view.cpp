// How a board lies, against boards turned in the hand; and the marks, on every picture of the same board.

#include "draw/part_view.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "draw/board_marks.h"
#include "draw/golden.h"
#include "draw/joint_cuts.h"
#include "draw/joint_view.h"
#include "draw/pencil_in.h"
#include "draw/random_views.h"
#include "draw/shapes_of.h"
#include "words/names.h"

using namespace kw::draw;
using kw::BoardFace;
using kw::Reference;
using kw::Role;
using kw::Setup;
using pencil_in::is_caret;
using pencil_in::loops;
using pencil_in::winding;

namespace {

const PartLie* lie_of(const std::vector<PartLie>& lies, Role role) {
    for (const PartLie& lie : lies)
        if (lie.role == role) return &lie;
    return nullptr;
}

double distance(Point a, Point b) { return std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm); }

}  // namespace

// Found with two boards held in the hands: a side's outside face is up, its front end at the fence at the left. The left side has
// its bottom edge away from the maker then, the right side toward him.
TEST_CASE("sides with the inside down and the front end at the fence lie with their bottom edges opposite") {
    const BoardLie left = board_lie(Role::side_left, Reference::front_end, BoardFace::inside);
    CHECK(left.up == BoardFace::outside);
    CHECK(left.from_fence == Reference::rear_end);
    CHECK(left.away == Reference::bottom_edge);
    CHECK(left.toward_maker == Reference::top_edge);
    const BoardLie right = board_lie(Role::side_right, Reference::front_end, BoardFace::inside);
    CHECK(right.away == Reference::top_edge);
    CHECK(right.toward_maker == Reference::bottom_edge);
}

TEST_CASE(
    "a front that is seen as in the drawer has its bottom edge toward the maker, its left end at the left") {
    // Outside face up, as it is seen by one who stands before the drawer: nothing is turned.
    const BoardLie lie = board_lie(Role::front, Reference::left_end, BoardFace::inside);
    CHECK(lie.from_fence == Reference::right_end);
    CHECK(lie.toward_maker == Reference::bottom_edge);
    CHECK(lie.away == Reference::top_edge);
}

TEST_CASE(
    "turned over, end for end, or to the other side of the cutter: each once swaps the edges, two of them "
    "don't") {
    for (const Role role : {Role::front, Role::back, Role::side_left, Role::side_right}) {
        const bool side = role == Role::side_left || role == Role::side_right;
        const Reference ends[] = {side ? Reference::front_end : Reference::left_end,
                                  side ? Reference::rear_end : Reference::right_end};
        const BoardLie lie = board_lie(role, ends[0], BoardFace::inside);
        const auto swapped = [&](const BoardLie& other) {
            return other.away == lie.toward_maker && other.toward_maker == lie.away;
        };
        CHECK(swapped(board_lie(role, ends[0], BoardFace::outside)));
        CHECK(swapped(board_lie(role, ends[1], BoardFace::inside)));
        CHECK(swapped(board_lie(role, ends[0], BoardFace::inside, false)));
        CHECK(board_lie(role, ends[1], BoardFace::outside).away == lie.away);
        CHECK(board_lie(role, ends[1], BoardFace::inside, false).away == lie.away);
    }
}

TEST_CASE("with an edge at the fence it is the ends that lie away and toward the maker") {
    const BoardLie left = board_lie(Role::side_left, Reference::bottom_edge, BoardFace::inside);
    CHECK(left.from_fence == Reference::top_edge);
    CHECK(left.away == Reference::rear_end);
    const BoardLie right = board_lie(Role::side_right, Reference::bottom_edge, BoardFace::inside);
    CHECK(right.away == Reference::front_end);
}

TEST_CASE(
    "left and right side lie as mirror images of each other, with other names at their edges, and one hand "
    "of mark") {
    int seen = 0;
    random_views::for_joint_setups([&](const kw::Work& work, const Setup& setup) {
        const auto lies = part_lies(work, setup);
        const PartLie *left = lie_of(lies, Role::side_left), *right = lie_of(lies, Role::side_right);
        if (!left || !right || setup.guide == "rip fence") return;
        ++seen;
        const Drawing a = part_view(work, setup, *left), b = part_view(work, setup, *right);
        const double width = work.plan.part_with_id(setup.passes[left->pass].part)->size.width.mm();
        // The same mark is pencilled on both: half a turn brings one onto the other.
        const auto marks = loops(a), others = loops(b);
        REQUIRE(marks.size() == 1);
        REQUIRE(others.size() == 1);
        REQUIRE(marks[0].points.size() == others[0].points.size());
        const double across_mm = marks[0].points.back().x_mm;
        for (std::size_t i = 0; i < marks[0].points.size(); ++i) {
            const Point turned{2 * across_mm - others[0].points[i].x_mm, width - others[0].points[i].y_mm};
            CHECK(distance(marks[0].points[i], turned) < 1e-9);
        }
        CHECK(marks[0].stroke == others[0].stroke);
        CHECK(shapes_of::says(a, "top edge, toward you") == shapes_of::says(b, "bottom edge, toward you"));
        CHECK(shapes_of::says(a, "top edge, toward you") != shapes_of::says(b, "top edge, toward you"));
    });
    CHECK(seen > 20);
}

TEST_CASE(
    "with the fence at the right the board's outline is mirrored, and what lies toward the maker is another "
    "edge") {
    random_views::for_joint_setups([](const kw::Work& work, const Setup& setup) {
        for (const PartLie& lie : part_lies(work, setup)) {
            const Drawing a = part_view(work, setup, lie),
                          b = part_view(work, setup, lie, {.fence_left = false, .to_far_side = false});
            const auto fence = [](const Drawing& drawing) {
                return shapes_of::box_of(shapes_of::fills(drawing, Material::fence).at(0));
            };
            CHECK(fence(a).right_mm == doctest::Approx(0));
            CHECK(fence(b).left_mm == doctest::Approx(0));
            const BoardLie there =
                board_lie(lie.role, setup.passes[lie.pass].reference, setup.passes[lie.pass].down, false);
            CHECK(shapes_of::says(b, std::string(name_of(there.toward_maker)) + ", toward you"));
            CHECK_FALSE(shapes_of::says(a, std::string(name_of(there.toward_maker)) + ", toward you"));
        }
    });
}

// Found with a board held in the hands: a left side's inside face is down, its front end at the fence, which is beyond the bit. The front end
// points away from the maker then, the top edge to the left, and to the left it is fed.
TEST_CASE(
    "at a router table it is said which edge goes in first, whichever side of a saw's blade the fence is "
    "on") {
    kw::Job job = view_job::job(view_job::Wanted{});
    job.shop.machines.push_back(kw::usual_machine("table", kw::MachineKind::router_table));
    job.shop.cutters.push_back({"bit", kw::CutterKind::bit, "table", kw::Length::inches(1, 4)});
    job.drawers[0].front.cutter = "bit";
    const auto work = view_job::work(job);
    int seen = 0, left_sides = 0;
    for (const Setup& setup : work->plan.setups) {
        if (setup.stage != kw::Stage::joint || setup.machine != "table") continue;
        for (const PartLie& lie : part_lies(*work, setup)) {
            ++seen;
            const Drawing drawing = part_view(*work, setup, lie);
            CHECK(drawing == part_view(*work, setup, lie, {.fence_left = false, .to_far_side = false}));
            CHECK_FALSE(drawing.title.find("toward you") != std::string::npos);
            const kw::Pass& pass = setup.passes[lie.pass];
            const BoardLie there = board_lie(lie.role, pass.reference, pass.down);
            CHECK(shapes_of::says(drawing, std::string(name_of(there.toward_maker)) + ", goes in first"));
            CHECK(shapes_of::says(drawing, std::string(name_of(there.away)) + ", trailing"));
            if (lie.role != Role::side_left || pass.reference != Reference::front_end) continue;
            ++left_sides;
            REQUIRE(pass.down == BoardFace::inside);
            CHECK(shapes_of::says(drawing, "top edge, goes in first"));
        }
    }
    CHECK(seen >= 2);
    CHECK(left_sides == 1);
}

// What is pencilled is the same on every board: its hand is that of the mark alone, and the other one where it is seen through the board.
TEST_CASE(
    "the loop has one hand wherever the marked face is seen, and the other where it is seen through the "
    "board") {
    Drawing alone;
    add_face_mark(alone, {{0, 0}, {0, 1}});
    const double hand = winding(loops(alone).at(0));
    REQUIRE(std::abs(hand) > 0.1);
    int seen = 0, through = 0;
    random_views::for_joint_setups([&](const kw::Work& work, const Setup& setup) {
        for (const bool fence_left : {true, false}) {
            const SetupViewOptions options{.fence_left = fence_left, .to_far_side = false};
            for (const PartLie& lie : part_lies(work, setup)) {
                const bool underneath = setup.passes[lie.pass].down == marked_face;
                (underneath ? through : seen)++;
                const Line loop = loops(part_view(work, setup, lie, options)).at(0);
                CHECK((winding(loop) * hand < 0) == underneath);
            }
            // On end the face is not seen through anything.
            CHECK(winding(loops(setup_view(work, setup, options)).at(0)) * hand > 0);
        }
    });
    CHECK(seen > 20);
    CHECK(through > 20);
}

TEST_CASE("the loop's tail and the caret are on the marked edge, wherever the board's lie has brought it") {
    random_views::for_joint_setups([](const kw::Work& work, const Setup& setup) {
        for (const PartLie& lie : part_lies(work, setup)) {
            const Drawing drawing = part_view(work, setup, lie);
            const auto marks = loops(drawing);
            REQUIRE(marks.size() == 1);
            const Point tail = marks[0].points.back();
            const BoardLie lies =
                board_lie(lie.role, setup.passes[lie.pass].reference, setup.passes[lie.pass].down);
            const double width = work.plan.part_with_id(setup.passes[lie.pass].part)->size.width.mm();
            if (lies.toward_maker == marked_edge) CHECK(tail.y_mm == doctest::Approx(0));
            if (lies.away == marked_edge) CHECK(tail.y_mm == doctest::Approx(width));
            if (lies.at_fence == marked_edge) CHECK(tail.x_mm == doctest::Approx(setup.spacer.mm()));
            int carets = 0;
            for (const Line& line : shapes_of::lines(drawing, Stroke::pencil))
                if (is_caret(line)) {
                    ++carets;
                    CHECK(distance(line.points[1], tail) < 1e-9);
                }
            CHECK(carets == 1);
        }
    });
}

TEST_CASE("the marked face is the same one at the machine, from above, and in the closed joint") {
    int down = 0, up = 0;
    random_views::for_joint_setups([&](const kw::Work& work, const Setup& setup) {
        const kw::Pass& pass = setup.passes.front();
        const bool is_down = pass.down == marked_face;
        (is_down ? down : up)++;
        const double thickness = setup_scene(work, setup)->thickness.mm();
        // At the machine: on the table, or on top.
        const auto at_machine = loops(setup_view(work, setup));
        REQUIRE(at_machine.size() == 1);
        CHECK(at_machine[0].points.back().y_mm == doctest::Approx(is_down ? 0 : thickness));
        // From above: dashed where it lies underneath.
        const auto above = loops(part_view(work, setup, part_lies(work, setup).front()));
        CHECK((above.at(0).stroke == Stroke::pencil_beneath) == is_down);
        // Closed: toward the inside of the drawer, where the slot opens.
        const kw::Group& group = *work.plan.group_with_id(setup.group);
        if (group.work.guide == "rip fence") return;
        const auto closed = loops(joint_view(work, group));
        REQUIRE(closed.size() == 2);
        CHECK(closed[0].points.back().y_mm == doctest::Approx(0));
        const auto joint = kw::draw::closed(joint_cuts(work, group, group.stands), kw::Length::inches(20));
        CHECK(closed[1].points.back().x_mm ==
              doctest::Approx(joint->face_step.mm() + group.work.insert_thickness.mm()));
    });
    CHECK(down > 20);
    CHECK(up > 10);
}

TEST_CASE(
    "the marked edge has its caret wherever it is seen on end: at the fence, and in the closed groove") {
    int edges = 0;
    random_views::for_joint_setups([&](const kw::Work& work, const Setup& setup) {
        int carets = 0;
        const Drawing drawing = setup_view(work, setup);
        for (const Line& line : shapes_of::lines(drawing, Stroke::pencil)) carets += is_caret(line) ? 1 : 0;
        const bool at_fence = setup.passes.front().reference == marked_edge;
        CHECK(carets == (at_fence ? 1 : 0));
        if (!at_fence) return;
        ++edges;
        const Drawing closed = joint_view(work, *work.plan.group_with_id(setup.group));
        const double bottom = bounds(closed).bottom_mm;
        int in_joint = 0;
        for (const Line& line : shapes_of::lines(closed, Stroke::pencil))
            if (is_caret(line)) {
                ++in_joint;
                CHECK(line.points[1].y_mm == doctest::Approx(bottom));
            }
        CHECK(in_joint == 1);
    });
    CHECK(edges > 10);
}

TEST_CASE("parts that lie alike are drawn once") {
    random_views::for_joint_setups([](const kw::Work& work, const Setup& setup) {
        const auto lies = part_lies(work, setup);
        REQUIRE_FALSE(lies.empty());
        CHECK(lies.size() <= 8);
        for (std::size_t i = 0; i < lies.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) {
                const kw::Pass &a = setup.passes[lies[i].pass], &b = setup.passes[lies[j].pass];
                CHECK_FALSE((lies[i].role == lies[j].role && a.reference == b.reference && a.down == b.down));
            }
    });
}

TEST_CASE("the boards from above are as they were kept") {
    const auto work = view_job::work(view_job::Wanted{});
    const std::vector<std::string> kept{"locking rabbet: side dado", "locking rabbet: rabbet",
                                        "groove, pass 1 of 2"};
    std::set<std::string> drawn;
    for (const Setup& setup : work->plan.setups) {
        if (std::find(kept.begin(), kept.end(), setup.work) == kept.end()) continue;
        drawn.insert(setup.work);
        for (const PartLie& lie : part_lies(*work, setup)) {
            std::string file = "inch_part_" + setup.work + "_" +
                               kw::role_word(kw::words_in(kw::Language::english), name_of(lie.role)) + "_" +
                               std::string(name_of(setup.passes[lie.pass].reference));
            for (char& c : file)
                if (c == ' ' || c == ':' || c == ',') c = '_';
            CAPTURE(file);
            CHECK(golden::is_as_kept(file, part_view(*work, setup, lie)));
        }
    }
    CHECK(drawn.size() == kept.size());
}
