#include "draw/slide_template.h"

#include <algorithm>

namespace kw::draw {
namespace {

// How far the line of screws is drawn: holes are taken from the slide itself, along it.
constexpr double line_mm = 100, beyond_mm = 15, cross_mm = 5;

}  // namespace

Drawing slide_template(const SlidePlace& place, const Locale& locale) {
    const Words& words = locale.words();
    const double x = place.behind_front.mm(), y = place.above_floor.mm();
    const double right = x + line_mm, top = std::max(y + beyond_mm, 40.0);
    Drawing drawing{words("draw.slide_template"), {}};
    auto& shapes = drawing.shapes;
    shapes.push_back(Line{{{0, top}, {0, 0}, {right, 0}}, Stroke::outline});
    shapes.push_back(Line{{{right, 0}, {right, top}, {0, top}}, Stroke::hidden});
    shapes.push_back(Line{{{x - cross_mm, y}, {right, y}}, Stroke::centre});
    shapes.push_back(Line{{{x, y - cross_mm}, {x, y + cross_mm}}, Stroke::outline});
    shapes.push_back(
        Dimension{{0, 0}, {x, 0}, Side::above, top, 0, show_with_unit(place.behind_front, locale)});
    shapes.push_back(
        Dimension{{right, 0}, {right, y}, Side::right, right, 0, show_with_unit(place.above_floor, locale)});
    shapes.push_back(Label{
        {(x + right) / 2, 0}, words("draw.opening_floor"), Anchor::top, Emphasis::plain, {}, false, true});
    shapes.push_back(Label{
        {(x + right) / 2, y}, words("draw.slide_middle"), Anchor::bottom, Emphasis::plain, {}, false, true});
    return drawing;
}

}  // namespace kw::draw
