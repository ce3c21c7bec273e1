#include "draw/turned.h"

#include <algorithm>

namespace kw::draw {
namespace {

Side turned(Side side) {
    switch (side) {
        case Side::above: return Side::left;
        case Side::left: return Side::below;
        case Side::below: return Side::right;
        case Side::right: break;
    }
    return Side::above;
}

// The text keeps standing on the same side of its point.
Anchor turned(Anchor anchor) {
    switch (anchor) {
        case Anchor::centre: return Anchor::centre;
        case Anchor::bottom: return Anchor::right;
        case Anchor::right: return Anchor::top;
        case Anchor::top: return Anchor::left;
        case Anchor::left: break;
    }
    return Anchor::bottom;
}

Point turned(Point p) { return {-p.y_mm, p.x_mm}; }

struct Turn {
    void operator()(Fill& fill) const {
        for (Ring& ring : fill.rings)
            for (Point& p : ring) p = turned(p);
        fill.upright = !fill.upright;
    }
    void operator()(Line& line) const {
        for (Point& p : line.points) p = turned(p);
    }
    void operator()(Dimension& dimension) const {
        const bool along_x = dimension.side == Side::above || dimension.side == Side::below;
        dimension.from = turned(dimension.from);
        dimension.to = turned(dimension.to);
        if (dimension.change) dimension.change->stood = turned(dimension.change->stood);
        dimension.side = turned(dimension.side);
        if (along_x) dimension.clear_of_mm = -dimension.clear_of_mm;
    }
    void operator()(Label& label) const {
        label.at = turned(label.at);
        label.anchor = turned(label.anchor);
        if (label.points_at) label.points_at = turned(*label.points_at);
    }
};

struct Shift {
    double x_mm;
    double y_mm;

    void move(Point& p) const { p = {p.x_mm + x_mm, p.y_mm + y_mm}; }
    void operator()(Fill& fill) const {
        for (Ring& ring : fill.rings)
            for (Point& p : ring) move(p);
    }
    void operator()(Line& line) const {
        for (Point& p : line.points) move(p);
    }
    void operator()(Dimension& dimension) const {
        move(dimension.from);
        move(dimension.to);
        if (dimension.change) move(dimension.change->stood);
        const bool along_x = dimension.side == Side::above || dimension.side == Side::below;
        dimension.clear_of_mm += along_x ? y_mm : x_mm;
    }
    void operator()(Label& label) const {
        move(label.at);
        if (label.points_at) move(*label.points_at);
    }
};

}  // namespace

Drawing turned_left(Drawing drawing) {
    for (Shape& shape : drawing.shapes) std::visit(Turn{}, shape);
    for (std::optional<Box>* seen : {&drawing.frame, &drawing.close_up}) {
        if (!*seen) continue;
        const Box box = **seen;
        *seen = Box{-box.top_mm, box.left_mm, -box.bottom_mm, box.right_mm};
    }
    return drawing;
}

Drawing moved(Drawing drawing, double x_mm, double y_mm) {
    for (Shape& shape : drawing.shapes) std::visit(Shift{x_mm, y_mm}, shape);
    for (std::optional<Box>* seen : {&drawing.frame, &drawing.close_up}) {
        if (!*seen) continue;
        Box& box = **seen;
        box = {box.left_mm + x_mm, box.bottom_mm + y_mm, box.right_mm + x_mm, box.top_mm + y_mm};
    }
    return drawing;
}

}  // namespace kw::draw
