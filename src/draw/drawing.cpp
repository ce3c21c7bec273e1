#include "draw/drawing.h"

#include <algorithm>
#include <cmath>

namespace kw::draw {
namespace {

void grow(std::optional<Box>& box, Point p) {
    if (!box) {
        box = Box{p.x_mm, p.y_mm, p.x_mm, p.y_mm};
        return;
    }
    box->left_mm = std::min(box->left_mm, p.x_mm);
    box->right_mm = std::max(box->right_mm, p.x_mm);
    box->bottom_mm = std::min(box->bottom_mm, p.y_mm);
    box->top_mm = std::max(box->top_mm, p.y_mm);
}

struct Grow {
    std::optional<Box>& box;
    void operator()(const Fill& fill) const {
        for (const Ring& ring : fill.rings) {
            for (const Point& p : ring) grow(box, p);
        }
    }
    void operator()(const Line& line) const {
        for (const Point& p : line.points) grow(box, p);
    }
    void operator()(const Dimension& dimension) const {
        grow(box, dimension.from);
        grow(box, dimension.to);
        if (dimension.change) grow(box, dimension.change->stood);
    }
    void operator()(const Label& label) const {
        grow(box, label.at);
        if (label.points_at) grow(box, *label.points_at);
    }
};

struct Mirror {
    double axis_mm;

    void operator()(Point& p) const { p.x_mm = 2 * axis_mm - p.x_mm; }
    void operator()(Fill& fill) const {
        for (Ring& ring : fill.rings) {
            for (Point& p : ring) (*this)(p);
        }
        fill.mirrored = !fill.mirrored;
    }
    void operator()(Line& line) const {
        for (Point& p : line.points) (*this)(p);
    }
    void operator()(Dimension& dimension) const {
        (*this)(dimension.from);
        (*this)(dimension.to);
        if (dimension.change) (*this)(dimension.change->stood);
        if (dimension.side != Side::left && dimension.side != Side::right) return;
        dimension.side = dimension.side == Side::left ? Side::right : Side::left;
        dimension.clear_of_mm = 2 * axis_mm - dimension.clear_of_mm;
    }
    void operator()(Label& label) const {
        (*this)(label.at);
        if (label.points_at) (*this)(*label.points_at);
        if (label.anchor == Anchor::left) label.anchor = Anchor::right;
        else if (label.anchor == Anchor::right) label.anchor = Anchor::left;
    }
};

}  // namespace

Box bounds(const Drawing& drawing) {
    if (drawing.frame) return *drawing.frame;
    std::optional<Box> box;
    for (const Shape& shape : drawing.shapes) std::visit(Grow{box}, shape);
    return box.value_or(Box{});
}

Ring rectangle(const Box& box) {
    return {{box.left_mm, box.bottom_mm},
            {box.right_mm, box.bottom_mm},
            {box.right_mm, box.top_mm},
            {box.left_mm, box.top_mm}};
}

Ring circle(Point centre, double radius_mm, int corners) {
    Ring ring;
    const double step_rad = 2 * std::acos(-1.0) / corners;
    for (int i = 0; i < corners; ++i) {
        ring.push_back({centre.x_mm + radius_mm * std::cos(i * step_rad),
                        centre.y_mm + radius_mm * std::sin(i * step_rad)});
    }
    return ring;
}

Drawing mirrored_about_x(const Drawing& drawing, double axis_mm) {
    Drawing result = drawing;
    for (Shape& shape : result.shapes) std::visit(Mirror{axis_mm}, shape);
    for (std::optional<Box>* box : {&result.frame, &result.close_up}) {
        if (!*box) continue;
        const Box was = **box;
        (*box)->left_mm = 2 * axis_mm - was.right_mm;
        (*box)->right_mm = 2 * axis_mm - was.left_mm;
    }
    return result;
}

}  // namespace kw::draw
