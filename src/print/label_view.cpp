#include <algorithm>
#include <array>

#include "draw/board_lie.h"
#include "draw/board_marks.h"
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

}  // namespace

draw::Drawing label_view(const Part& part, const Words& words) {
    const draw::BoardLie lie = lie_of(part.size.role);
    // Of long boards the label shows less length, of square ones less width: the marks must be seen.
    constexpr double longest = 3.2, shortest = 2, width = 20;
    const double length =
        width * std::clamp(part.size.length.mm() / std::max(part.size.width.mm(), 1e-6), shortest, longest);
    draw::Drawing drawing;
    const auto end = [&](Reference reference) { return end_word(words, name_of(reference)); };
    drawing.title = words("draw.board_from_above", role_word(words, name_of(part.size.role)),
                          face_up_words(words, name_of(lie.up)));
    drawing.shapes.push_back(
        draw::Line{{{0, 0}, {length, 0}, {length, width}, {0, width}, {0, 0}}, draw::Stroke::outline});
    if (lie.toward_maker == draw::marked_edge) {
        draw::add_face_mark(drawing, {{length / 2, 0}, {0, 0.72 * width}});
        draw::add_edge_mark(drawing, {{length / 2, 0}, {0, 0.24 * width}});
    } else {
        // It has no bottom edge: the loop alone says which face is up, its tail toward the maker.
        draw::add_face_mark(drawing, {{length / 2, 0}, {0, 0.72 * width}});
    }
    const auto name = [&](draw::Point at, const std::string& text, draw::Anchor anchor) {
        drawing.shapes.push_back(
            draw::Label{at, text, anchor, draw::Emphasis::plain, std::nullopt, false, true, false});
    };
    name({-0.06 * width, width / 2}, end(lie.at_fence), draw::Anchor::right);
    name({length + 0.06 * width, width / 2}, end(lie.from_fence), draw::Anchor::left);
    name({length / 2, -0.06 * width}, end(lie.toward_maker), draw::Anchor::top);
    name({length / 2, 1.06 * width}, face_up_words(words, name_of(lie.up)), draw::Anchor::bottom);
    return drawing;
}

}  // namespace kw::print
