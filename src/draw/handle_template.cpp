#include "draw/handle_template.h"

#include <algorithm>

namespace kw::draw {
namespace {

// Beyond the holes, and how large their crosses are.
constexpr double handle_beyond_mm = 15, handle_cross_mm = 5;

}  // namespace

Drawing handle_template(const HandleTemplate& one, const Locale& locale) {
    const Words& words = locale.words();
    const double half = one.holes == 1 ? 0.0 : 0.5 * one.centres.mm(), y = -one.below_top.mm();
    const double side = std::max(half + handle_beyond_mm, 40.0), low = y - handle_beyond_mm;
    Drawing drawing{words("draw.handle_template"), {}};
    auto& shapes = drawing.shapes;
    shapes.push_back(Line{{{-side, 0}, {side, 0}}, Stroke::outline});
    shapes.push_back(Line{{{-side, 0}, {-side, low}, {side, low}, {side, 0}}, Stroke::hidden});
    shapes.push_back(Line{{{0, 0}, {0, low}}, Stroke::centre});
    for (const double x : {-half, half}) {
        shapes.push_back(Line{{{x - handle_cross_mm, y}, {x + handle_cross_mm, y}}, Stroke::outline});
        shapes.push_back(Line{{{x, y - handle_cross_mm}, {x, y + handle_cross_mm}}, Stroke::outline});
        if (one.holes == 1) break;
    }
    if (one.holes == 2)
        shapes.push_back(
            Dimension{{-half, y}, {half, y}, Side::below, low, 0, show_with_unit(one.centres, locale)});
    shapes.push_back(
        Dimension{{side, y}, {side, 0}, Side::right, side, 0, show_with_unit(one.below_top, locale)});
    shapes.push_back(
        Label{{-0.5 * side, 0}, words("draw.upper_edge"), Anchor::bottom, Emphasis::plain, {}, false, true});
    return drawing;
}

}  // namespace kw::draw
