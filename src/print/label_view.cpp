#include <algorithm>
#include <array>

#include "draw/board_lie.h"
#include "draw/board_marks.h"
#include "draw/maker_triangle.h"
#include "print/labels.h"
#include "words/names.h"

namespace kw::print {
namespace {

// With the marked face up. A board that has the marked edge has it toward the maker; others lie as they come.
draw::BoardLie lie_of(Role role) {
    const BoardFace down = draw::marked_face == BoardFace::inside ? BoardFace::outside : BoardFace::inside;
    const bool is_side = role == Role::side_left || role == Role::side_right;
    const std::array<Reference, 2> ends = is_side ? std::array{Reference::front_end, Reference::rear_end}
                                                  : std::array{Reference::left_end, Reference::right_end};
    const draw::BoardLie first = draw::board_lie(role, ends[0], down),
                         second = draw::board_lie(role, ends[1], down);
    return second.toward_maker == draw::marked_edge || second.toward_maker == Reference::front_end ? second
                                                                                                   : first;
}

constexpr double strip_mm = 3.4, strip_gap_mm = 0.9;

// The top edge as it is seen when the board is tipped up onto its bottom edge: what it has of the maker's triangle stands on it.
// `over` is the edge of the board that the strip stands above.
void add_top_edge(draw::Drawing& drawing, Role role, const draw::BoardLie& lie, double length, double over) {
    const bool is_side = role == Role::side_left || role == Role::side_right;
    const bool from_left = lie.at_fence == Reference::left_end || lie.at_fence == Reference::front_end;
    // Across the edge, from the inside face to the outside one.
    const auto outward = [&](draw::Point p) {
        if (is_side) return role == Role::side_left ? 1 - p.x_mm : p.x_mm;
        return role == Role::front ? 1 - p.y_mm : p.y_mm;
    };
    const double bottom = over + strip_gap_mm;
    const double top = bottom + strip_mm;
    drawing.shapes.push_back(draw::Line{{{0, bottom}, {length, bottom}, {length, top}, {0, top}, {0, bottom}},
                                        draw::Stroke::thin});
    std::vector<draw::Point> points;
    for (const draw::Point& p : draw::triangle_on(role)) {
        const double along = is_side ? p.y_mm : p.x_mm;
        points.push_back({length * (from_left ? along : 1 - along), bottom + strip_mm * outward(p)});
    }
    drawing.shapes.push_back(draw::Line{points, draw::Stroke::pencil});
}

}  // namespace

draw::Drawing label_view(const Part& part, const Words& words, double length_mm, double most_width_mm) {
    const draw::BoardLie lie = lie_of(part.size.role);
    // In the part's own proportions, as far as names and marks have room.
    constexpr double least_width_mm = 8;
    const bool has_strip = !draw::triangle_on(part.size.role).empty();
    const double length = length_mm, over = has_strip ? strip_gap_mm + strip_mm : 0,
                 width = std::clamp(length * (part.size.width.mm() / std::max(part.size.length.mm(), 1e-6)),
                                    least_width_mm, std::max(most_width_mm - over, least_width_mm));
    draw::Drawing drawing;
    const auto end = [&](Reference reference) { return end_word(words, name_of(reference)); };
    drawing.title = words("draw.board_from_above", role_word(words, name_of(part.size.role)),
                          face_up_words(words, name_of(lie.up)));
    drawing.shapes.push_back(
        draw::Line{{{0, 0}, {length, 0}, {length, width}, {0, width}, {0, 0}}, draw::Stroke::outline});
    // A board without such an edge is not marked at the machines either.
    if (lie.toward_maker == draw::marked_edge) {
        draw::add_face_mark(drawing, {{length / 2, 0}, {0, 0.72 * width}});
        draw::add_edge_mark(drawing, {{length / 2, 0}, {0, 0.24 * width}});
    }
    if (has_strip) add_top_edge(drawing, part.size.role, lie, length, width);
    const auto name = [&](draw::Point at, const std::string& text, draw::Anchor anchor) {
        drawing.shapes.push_back(
            draw::Label{at, text, anchor, draw::Emphasis::plain, std::nullopt, false, true, false});
    };
    // Within the board, each at its end.
    name({0.03 * length, width / 2}, end(lie.at_fence), draw::Anchor::left);
    name({0.97 * length, width / 2}, end(lie.from_fence), draw::Anchor::right);
    name({length / 2, -1}, end(lie.toward_maker), draw::Anchor::top);
    name({length / 2, width + over + 1}, face_up_words(words, name_of(lie.up)), draw::Anchor::bottom);
    return drawing;
}

}  // namespace kw::print
