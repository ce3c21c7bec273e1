#include "draw/assembly_view.h"

#include <algorithm>
#include <cmath>

namespace kw::draw {
namespace {

// What is off is drawn so large, against the size of the thing.
constexpr double shown_share = 0.07;

Point between(Point a, Point b, double share) {
    return {a.x_mm + share * (b.x_mm - a.x_mm), a.y_mm + share * (b.y_mm - a.y_mm)};
}

std::string diagonal_text(const std::optional<Length>& read, Length expected, const Locale& locale) {
    return show_with_unit(read.value_or(expected), locale);
}

// How far the back is drawn to the right of the front.
double drawn_skew_mm(const AssemblyResult& result) {
    if (!result.square || abs(result.square->back_is_right) <= worth_moving) return 0.0;
    const double most = shown_share * result.box.left.mm();
    return result.square->back_is_right > Length{} ? most : -most;
}

}  // namespace

Drawing box_in_clamps(const AssemblyResult& result, const Assembled& read, const Locale& locale) {
    const Words& words = locale.words();
    // What its sides differ by is nothing to see.
    const double width = result.box.front.mm(), depth = result.box.left.mm(), skew = drawn_skew_mm(result);
    const Point front_left{0, 0}, front_right{width, 0}, back_left{skew, depth},
        back_right{width + skew, depth};
    Drawing drawing{words("draw.box_in_clamps"), {}};
    auto& shapes = drawing.shapes;
    shapes.push_back(Fill{{{front_left, front_right, back_right, back_left}}, Material::ground});
    shapes.push_back(Line{{front_left, back_right}, Stroke::thin});
    shapes.push_back(Line{{front_right, back_left}, Stroke::thin});
    // Each outside, on the side where its diagonal begins.
    const auto read_label = [&](Point on, double x, Anchor anchor, const std::optional<Length>& value) {
        shapes.push_back(Label{{x, on.y_mm},
                               diagonal_text(value, result.diagonal, locale),
                               anchor,
                               value ? Emphasis::strong : Emphasis::faint,
                               on});
    };
    const double beside = 0.12 * std::max(width, depth);
    read_label(between(front_left, back_right, 0.25), -beside, Anchor::right, read.from_front_left);
    read_label(between(front_right, back_left, 0.25), width + beside, Anchor::left, read.from_front_right);
    shapes.push_back(
        Label{{width / 2, 0}, words("draw.front"), Anchor::top, Emphasis::plain, {}, false, true});
    shapes.push_back(Label{
        {width / 2 + skew, depth}, words("draw.back"), Anchor::bottom, Emphasis::plain, {}, false, true});
    if (skew != 0.0) {
        const Point corner = skew > 0 ? back_right : back_left;
        const double out = 0.26 * std::hypot(width, depth) / std::sqrt(2.0);
        const Point from{corner.x_mm + (skew > 0 ? out : -out), corner.y_mm + out};
        shapes.push_back(Line{{from, between(corner, from, 0.12)}, Stroke::arrow});
        shapes.push_back(Label{from,
                               words("draw.push"),
                               skew > 0 ? Anchor::left : Anchor::right,
                               Emphasis::changed,
                               {},
                               false,
                               true});
    }
    return drawing;
}

namespace {

struct GapLabel {
    GapPlace place;
    double x, y;  // of the opening, 0 to 1
    Anchor anchor;
};
constexpr GapLabel gap_labels[] = {
    {GapPlace::left_top, 0, 0.78, Anchor::right}, {GapPlace::left_bottom, 0, 0.22, Anchor::right},
    {GapPlace::right_top, 1, 0.78, Anchor::left}, {GapPlace::right_bottom, 1, 0.22, Anchor::left},
    {GapPlace::top_left, 0.2, 1, Anchor::bottom}, {GapPlace::top_right, 0.8, 1, Anchor::bottom},
    {GapPlace::bottom_left, 0.2, 0, Anchor::top}, {GapPlace::bottom_right, 0.8, 0, Anchor::top}};

// By how much the gaps are off at most, mm.
double most_off_mm(const Hanging& hangs) {
    double most = 0.0;
    for (const Length by : {hangs.to_right, hangs.left_up, hangs.right_up})
        most = std::max(most, std::abs(by.mm()));
    return most;
}

}  // namespace

Drawing face_in_place(const HungFace& face, const Gaps& read, const Locale& locale) {
    const double width = face.width.mm(), height = face.height.mm();
    // The gaps as they should be are drawn wide as well, or none could be told from a line.
    const double gap = shown_share * height, room_w = width + 2 * gap, room_h = height + 2 * gap;
    const auto hangs = hanging(face, read);
    const double off = hangs ? most_off_mm(*hangs) : 0.0,
                 larger = off > worth_moving.mm() ? 0.7 * gap / off : 0.0;
    const double dx = hangs ? -larger * hangs->to_right.mm() : 0.0,
                 left_up = hangs ? -larger * hangs->left_up.mm() : 0.0,
                 right_up = hangs ? -larger * hangs->right_up.mm() : 0.0;
    const Words& words = locale.words();
    Drawing drawing{words("draw.face_in_place"), {}};
    auto& shapes = drawing.shapes;
    shapes.push_back(Line{{{0, 0}, {room_w, 0}, {room_w, room_h}, {0, room_h}, {0, 0}}, Stroke::outline});
    const double lean = (right_up - left_up) / width;  // of the upright edges: the face stays a rectangle
    const Point a{gap + dx + lean * height / 2, gap + left_up},
        b{gap + width + dx + lean * height / 2, gap + right_up};
    const Point c{b.x_mm - lean * height, b.y_mm + height}, d{a.x_mm - lean * height, a.y_mm + height};
    shapes.push_back(Fill{{{a, b, c, d}}, Material::long_grain});
    const double beside = 0.02 * room_w;  // clear of the line
    for (const GapLabel& label : gap_labels)
        if (const auto& value = read.at(label.place))
            shapes.push_back(Label{{label.x * room_w + (label.anchor == Anchor::right  ? -beside
                                                        : label.anchor == Anchor::left ? beside
                                                                                       : 0.0),
                                    label.y * room_h},
                                   show_with_unit(*value, locale),
                                   label.anchor,
                                   Emphasis::strong,
                                   {},
                                   false,
                                   true});
    return drawing;
}

}  // namespace kw::draw
