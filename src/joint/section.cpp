#include "joint/section.h"

#include <algorithm>

#include <polyclipping/clipper.hpp>

namespace kw {
namespace {

using ClipperLib::Paths;

Paths to_paths(const Region& region) {
    Paths paths;
    for (const Ring& ring : region) {
        ClipperLib::Path path;
        for (const Point& p : ring) path.emplace_back(p.x.ticks(), p.y.ticks());
        paths.push_back(std::move(path));
    }
    return paths;
}

Region to_region(const Paths& paths) {
    Region region;
    for (const auto& path : paths) {
        Ring ring;
        for (const auto& p : path) ring.push_back({Length::from_ticks(p.X), Length::from_ticks(p.Y)});
        region.push_back(std::move(ring));
    }
    return region;
}

Region combine(ClipperLib::ClipType type, const Region& subject, const Region& clip) {
    ClipperLib::Clipper clipper;
    clipper.AddPaths(to_paths(subject), ClipperLib::ptSubject, true);
    clipper.AddPaths(to_paths(clip), ClipperLib::ptClip, true);
    Paths result;
    // Cuts may lie on top of one another (passes overlap), so the clip is filled wherever it winds at all.
    clipper.Execute(type, result, ClipperLib::pftEvenOdd, ClipperLib::pftNonZero);
    return to_region(result);
}

// Crossings of the line with the region's edges, sorted: with even-odd filling, wood lies between the first and
// the second, the third and the fourth, and so on. A crossing is counted on the half-open edge, so that a
// corner on the line counts once.
template <class Along, class Across>
std::vector<Span> solid_along(const Region& region, Length at, Along along, Across across) {
    std::vector<Length> hits;
    for (const Ring& ring : region) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point& a = ring[i];
            const Point& b = ring[(i + 1) % ring.size()];
            if ((across(a) <= at) == (across(b) <= at)) continue;
            const double part = (at - across(a)).mm() / (across(b) - across(a)).mm();
            hits.push_back(along(a) == along(b)
                               ? along(a)
                               : along(a) + Length::nearest_mm(part * (along(b) - along(a)).mm()));
        }
    }
    std::sort(hits.begin(), hits.end());
    std::vector<Span> spans;
    for (std::size_t i = 0; i + 1 < hits.size(); i += 2) spans.emplace_back(hits[i], hits[i + 1]);
    return spans;
}

Length x_of(const Point& p) { return p.x; }
Length y_of(const Point& p) { return p.y; }

}  // namespace

Region to_region(const Rect& r) {
    return {{{r.left, r.bottom}, {r.right, r.bottom}, {r.right, r.top}, {r.left, r.top}}};
}

Region subtract(const Region& from, const std::vector<Rect>& cuts) {
    Region removed;
    for (const Rect& cut : cuts) removed.push_back(to_region(cut).front());
    return combine(ClipperLib::ctDifference, from, removed);
}

Region subtract(const Region& from, const Region& removed) {
    return combine(ClipperLib::ctDifference, from, removed);
}

Region intersect(const Region& a, const Region& b) { return combine(ClipperLib::ctIntersection, a, b); }
Region unite(const Region& a, const Region& b) { return combine(ClipperLib::ctUnion, a, b); }

bool is_empty(const Region& region) { return area_mm2(region) == 0.0; }

double area_mm2(const Region& region) {
    double ticks2 = 0.0;
    for (const auto& path : to_paths(region)) ticks2 += ClipperLib::Area(path);
    const double per_mm = static_cast<double>(Length::ticks_per_mm);
    return std::abs(ticks2) / (per_mm * per_mm);
}

std::optional<Rect> bounds(const Region& region) {
    std::optional<Rect> box;
    for (const Ring& ring : region) {
        for (const Point& p : ring) {
            if (!box) box = Rect{p.x, p.y, p.x, p.y};
            box = Rect{min(box->left, p.x), min(box->bottom, p.y), max(box->right, p.x), max(box->top, p.y)};
        }
    }
    return box;
}

Region moved(const Region& region, Point shift) {
    Region out = region;
    for (Ring& ring : out)
        for (Point& p : ring) p = {p.x + shift.x, p.y + shift.y};
    return out;
}

Region turned_to_meet(const Region& insert, Point origin) {
    Region out = insert;
    for (Ring& ring : out)
        for (Point& p : ring) p = {origin.x + p.y, origin.y - p.x};
    return out;
}

std::vector<Span> solid_along_x(const Region& region, Length y) { return solid_along(region, y, x_of, y_of); }

std::vector<Span> solid_along_y(const Region& region, Length x) { return solid_along(region, x, y_of, x_of); }

}  // namespace kw
