// The pictures of a drawer in the clamps and of its face: what is read stands there, and the arrow at the corner to push.
#include <doctest/doctest.h>

#include "draw/assembly_view.h"

namespace kw::draw {
namespace {

Length mm(double value) { return Length::nearest_mm(value); }

AssemblyResult box(const Assembled& read) {
    AssemblyResult result;
    result.box = sides_of({mm(500), mm(100), mm(400)});
    result.diagonal = mm(640.3124);
    if (read.from_front_left && read.from_front_right)
        result.square = *squareness(result.box, *read.from_front_left, *read.from_front_right);
    return result;
}

std::vector<std::string> words_in_picture(const Drawing& drawing) {
    std::vector<std::string> words;
    for (const Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<Label>(&shape)) words.push_back(label->text);
    return words;
}

const Line* arrow_in(const Drawing& drawing) {
    for (const Shape& shape : drawing.shapes)
        if (const auto* line = std::get_if<Line>(&shape); line && line->stroke == Stroke::arrow) return line;
    return nullptr;
}

Ring face_ring(const Drawing& drawing) {
    for (const Shape& shape : drawing.shapes)
        if (const auto* fill = std::get_if<Fill>(&shape)) return fill->rings.front();
    return {};
}

}  // namespace

TEST_CASE("the arrow stands at the corner that is to be pushed, and points to the one opposite") {
    const Locale locale(Graduation::mm_0_1);
    const Assembled leans_right{mm(643.0), mm(637.6), {}, {}};
    const Drawing right = box_in_clamps(box(leans_right), leans_right, locale);
    const Line* arrow = arrow_in(right);
    REQUIRE(arrow);
    CHECK(arrow->points.front().x_mm > 500);  // beyond the right side
    CHECK(arrow->points.front().y_mm > 400);  // and the back
    CHECK(arrow->points.back().x_mm < arrow->points.front().x_mm);
    CHECK(arrow->points.back().y_mm < arrow->points.front().y_mm);
    CHECK(words_in_picture(right) ==
          std::vector<std::string>{"643.0 mm", "637.6 mm", "front", "back", "push"});
    const Assembled leans_left{mm(637.6), mm(643.0), {}, {}};
    const Drawing left = box_in_clamps(box(leans_left), leans_left, locale);
    CHECK(arrow_in(left)->points.front().x_mm < 0);
    CHECK(arrow_in(left)->points.back().x_mm > arrow_in(left)->points.front().x_mm);
}

TEST_CASE("a square box has no arrow, and one that was not measured shows what its diagonals should be") {
    const Locale locale(Graduation::mm_0_1);
    const Assembled square{mm(640.3), mm(640.3), {}, {}};
    CHECK_FALSE(arrow_in(box_in_clamps(box(square), square, locale)));
    const Drawing unread = box_in_clamps(box({}), {}, locale);
    CHECK_FALSE(arrow_in(unread));
    CHECK(words_in_picture(unread) == std::vector<std::string>{"640.3 mm", "640.3 mm", "front", "back"});
}

TEST_CASE(
    "a face is drawn off to the side on which its gap is narrow, and lower where the gap above is wide") {
    const Locale locale(Graduation::mm_0_1);
    const HungFace face{mm(300), mm(160), mm(2), mm(2), mm(2), mm(2)};
    const auto middle = [](const Ring& ring) {
        Point sum;
        for (const Point& point : ring) {
            sum.x_mm += point.x_mm / double(ring.size());
            sum.y_mm += point.y_mm / double(ring.size());
        }
        return sum;
    };
    const Point hung = middle(face_ring(face_in_place(face, {}, locale)));
    Gaps gaps;
    gaps.at(GapPlace::left_top) = gaps.at(GapPlace::left_bottom) = mm(1);
    gaps.at(GapPlace::top_left) = mm(2);
    gaps.at(GapPlace::top_right) = mm(4);
    const Ring ring = face_ring(face_in_place(face, gaps, locale));
    CHECK(middle(ring).x_mm < hung.x_mm);
    CHECK(middle(ring).y_mm < hung.y_mm);
    CHECK(ring.at(1).y_mm < ring.at(0).y_mm);  // the right end hangs low
    CHECK(words_in_picture(face_in_place(face, gaps, locale)) ==
          std::vector<std::string>{"1.0 mm", "1.0 mm", "2.0 mm", "4.0 mm"});
}

}  // namespace kw::draw
