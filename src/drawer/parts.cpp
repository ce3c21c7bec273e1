#include "drawer/parts.h"

namespace kw {

std::string_view name_of(Role role) {
    switch (role) {
        case Role::front: return "front";
        case Role::back: return "back";
        case Role::side_left: return "side_left";
        case Role::side_right: return "side_right";
        case Role::bottom: return "bottom";
        case Role::face: return "face";
    }
    return {};
}

namespace {

PartSize size_bottom(const BoxSize& box, const DrawerThickness& t, const DrawerJoints& j,
                     const BottomFit& fit) {
    const Length front_of_bottom = j.front_step + t.front - j.groove_depth;
    const Length rear_of_bottom = fit.style == BottomStyle::slide_in
                                      ? box.depth - j.back_setback
                                      : box.depth - j.back_setback - t.back + j.groove_depth;
    return {Role::bottom, box.width - 2 * t.sides + 2 * j.groove_depth - fit.slack,
            rear_of_bottom - front_of_bottom - fit.slack - fit.seasonal_swell, t.bottom};
}

}  // namespace

std::vector<PartSize> size_parts(const BoxSize& box, const DrawerThickness& t, const DrawerJoints& j,
                                 const BottomFit& fit) {
    const Length inside = box.width - 2 * t.sides;
    const Length groove_top = j.groove_near + j.groove_width;
    const Length back_width = fit.style == BottomStyle::slide_in ? box.height - groove_top : box.height;
    return {{Role::side_left, box.depth, box.height, t.sides},
            {Role::side_right, box.depth, box.height, t.sides},
            {Role::front, inside + 2 * j.front_reach, box.height, t.front},
            {Role::back, inside + 2 * j.back_reach, back_width, t.back},
            size_bottom(box, t, j, fit)};
}

std::optional<PartSize> size_face(const Opening& opening, const FaceAsk& face) {
    if (face.style == FaceStyle::none) return std::nullopt;
    const int sign = face.style == FaceStyle::overlay ? 1 : -1;
    return PartSize{Role::face, opening.width + sign * (face.left + face.right),
                    opening.height + sign * (face.top + face.bottom), face.thickness};
}

}  // namespace kw
