#pragma once
// A box in the clamps: from its two diagonals, how far it is out of square, and what to do.

#include <optional>

#include "drawer/box.h"

namespace kw {

// Seen from above, the front toward the maker.
enum class BoxCorner { front_left, front_right, back_left, back_right };
std::string_view name_of(BoxCorner corner);

// The four sides of a box from above, outside, from corner to corner. A front that was kept though it is short makes them unequal.
struct BoxSides {
    Length front;
    Length back;
    Length left;
    Length right;
    bool operator==(const BoxSides&) const = default;
};

BoxSides sides_of(const BoxSize& box);

// What each diagonal is where both are equal: sqrt(front back + left right), Ptolemy's theorem. Exact where one pair of sides is equal; else
// off by less than a micrometre for sides that differ by millimetres.
Length equal_diagonal(const BoxSides& sides);

struct Squareness {
    Length expected;  // see equal_diagonal; of a rectangle sqrt(W^2 + D^2)
    // How far the back stands to the right of the front (+), over the depth: D sin(theta).
    Length back_is_right;
    double skew_deg = 0;  // theta, of the same sign
    // Push this corner toward the opposite one, until the diagonals are equal: it is an end of the longer one. Nothing where they are equal.
    std::optional<BoxCorner> push;
    // By how much the longer one must get shorter: then both are equal.
    Length shorten;
    // The mean diagonal as read, less the one expected: what is left says that the box is not of this size, or misread.
    Length larger_than_expected;

    bool operator==(const Squareness&) const = default;
};

// `from_front_left`: the diagonal from the front left corner to the back right one; the other is `from_front_right`. Outside measures. With w
// the mean width and d the mean depth: sin(theta) = (d1^2 - d2^2) / (4 w d), since d1^2 - d2^2 is the product of the sums of opposite sides,
// taken as vectors. Refuses what no four boards of this size can read, with the field `diagonals`.
tl::expected<Squareness, Refusal> squareness(const BoxSides& box, Length from_front_left,
                                             Length from_front_right);

}  // namespace kw
