#include "drawer/squareness.h"

#include <cmath>

namespace kw {
namespace {

// A reading that is farther from what the boards make it belongs to another box. Joints may stand open by a millimetre or two
// before they are drawn up (common practice, no source).
constexpr Length most_larger = Length::millimetres(6);

constexpr double degrees_per_radian = 57.295779513082321;

}  // namespace

std::string_view name_of(BoxCorner corner) {
    switch (corner) {
        case BoxCorner::front_left: return "front_left";
        case BoxCorner::front_right: return "front_right";
        case BoxCorner::back_left: return "back_left";
        case BoxCorner::back_right: return "back_right";
    }
    return {};
}

BoxSides sides_of(const BoxSize& box) { return {box.width, box.width, box.depth, box.depth}; }

Length equal_diagonal(const BoxSides& sides) {
    return Length::nearest_mm(
        std::sqrt(sides.front.mm() * sides.back.mm() + sides.left.mm() * sides.right.mm()));
}

tl::expected<Squareness, Refusal> squareness(const BoxSides& box, Length from_front_left,
                                             Length from_front_right) {
    const double w = (box.front + box.back).mm() / 2.0, d = (box.left + box.right).mm() / 2.0,
                 a = from_front_left.mm(), b = from_front_right.mm();
    Squareness out;
    out.expected = equal_diagonal(box);
    out.larger_than_expected = Length::nearest_mm(std::sqrt((a * a + b * b) / 2.0)) - out.expected;
    const double sine = (a - b) * (a + b) / (4.0 * w * d);
    if (abs(out.larger_than_expected) > most_larger || std::abs(sine) >= 1.0)
        return tl::unexpected(Refusal{"diagonals",
                                      Message::say("square.not_this_box", from_front_left, from_front_right,
                                                   box.front, box.left, out.expected),
                                      Message::say("square.measure_again")});
    out.back_is_right = Length::nearest_mm(d * sine);
    out.skew_deg = std::asin(sine) * degrees_per_radian;
    if (from_front_left > from_front_right) out.push = BoxCorner::back_right;
    if (from_front_right > from_front_left) out.push = BoxCorner::back_left;
    const Length equal = Length::nearest_mm(std::sqrt((a * a + b * b) / 2.0));
    out.shorten = max(from_front_left, from_front_right) - equal;
    return out;
}

}  // namespace kw
