#include "draw/maker_triangle.h"

#include "length/text.h"

namespace kw::draw {
namespace {

// Along the boards, from the foot of the triangle to its tip; and across a pair, each board 1 thick.
constexpr double pair_foot = 0.3, pair_tip = 1.75, pair_left = 0.38, pair_right = 0.62;
constexpr double side_foot = 0.40, side_tip = 0.60, side_out = 0.25;

// Where a leg passes from the front to the back.
constexpr double leg_at_seam = pair_left + (0.5 - pair_left) * (1 - pair_foot) / (pair_tip - pair_foot);

}  // namespace

std::vector<Point> triangle_on(Role role) {
    switch (role) {
        case Role::front:
            return {{leg_at_seam, 1}, {pair_left, pair_foot}, {pair_right, pair_foot}, {1 - leg_at_seam, 1}};
        case Role::back: return {{leg_at_seam, 0}, {0.5, pair_tip - 1}, {1 - leg_at_seam, 0}};
        case Role::side_left: return {{1, side_foot}, {side_out, side_foot}, {1, side_tip}};
        case Role::side_right: return {{0, side_foot}, {1 - side_out, side_foot}, {0, side_tip}};
        case Role::bottom:
        case Role::face: break;
    }
    return {};
}

Drawing maker_triangles(const Locale& locale) {
    constexpr double length = 100, thick = 14, apart = 66, out = 3;
    const Words& words = locale.words();
    Drawing drawing{words("draw.triangle"), {}};
    const auto board = [&](Role role, Point at, bool upright, Point word, Anchor anchor) {
        const double wide = upright ? thick : length, high = upright ? length : thick;
        Fill fill{{rectangle({at.x_mm, at.y_mm, at.x_mm + wide, at.y_mm + high})}, Material::ground};
        drawing.shapes.push_back(std::move(fill));
        std::vector<Point> points;
        for (const Point& p : triangle_on(role))
            points.push_back({at.x_mm + p.x_mm * wide, at.y_mm + p.y_mm * high});
        drawing.shapes.push_back(Line{points, Stroke::pencil});
        drawing.shapes.push_back(
            Label{word, words.name("role.", name_of(role)), anchor, Emphasis::plain, {}, false, true});
    };
    const double middle = length / 2, sides = length + apart + thick;
    board(Role::front, {0, middle - thick}, false, {middle, middle - thick - out}, Anchor::top);
    board(Role::back, {0, middle}, false, {middle, middle + thick + out}, Anchor::bottom);
    board(Role::side_left, {sides, 0}, true, {sides - out, middle}, Anchor::right);
    board(Role::side_right, {sides + thick, 0}, true, {sides + 2 * thick + out, middle}, Anchor::left);
    return drawing;
}

}  // namespace kw::draw
