#pragma once
// The marks that a maker has pencilled, in drawings.

#include "draw/shapes_of.h"

namespace pencil_in {

// A point of a mark that lies on the face or the edge: the loop's tail is its last, the caret's its middle one.
inline bool is_caret(const kw::draw::Line& line) { return line.points.size() == 3; }

inline std::vector<kw::draw::Line> loops(const kw::draw::Drawing& drawing) {
    std::vector<kw::draw::Line> found;
    for (const kw::draw::Stroke stroke : {kw::draw::Stroke::pencil, kw::draw::Stroke::pencil_beneath})
        for (const kw::draw::Line& line : shapes_of::lines(drawing, stroke))
            if (!is_caret(line)) found.push_back(line);
    return found;
}

// Which way the loop winds: more than 0 to the left. Turned it stays so; seen through the board, or in a mirror, it is the other.
inline double winding(const kw::draw::Line& loop) {
    double area = 0;
    for (std::size_t i = 0; i < loop.points.size(); ++i) {
        const kw::draw::Point &a = loop.points[i], &b = loop.points[(i + 1) % loop.points.size()];
        area += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
    }
    return area;
}

}  // namespace pencil_in
