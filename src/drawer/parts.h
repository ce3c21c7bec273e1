#pragma once
// The parts of one drawer, from the box and the joints.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "drawer/box.h"

namespace kw {

enum class Role { front, back, side_left, side_right, bottom, face };

// "front", "back", "side_left", "side_right", "bottom", "face": as in plan files.
std::string_view name_of(Role role);

// Finished sizes. Length runs along a front or back from its left end to its right end, along a side from its front
// end to its rear end, across the box for a bottom or a face. Width is the height in the box; for a bottom it runs
// from front to back.
struct PartSize {
    Role role = Role::front;
    Length length;
    Length width;
    Length thickness;

    bool operator==(const PartSize&) const = default;
};

enum class BottomStyle { slide_in, captured };

// How each joint stands, as designed or as cut. All lengths measured on the wood.
struct DrawerJoints {
    Length front_reach;   // how far the front enters each side
    Length back_reach;    // how far the back enters each side
    Length back_setback;  // rear end of the side to the back's outside face
    Length front_step;    // side's front end proud of the front's outside face
    Length groove_near;   // bottom edge to the groove
    Length groove_width;
    Length groove_depth;
};

struct DrawerThickness {
    Length sides;
    Length front;
    Length back;
    Length bottom;
};

struct BottomFit {
    BottomStyle style = BottomStyle::slide_in;
    Length slack;           // off the length and off the width
    Length seasonal_swell;  // what a solid bottom may still grow across its grain, off the width as well
};

// front   length W - 2 T_s + 2 reach                         width H
// back    the same with its own reach                        width H, or H - (groove's top) where the bottom slides in
// side    length D                                           width H
// bottom  length W - 2 T_s + 2 g - slack
//         width  slide in: D - setback - (e + T_f - g) - slack;  captured: D - setback - T_k + g - (e + T_f - g) - slack
std::vector<PartSize> size_parts(const BoxSize& box, const DrawerThickness& thickness,
                                 const DrawerJoints& joints, const BottomFit& bottom);

struct FaceAsk {
    FaceStyle style = FaceStyle::none;
    Length left, right, top, bottom;  // overlays, or the gaps of an inset face
    Length thickness;
};

// Overlay: the opening and both overlays. Inset: the opening less both gaps.
std::optional<PartSize> size_face(const Opening& opening, const FaceAsk& face);

}  // namespace kw
