// Looking at a picture: what lies under the pointer or a finger stays there. Checked on the views that come of it.

#include "window/look.h"

#include <doctest/doctest.h>

#include <random>

using namespace kw::window;
using kw::draw::Box;
using kw::draw::Pixel;
using kw::draw::Point;
using kw::draw::View;

namespace {

constexpr double picture_width = 900, picture_height = 500, screen_ratio = 1.5;

View whole() {
    View view;
    view.px_per_mm = 7;
    view.origin = {220, 310};
    view.pixel_ratio = screen_ratio;
    return view;
}

View looked(const ViewTransform& look) {
    return seen(whole(), look, picture_width, picture_height, screen_ratio);
}

Pixel pixel_of(FromMiddle at) {
    return {picture_width / 2 + at.x_px * screen_ratio, picture_height / 2 + at.y_px * screen_ratio};
}

// What of the drawing lies there.
Point under(const ViewTransform& look, FromMiddle at) { return to_mm(looked(look), pixel_of(at)); }

bool same(Point a, Point b) { return std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) < 1e-9; }

struct RealDice {
    std::mt19937 random{7};
    double operator()(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    }
};

}  // namespace

TEST_CASE("zooming keeps in its place what it is pointed at") {
    RealDice roll;
    for (int i = 0; i < 200; ++i) {
        const ViewTransform look{roll(2, 6), roll(-300, 300), roll(-300, 300)};
        const FromMiddle at{roll(-290, 290), roll(-160, 160)};
        const ViewTransform next = zoomed_about(look, roll(0.6, 3), at);
        CHECK(same(under(look, at), under(next, at)));
    }
}

TEST_CASE("zoomed out, all of it is in its place again; zoomed in there is an end") {
    CHECK(zoomed_about({3, 40, -20}, 0.1, {100, 50}) == ViewTransform{});
    CHECK(pinched({3, 40, -20}, {{-100, 0}, {100, 0}}, {{-10, 0}, {10, 0}}) == ViewTransform{});
    CHECK(zoomed_about({50, 0, 0}, 100, {0, 0}).zoom == most_zoom);
    CHECK(looked({}) == whole());
}

TEST_CASE("two fingers that part and move take along what lies under each of them") {
    RealDice roll;
    for (int i = 0; i < 200; ++i) {
        const ViewTransform look{roll(2, 5), roll(-200, 200), roll(-200, 200)};
        const Fingers before{{roll(-100, -20), roll(-80, 80)}, {roll(20, 100), roll(-80, 80)}};
        // Parted and moved without being turned.
        const double factor = roll(0.7, 2.5), dx = roll(-60, 60), dy = roll(-60, 60);
        const auto moved = [&](FromMiddle p) {
            return FromMiddle{p.x_px * factor + dx, p.y_px * factor + dy};
        };
        const Fingers now{moved(before.first), moved(before.second)};
        const ViewTransform next = pinched(look, before, now);
        CHECK(next.zoom == doctest::Approx(look.zoom * factor));
        CHECK(same(under(look, before.first), under(next, now.first)));
        CHECK(same(under(look, before.second), under(next, now.second)));
    }
}

TEST_CASE("two fingers that only move drag the picture, and two that touch do not make it infinite") {
    const ViewTransform look{2, 10, 20};
    const ViewTransform next = pinched(look, {{-50, 0}, {50, 0}}, {{-20, 5}, {80, 5}});
    CHECK(next.zoom == doctest::Approx(2));
    CHECK(next.pan_x_px == doctest::Approx(40));
    CHECK(next.pan_y_px == doctest::Approx(25));
    CHECK(pinched(look, {{0, 0}, {0, 0}}, {{-4, 0}, {4, 0}}).zoom == doctest::Approx(2));
}

TEST_CASE("a close-up is whole, in the middle, and as large as the room allows") {
    RealDice roll;
    for (int i = 0; i < 100; ++i) {
        const double left = roll(-10, 60), bottom = roll(-10, 30);
        const Box part{left, bottom, left + roll(4, 20), bottom + roll(3, 12)};
        const View view = looked(close_up(part, whole(), picture_width, picture_height, screen_ratio));
        const Pixel a = to_pixel(view, {part.left_mm, part.top_mm}),
                    b = to_pixel(view, {part.right_mm, part.bottom_mm});
        CHECK((a.x + b.x) / 2 == doctest::Approx(picture_width / 2));
        CHECK((a.y + b.y) / 2 == doctest::Approx(picture_height / 2));
        const double share = std::max((b.x - a.x) / picture_width, (b.y - a.y) / picture_height);
        CHECK(share <= 1);
        CHECK(share >= 0.7);
    }
}

TEST_CASE("a view on its way begins and ends as it should, and its words are those of the end") {
    View from = whole(), to = whole();
    from.px_per_mm = 3;
    from.origin = {10, 20};
    from.with_spares = false;
    CHECK(between(from, to, 1) == to);
    const View begin = between(from, to, 0), half = between(from, to, 0.5);
    CHECK(begin.px_per_mm == 3);
    CHECK(begin.origin == from.origin);
    CHECK(begin.with_spares);
    CHECK(half.px_per_mm == doctest::Approx(5));
}
