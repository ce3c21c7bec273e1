#include "checker/assembly.h"

namespace checker {
namespace {

double seated_front_y_mm(const Assembly& box) {
    const double thickness = box.front_thickness_mm();
    // Its inside face stands on the floors of the sides' sockets, or behind their rabbet.
    if (box.asked.front.joint == "rabbet" || box.asked.front.joint == "box joint")
        return box.left_shape.front.to_mm - thickness;
    // Its lap's inner face stands on the shoulder of the sides' rabbet.
    if (box.asked.front.joint == "half lap corner")
        return box.left_shape.front.to_mm - (thickness - box.front_shape.left.tongue_from_mm);
    return box.left_shape.front.from_mm - (thickness - box.front_shape.left.tongue_to_mm);
}

double seated_back_y_mm(const Assembly& box) {
    const double thickness = box.back_thickness_mm();
    if (box.asked.back.joint == "rabbet" || box.asked.back.joint == "box joint")
        return box.left_shape.back.from_mm + thickness;
    return box.left_shape.back.to_mm + (thickness - box.back_shape.left.tongue_to_mm);
}

double centred(const Assembly& box, const Workpiece& piece) {
    return (box.box.width_mm - piece.part.length_mm) / 2;
}

void place_sides(Assembly& box) {
    const double thickness = box.side_thickness_mm();
    const double inside_of_right = box.box.width_mm - box.pieces.right->part.thickness_mm;
    box.left =
        placed(box.pieces.left->wood, {{y_axis, z_axis, x_axis}, {false, false, true}, {thickness, 0, 0}});
    box.right = placed(box.pieces.right->wood,
                       {{y_axis, z_axis, x_axis}, {false, false, false}, {inside_of_right, 0, 0}});
}

void place_front_and_back(Assembly& box) {
    const double front_inside_y = box.front_face_y_mm + box.front_thickness_mm();
    box.front = placed(box.pieces.front->wood, {{x_axis, z_axis, y_axis},
                                                {false, false, true},
                                                {centred(box, *box.pieces.front), front_inside_y, 0}});
    const double back_inside_y = box.back_face_y_mm - box.back_thickness_mm();
    const double back_lower_edge = box.box.height_mm - box.pieces.back->part.width_mm;
    box.back =
        placed(box.pieces.back->wood, {{x_axis, z_axis, y_axis},
                                       {false, false, false},
                                       {centred(box, *box.pieces.back), back_inside_y, back_lower_edge}});
}

void place_bottom(Assembly& box) {
    const double front_floor_y =
        box.front_face_y_mm + box.front_thickness_mm() - box.front_shape.groove->depth_mm;
    box.bottom = placed(box.pieces.bottom->wood,
                        {{x_axis, y_axis, z_axis},
                         {false, false, false},
                         {centred(box, *box.pieces.bottom), front_floor_y, box.left_shape.groove.from_mm}});
}

}  // namespace

std::optional<Assembly> assemble(const Pieces& pieces, const AskedDrawer& asked, const AskedFit& fit,
                                 const PlanBox& box, const std::string& name, Report& report) {
    // Fingers at all four corners, or at none.
    const bool fingered = asked.front.joint == "box joint";
    const auto side_shape = fingered ? find_fingered_side : find_side_shape;
    const auto cross_shape = fingered ? find_fingered_cross : find_cross_shape;
    const auto left = side_shape(*pieces.left, report);
    const auto right = side_shape(*pieces.right, report);
    const auto front = cross_shape(*pieces.front, true, report);
    const auto back = cross_shape(*pieces.back, asked.captured, report);
    if (!pieces.bottom->wood.cuts.empty())
        report.say(Kind::measure, pieces.bottom->part.id, "a bottom has no joint cuts");
    if (!left || !right || !front || !back) return std::nullopt;
    Assembly whole{name, asked, fit, box, pieces, *left, *right, *front, *back, 0, 0, {}, {}, {}, {}, {}};
    whole.front_face_y_mm = seated_front_y_mm(whole);
    whole.back_face_y_mm = seated_back_y_mm(whole);
    place_sides(whole);
    place_front_and_back(whole);
    place_bottom(whole);
    return whole;
}

}  // namespace checker
