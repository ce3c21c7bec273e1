#pragma once
// Where a handle's holes are drilled in a face, and whether their screws meet wood that can hold them in the box behind it.

#include <optional>
#include <string_view>
#include <vector>

#include "drawer/box.h"

namespace kw {

enum class HandleHeight { centred, third, from_top };

// The names used in job files: "centred", "a third down", "from the top".
std::string_view name_of(HandleHeight rule);
std::optional<HandleHeight> handle_height_named(std::string_view name);

struct HandleAsk {
    int holes = 2;   // 1 or 2
    Length centres;  // between two
    HandleHeight height = HandleHeight::centred;
    Length from_top;  // of `from_top`: from the face's upper edge to the middle of the holes
    Length diameter =
        Length::millimetres(5);  // of a hole: for an M4 or a no. 8 screw (common practice, no source)
};

// Middles of the holes, as the face lies before the maker: from its left end and up from its bottom edge.
struct HandleHoles {
    std::vector<Length> from_left;
    Length from_bottom;

    bool operator==(const HandleHoles&) const = default;
};

// centred: half its height; a third down: two thirds of its height, so that the handle hangs a third below the upper edge.
HandleHoles handle_holes(const HandleAsk& ask, Length face_width, Length face_height);

// A box as it stands behind its face.
struct BoxBehind {
    Length left,
        bottom;  // from the face's left end to the box's left side, and from its bottom edge up to the box's
    BoxSize box;
    Length sides;                      // their thickness
    Length groove_near, groove_width;  // from the box's bottom edge
};

enum class HoleMeets { front, nothing_above, nothing_below, groove, below_bottom, side, edge_of_face };

struct HoleCheck {
    HoleMeets meets = HoleMeets::front;
    Length by;  // how far the hole goes over what it should stay clear of
    // Up from the face's bottom edge: the nearest height at which the holes go through the front above the groove; nothing where there is none.
    std::optional<Length> clear_at;

    bool operator==(const HoleCheck&) const = default;
};

// The worst of all holes. Every hole is to lie on the face, between the sides, above the groove and below the front's upper edge, each
// with its whole width.
HoleCheck check_holes(const HandleHoles& holes, Length diameter, Length face_width, Length face_height,
                      const BoxBehind& behind);

}  // namespace kw
