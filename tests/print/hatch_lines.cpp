// Hatches cut to what they fill.

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "print/marks.h"

using namespace kw::print;

namespace {

double length_of(const std::vector<std::vector<Spot>>& lines) {
    double sum = 0;
    for (const auto& line : lines)
        sum += std::hypot(line[1].x_mm - line[0].x_mm, line[1].y_mm - line[0].y_mm);
    return sum;
}

kw::draw::Hatch hatch_at(double angle_deg, double spacing_px) {
    kw::draw::Hatch hatch;
    hatch.angle_deg = angle_deg;
    hatch.spacing_px = spacing_px;
    return hatch;
}

std::vector<Spot> regular_ring(double radius, int corners, double turn = 0) {
    std::vector<Spot> ring;
    for (int i = 0; i < corners; ++i) {
        const double a = turn + 2 * std::numbers::pi * i / corners;
        ring.push_back({radius * std::cos(a), radius * std::sin(a)});
    }
    return ring;
}

}  // namespace

// Cavalieri: an area is its cross-sections' length summed, as the spacing becomes small. A textbook fact.
TEST_CASE("the lines' length times their spacing is the area, less its hole, at any angle") {
    const double outer = 90, inner = 40, spacing = 0.25;
    const auto area = [](double r, int n) { return 0.5 * n * r * r * std::sin(2 * std::numbers::pi / n); };
    for (const double angle : {0.0, 45.0, -45.0, 90.0, 13.0, 160.0}) {
        CAPTURE(angle);
        const auto lines =
            hatch_lines({regular_ring(outer, 7), regular_ring(inner, 5, 0.4)}, hatch_at(angle, spacing));
        CHECK(length_of(lines) * spacing == doctest::Approx(area(outer, 7) - area(inner, 5)).epsilon(0.002));
    }
}

TEST_CASE("lines run at the hatch's angle, counter-clockwise from x as it is seen") {
    for (const auto& line : hatch_lines({regular_ring(50, 12)}, hatch_at(45, 5))) {
        const double dx = line[1].x_mm - line[0].x_mm, dy = line[1].y_mm - line[0].y_mm;
        CHECK(dy == doctest::Approx(-dx));  // y is down
    }
}

TEST_CASE("of a dashed hatch the share is inked that dash and space say, its round ends included") {
    kw::draw::Hatch hatch = hatch_at(0, 0.5);
    hatch.dash_px = 6;
    hatch.space_px = 4;
    hatch.stagger_px = 3.7;
    hatch.width_px = 1;
    const auto lines = hatch_lines({{{0, 0}, {200, 0}, {200, 200}, {0, 200}}}, hatch);
    CHECK(length_of(lines) * 0.5 / (200 * 200) == doctest::Approx((6 - 1) / 10.0).epsilon(0.02));
}
