// Facts of the trade about boxes and parts. Common practice, no source, unless said otherwise.
#include <doctest/doctest.h>

#include <cmath>

#include "drawer/parts.h"

using namespace kw;

namespace {

Length in(std::int64_t n, std::int64_t d = 1) { return Length::inches(n, d); }

const PartSize& part(const std::vector<PartSize>& parts, Role role) {
    for (const PartSize& size : parts)
        if (size.role == role) return size;
    FAIL("no such part");
    return parts.front();
}

// Half-inch stock, quarter stack, no clearances: the joints of facts.cpp in tests/joint.
DrawerJoints quarter_joints() { return {in(1, 4), in(1, 4), in(1), Length{}, in(3, 8), in(1, 4), in(1, 4)}; }

}  // namespace

TEST_CASE("an 11 in opening with slides that take 15/16 in in all gives a box of 10 1/16 in") {
    Slide slide = usual_slide(SlideKind::side_mount);
    slide.side = in(15, 32);
    const auto box = size_box({in(11), in(5), in(27, 2)}, slide, in(1, 2), {});
    REQUIRE(box);
    CHECK(box->width == in(161, 16));
}

TEST_CASE("a 5 in opening gives a 4 in side, with 1/4 in below and 3/4 in above") {
    const auto box = size_box({in(11), in(5), in(27, 2)}, usual_slide(SlideKind::side_mount), in(1, 2), {});
    REQUIRE(box);
    CHECK(box->height == in(4));
}

TEST_CASE("13 1/2 in of depth less 1/4 in gives 13 1/4 in") {
    const auto box = size_box({in(11), in(5), in(27, 2)}, usual_slide(SlideKind::side_mount), in(1, 2), {});
    REQUIRE(box);
    CHECK(box->depth == in(53, 4));
}

TEST_CASE("an inset face takes its thickness off the depth") {
    const auto box =
        size_box({in(11), in(5), in(27, 2)}, usual_slide(SlideKind::side_mount), in(1, 2), in(3, 4));
    REQUIRE(box);
    CHECK(box->depth == in(50, 4));
}

TEST_CASE("an undermount's inside width is the opening less 42 mm, whatever the sides' thickness") {
    // Published by slide makers; see also the outside figures by side thickness: 1/2 in sides, -5/8 to -21/32 in.
    for (const Length side : {in(1, 2), in(5, 8), Length::millimetres(15)}) {
        const auto box = size_box({in(20), in(6), in(22)}, usual_slide(SlideKind::undermount), side, {});
        REQUIRE(box);
        CHECK(box->width - 2 * side == in(20) - Length::millimetres(42));
    }
    const auto half = size_box({in(20), in(6), in(22)}, usual_slide(SlideKind::undermount), in(1, 2), {});
    const Length off = in(20) - half->width;
    CHECK(off >= in(5, 8));
    CHECK(off <= in(21, 32));
}

TEST_CASE("the longest slide that fits is taken, and one longer than the case is refused") {
    Slide slide = usual_slide(SlideKind::side_mount);
    slide.lengths = {in(12), in(16), in(14)};
    CHECK(size_box({in(11), in(5), in(15)}, slide, in(1, 2), {})->depth == in(14));
    slide.lengths = {in(16), in(18)};
    const auto box = size_box({in(11), in(5), in(15)}, slide, in(1, 2), {});
    REQUIRE_FALSE(box);
    CHECK(box.error().field == "lengths");
    CHECK(box.error().why.text(Graduation::in_64) ==
          "the slide is longer than the case: the shortest on the list is 16 in and there is room for 14 3/4 "
          "in");
}

TEST_CASE(
    "a 10 1/16 in box of half-inch stock has a front and a back of 9 9/16 in, the rule of thumb within 1/16 "
    "in") {
    const auto parts = size_parts({in(161, 16), in(4), in(53, 4)}, {in(1, 2), in(1, 2), in(1, 2), in(1, 4)},
                                  quarter_joints(), {BottomStyle::slide_in, in(1, 32), {}});
    CHECK(part(parts, Role::front).length == in(153, 16));
    CHECK(part(parts, Role::back).length == in(153, 16));
    CHECK(abs(part(parts, Role::front).length - (in(11) - in(3, 2))) <= in(1, 16));
    CHECK(part(parts, Role::bottom).length == part(parts, Role::front).length - in(1, 32));
    CHECK(part(parts, Role::back).width == in(4) - in(3, 8) - in(1, 4));
}

TEST_CASE("a 10 1/16 x 13 1/4 in box measures just over 16 5/8 in across its corners") {
    const double diagonal_in = std::hypot(10.0625, 13.25);
    CHECK(diagonal_in > 16.625);
    CHECK(diagonal_in < 16.645);
    const auto box =
        size_box({in(11), in(5), in(27, 2)},
                 {SlideKind::side_mount, in(15, 32), in(3, 4), in(1, 4), in(1, 4), {}, {}, {}}, in(1, 2), {});
    CHECK(std::hypot(box->width.mm(), box->depth.mm()) / 25.4 == doctest::Approx(diagonal_in));
}

TEST_CASE("a captured bottom enters the back's groove as well, and the back keeps its whole height") {
    const auto parts = size_parts({in(10), in(4), in(14)}, {in(1, 2), in(1, 2), in(1, 2), in(1, 4)},
                                  quarter_joints(), {BottomStyle::captured, in(1, 32), {}});
    CHECK(part(parts, Role::back).width == in(4));
    // From 1/4 in inside the front to 1/4 in inside the back, less the slack.
    CHECK(part(parts, Role::bottom).width == in(14) - in(1, 4) - in(1) - in(1, 4) - in(1, 32));
}

TEST_CASE("an overlay face is the opening and both overlays; an inset face is the opening less both gaps") {
    const Opening opening{in(11), in(5), in(14)};
    const auto overlay =
        size_face(opening, {FaceStyle::overlay, in(3, 8), in(3, 8), in(1, 4), in(1, 2), in(3, 4)});
    CHECK(overlay->length == in(47, 4));
    CHECK(overlay->width == in(23, 4));
    const auto inset =
        size_face(opening, {FaceStyle::inset, in(1, 8), in(1, 8), in(1, 8), in(1, 8), in(3, 4)});
    CHECK(inset->length == in(43, 4));
}

TEST_CASE("an opening that leaves no box is refused in German with a decimal comma") {
    const auto box = size_box({in(2), in(5), in(15)}, usual_slide(SlideKind::side_mount), in(1, 2), {});
    REQUIRE_FALSE(box);
    CHECK(box.error().why.text({Graduation::mm_0_1, Language::german}) ==
          "eine Öffnung von 50,8 mm lässt keinen Kasten übrig: 50,8 mm gehen für die Luft ab");
}
