// One drawer put together from its made parts. In the box, x runs across from the left side's outside face, y back from the
// sides' front ends, z up from the sides' bottom edges.
#pragma once

#include <optional>
#include <string>

#include "checker/asked.h"
#include "checker/shapes.h"
#include "checker/workpiece.h"

namespace checker {

inline constexpr int x_axis = 0;
inline constexpr int y_axis = 1;
inline constexpr int z_axis = 2;

struct Pieces {
    const Workpiece* left = nullptr;
    const Workpiece* right = nullptr;
    const Workpiece* front = nullptr;
    const Workpiece* back = nullptr;
    const Workpiece* bottom = nullptr;
};

struct Assembly {
    std::string name;  // drawer and copy, for the report
    AskedDrawer asked;
    AskedFit fit;
    PlanBox box;
    Pieces pieces;
    SideShape left_shape;
    SideShape right_shape;
    CrossShape front_shape;
    CrossShape back_shape;
    double front_face_y_mm = 0;  // the front's outside face
    double back_face_y_mm = 0;   // the back's outside face
    Solid left;
    Solid right;
    Solid front;
    Solid back;
    Solid bottom;

    double side_thickness_mm() const { return pieces.left->part.thickness_mm; }
    double front_thickness_mm() const { return pieces.front->part.thickness_mm; }
    double back_thickness_mm() const { return pieces.back->part.thickness_mm; }
    double line_z_mm() const { return clear_of_groove_mm(box.height_mm); }
};

// Sides at the box's outer width. The front is pushed forward until it seats: its tongue against the lip, or, with a plain rabbet,
// its inside face against the rabbet's shoulder. The back is pushed backward until it seats: its tongue against the dado's rear
// wall; with a plain rabbet its inside face against the shoulder. Both are centred across, the back's top edge level with the
// sides'. The bottom rests on the groove's lower wall, in the middle across, against the floor of the front's groove.
// None where a part has no shape to put together; the report says which.
std::optional<Assembly> assemble(const Pieces& pieces, const AskedDrawer& asked, const AskedFit& fit,
                                 const PlanBox& box, const std::string& name, Report& report);

}  // namespace checker
