// The triangle over two boards that lie together: what stands on one fits what stands on the other, and on no other board.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "draw/maker_triangle.h"

namespace kw::draw {
namespace {

constexpr double near_enough = 1e-12;

// Twice the area to the left of the path; its corners are told apart by turns.
double turn(Point a, Point b, Point c) {
    return (b.x_mm - a.x_mm) * (c.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (c.x_mm - a.x_mm);
}

}  // namespace

TEST_CASE("the front's lines go on on the back, straight, and meet over its middle") {
    const auto front = triangle_on(Role::front), back = triangle_on(Role::back);
    REQUIRE(front.size() == 4);
    REQUIRE(back.size() == 3);
    // At the seam, where both inside faces touch.
    for (const auto& [a, b] :
         {std::pair{front.front(), back.front()}, std::pair{front.back(), back.back()}}) {
        CHECK(a.y_mm == 1);
        CHECK(b.y_mm == 0);
        CHECK(a.x_mm == doctest::Approx(b.x_mm).epsilon(near_enough));
    }
    const Point tip{back[1].x_mm, back[1].y_mm + 1};
    CHECK(std::abs(turn(front[1], front[0], tip)) < near_enough);
    CHECK(std::abs(turn(front[2], front[3], tip)) < near_enough);
    CHECK(tip.y_mm > front[1].y_mm);  // to the rear
}

TEST_CASE("the sides' halves mirror each other, and their tip is to the rear") {
    const auto left = triangle_on(Role::side_left), right = triangle_on(Role::side_right);
    REQUIRE(left.size() == 3);
    REQUIRE(right.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(right[i].x_mm == 1 - left[i].x_mm);
        CHECK(right[i].y_mm == left[i].y_mm);
    }
    CHECK(left[2].x_mm == 1);  // at the seam
    CHECK(left[2].y_mm > left[1].y_mm);
    CHECK(triangle_on(Role::bottom).empty());
    CHECK(triangle_on(Role::face).empty());
}

TEST_CASE("no board's mark is its own mirror image front to rear, nor another board's") {
    const Role roles[] = {Role::front, Role::back, Role::side_left, Role::side_right};
    for (const Role a : roles)
        for (const Role b : roles) CHECK((triangle_on(a) == triangle_on(b)) == (a == b));
    for (const Role role : roles) {
        auto turned = triangle_on(role);
        for (Point& p : turned) p.y_mm = 1 - p.y_mm;
        CHECK(turned != triangle_on(role));
    }
}

}  // namespace kw::draw
