#include "draw/board_marks.h"

#include <array>

namespace kw::draw {
namespace {

constexpr int pieces_per_curve = 9;

// One high, its tail at the origin: up the right side, over the top, and down through the middle again.
constexpr std::array<Point, 10> loop{Point{-0.34, 0.05}, {-0.05, 0.16}, {0.32, 0.62},  {0.22, 0.90},
                                     {0.14, 1.08},       {-0.14, 1.02}, {-0.13, 0.74}, {-0.12, 0.48},
                                     {-0.02, 0.24},      {0, 0}};
constexpr std::array<Point, 3> caret{Point{-0.36, 0.62}, {0, 0}, {0.36, 0.62}};

Point placed(const MarkPlace& place, Point p, bool mirrored = false) {
    const double side = mirrored ? -1 : 1;
    const Point up = place.in_mm, right{side * up.y_mm, -side * up.x_mm};
    return {place.at.x_mm + p.x_mm * right.x_mm + p.y_mm * up.x_mm,
            place.at.y_mm + p.x_mm * right.y_mm + p.y_mm * up.y_mm};
}

double cubic(double a, double b, double c, double d, double t) {
    const double s = 1 - t;
    return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}

std::vector<Point> loop_at(const MarkPlace& place, bool mirrored) {
    std::vector<Point> points{placed(place, loop.front(), mirrored)};
    for (std::size_t first = 0; first + 3 < loop.size(); first += 3)
        for (int i = 1; i <= pieces_per_curve; ++i) {
            const double t = static_cast<double>(i) / pieces_per_curve;
            const Point &a = loop[first], &b = loop[first + 1], &c = loop[first + 2], &d = loop[first + 3];
            points.push_back(placed(
                place, {cubic(a.x_mm, b.x_mm, c.x_mm, d.x_mm, t), cubic(a.y_mm, b.y_mm, c.y_mm, d.y_mm, t)},
                mirrored));
        }
    return points;
}

// Bare ground round the pencil, so that no grain is taken for a part of it.
void add_pencil(Drawing& drawing, const std::vector<Point>& points, Stroke stroke) {
    drawing.shapes.push_back(Line{points, Stroke::halo});
    drawing.shapes.push_back(Line{points, stroke});
}

}  // namespace

void add_face_mark(Drawing& drawing, const MarkPlace& place, bool underneath) {
    add_pencil(drawing, loop_at(place, underneath != place.in_mirror),
               underneath ? Stroke::pencil_beneath : Stroke::pencil);
}

void add_edge_mark(Drawing& drawing, const MarkPlace& place) {
    std::vector<Point> points;
    for (const Point& p : caret) points.push_back(placed(place, p));
    add_pencil(drawing, points, Stroke::pencil);
}

}  // namespace kw::draw
