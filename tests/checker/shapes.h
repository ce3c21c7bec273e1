// What a made part looks like, found by lines through its wood: slots across the inside face, and tongues at the ends.
#pragma once

#include <optional>
#include <vector>

#include "checker/report.h"
#include "checker/workpiece.h"

namespace checker {

// A dado, an end rabbet or a groove in the inside face: where it lies along the line that crosses it, and how deep it goes. mm.
struct Slot {
    double from_mm = 0;
    double to_mm = 0;
    double depth_mm = 0;

    double width_mm() const { return to_mm - from_mm; }
};

// One end of a front or a back: which part of the thickness reaches the end (from the inside face), and how far the rest stays
// behind it. A plain end is all tongue, with no shoulder.
struct End {
    double tongue_from_mm = 0;
    double tongue_to_mm = 0;
    double shoulder_mm = 0;
};

// Sockets of a box joint up an end, from the bottom edge; `depth_mm` from the end. Empty where the end has none.
using Sockets = std::vector<Slot>;

struct SideShape {
    Slot front;
    Slot back;
    Slot groove;
    Sockets front_sockets = {};
    Sockets back_sockets = {};
};

struct CrossShape {
    End left;
    End right;
    std::optional<Slot> groove;
    Sockets left_sockets = {};
    Sockets right_sockets = {};
};

// Each says in the report what it misses, and whatever is cut or left beside the shape that it found; none where that makes the
// part useless for a box.
std::optional<SideShape> find_side_shape(const Workpiece& side, Report& report);
std::optional<CrossShape> find_cross_shape(const Workpiece& part, bool with_groove, Report& report);

// The same of boards that have sockets at both ends. Of a side `front` and `back` are then as long as these are deep, of the others the
// ends are all tongue.
std::optional<SideShape> find_fingered_side(const Workpiece& side, Report& report);
std::optional<CrossShape> find_fingered_cross(const Workpiece& part, bool with_groove, Report& report);

// Where lines look for the joints: up from the bottom edge, clear of the groove.
double clear_of_groove_mm(double width_mm);

}  // namespace checker
