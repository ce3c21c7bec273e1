#include "draw/wood.h"

#include <algorithm>
#include <cmath>

namespace kw::draw {
namespace {

constexpr double same_mm = 1e-6;
constexpr double zigzag_share = 0.06;  // of the broken edge, either way of its middle
constexpr double zigzag_most_mm = 2.5;

bool on(const std::optional<double>& edge_mm, double a_mm, double b_mm) {
    return edge_mm && std::abs(a_mm - *edge_mm) < same_mm && std::abs(b_mm - *edge_mm) < same_mm;
}

bool is_broken(const Breaks& breaks, Point a, Point b) {
    return on(breaks.left_mm, a.x_mm, b.x_mm) || on(breaks.right_mm, a.x_mm, b.x_mm) ||
           on(breaks.bottom_mm, a.y_mm, b.y_mm) || on(breaks.top_mm, a.y_mm, b.y_mm);
}

// The corners of a break line from a to b, both ends left out: a Z in its middle.
std::vector<Point> zigzag(Point a, Point b) {
    const double length = std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm);
    const double half = std::min(length * zigzag_share, zigzag_most_mm);
    const Point along{(b.x_mm - a.x_mm) / length, (b.y_mm - a.y_mm) / length};
    const Point middle{(a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2};
    const auto at = [&](double forth, double aside) {
        return Point{middle.x_mm + along.x_mm * forth + along.y_mm * aside,
                     middle.y_mm + along.y_mm * forth - along.x_mm * aside};
    };
    return {at(-half, 0), at(-half / 3, half), at(half / 3, -half), at(half, 0)};
}

// A ring with its broken edges made ragged, and its edges apart in firm and broken runs.
struct Edged {
    Ring ring;
    std::vector<Line> lines;
};

void add_edge(std::vector<Line>& lines, const std::vector<Point>& points, Stroke stroke) {
    if (!lines.empty() && lines.back().stroke == stroke && lines.back().points.back() == points.front())
        lines.back().points.insert(lines.back().points.end(), points.begin() + 1, points.end());
    else lines.push_back({points, stroke});
}

Edged edged(const Ring& ring, const Breaks& breaks) {
    Edged result;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i], b = ring[(i + 1) % ring.size()];
        std::vector<Point> edge{a, b};
        const bool broken = is_broken(breaks, a, b);
        if (broken) {
            const auto corners = zigzag(a, b);
            edge.insert(edge.begin() + 1, corners.begin(), corners.end());
        }
        result.ring.insert(result.ring.end(), edge.begin(), edge.end() - 1);
        add_edge(result.lines, edge, broken ? Stroke::thin : Stroke::outline);
    }
    return result;
}

}  // namespace

Material wood_material(StockKind kind, Grain grain) {
    switch (kind) {
        case StockKind::plywood: return Material::plywood;
        case StockKind::solid: return grain == Grain::along ? Material::long_grain : Material::end_grain;
        case StockKind::panel: break;
    }
    return Material::end_grain;
}

Rect rect_of(const Box& box) {
    return {Length::nearest_mm(box.left_mm), Length::nearest_mm(box.bottom_mm),
            Length::nearest_mm(box.right_mm), Length::nearest_mm(box.top_mm)};
}

Placing shifted(double x_mm, double y_mm) {
    return [=](const kw::Point& p) { return Point{p.x.mm() + x_mm, p.y.mm() + y_mm}; };
}

std::vector<Ring> rings_of(const Region& region, const Placing& place) {
    std::vector<Ring> rings;
    for (const kw::Ring& ring : region) {
        Ring placed;
        for (const kw::Point& p : ring) placed.push_back(place(p));
        rings.push_back(std::move(placed));
    }
    return rings;
}

void add_wood(Drawing& drawing, const std::vector<Ring>& rings, const WoodLook& look, const Breaks& breaks) {
    Fill fill{{}, look.material, look.mirrored, look.upright, false};
    std::vector<Line> lines;
    for (const Ring& ring : rings) {
        Edged edges = edged(ring, breaks);
        fill.rings.push_back(std::move(edges.ring));
        lines.insert(lines.end(), edges.lines.begin(), edges.lines.end());
    }
    drawing.shapes.push_back(std::move(fill));
    for (Line& line : lines) drawing.shapes.push_back(std::move(line));
}

}  // namespace kw::draw
