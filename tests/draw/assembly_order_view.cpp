// The picture of how a drawer is put together: how far its boards go into the sides.

#include "draw/assembly_order_view.h"
#include "drawer/squareness.h"

#include <doctest/doctest.h>

#include "draw/shapes_of.h"
#include "draw/view_job.h"
#include "drawer/squareness.h"

using namespace kw::draw;

namespace {

Drawing order_of_assembly(const view_job::Wanted& wanted) {
    const auto work = view_job::work(wanted);
    const kw::DrawerDesign& drawer = work->standing_design.drawers.front();
    return assembly_order_view(
        drawer, kw::assembly_order(work->job, drawer, kw::equal_diagonal(kw::sides_of(drawer.box))),
        work->job.locale);
}

struct Boards {
    Box left, right, front, back;
};

Boards boards_in(const Drawing& drawing) {
    const auto wood = shapes_of::wood_in(drawing);
    REQUIRE(wood.size() == 4);
    return {shapes_of::box_of(wood[0]), shapes_of::box_of(wood[1]), shapes_of::box_of(wood[2]),
            shapes_of::box_of(wood[3])};
}

}  // namespace

TEST_CASE(
    "fingers go through the sides to their outsides and ends, a rabbeted front and a dadoed back do not") {
    const Boards fingered = boards_in(order_of_assembly(view_job::fingered({})));
    CHECK(fingered.front.left_mm == doctest::Approx(fingered.left.left_mm));
    CHECK(fingered.front.bottom_mm == doctest::Approx(fingered.left.bottom_mm));
    CHECK(fingered.back.left_mm == doctest::Approx(fingered.left.left_mm));
    CHECK(fingered.back.top_mm == doctest::Approx(fingered.left.top_mm));
    const Boards plain = boards_in(order_of_assembly({}));
    for (const Box& board : {plain.front, plain.back}) {
        CHECK(board.left_mm > plain.left.left_mm + 1);
        CHECK(board.left_mm < plain.left.right_mm - 1);
    }
    CHECK(plain.front.bottom_mm > plain.left.bottom_mm + 1);
    CHECK(plain.back.top_mm < plain.left.top_mm - 1);
}

TEST_CASE("glue lies round as much of a board's end as stands in the side") {
    for (const bool fingers : {true, false}) {
        const Drawing drawing = order_of_assembly(fingers ? view_job::fingered({}) : view_job::Wanted{});
        const Boards boards = boards_in(drawing);
        const double thick = boards.left.right_mm - boards.left.left_mm;
        const auto glue = shapes_of::lines(drawing, Stroke::glue);
        CHECK(glue.size() == 4);
        for (const Line& line : glue)
            CHECK(std::abs(line.points[0].x_mm - line.points[1].x_mm) ==
                  doctest::Approx(fingers ? thick : thick / 2));
    }
}
