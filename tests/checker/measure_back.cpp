#include <cmath>

#include "checker/lines.h"
#include "checker/measure.h"

namespace checker {
namespace {

// The tip of one end in its dado or rabbet.
double tip_gap_mm(const Assembly& drawer, bool left, double y) {
    const Point line{0, y, drawer.line_z_mm()};
    return left ? gap_mm(drawer.left, drawer.back, x_axis, line)
                : gap_mm(drawer.back, drawer.right, x_axis, line);
}

// As asked; or more, where the job gives the depth and the back is as long as the front, so that one stop serves both.
void check_end_relief(const Assembly& drawer, bool left, const End& end, Report& report) {
    const double tongue_y =
        drawer.back_face_y_mm - drawer.back_thickness_mm() + (end.tongue_from_mm + end.tongue_to_mm) / 2;
    const double relief = tip_gap_mm(drawer, left, tongue_y);
    // A rabbet's floor is glued to: no relief there.
    const double asked = drawer.asked.back.joint == "rabbet" ? 0 : drawer.fit.end_relief_mm;
    const bool one_stop =
        drawer.asked.back.depth_mm.has_value() &&
        report.equal(drawer.pieces.back->part.length_mm, drawer.pieces.front->part.length_mm);
    if (one_stop && relief >= asked) return;
    report.same(Kind::measure, drawer.name, left ? "back's left end relief" : "back's right end relief",
                relief, asked);
}

// A back whose ends are rabbeted closes at its shoulders.
void check_shoulder(const Assembly& drawer, bool left, const End& end, Report& report) {
    if (end.shoulder_mm <= 0) return;
    const double thickness = drawer.back_thickness_mm();
    const bool outside = end.tongue_to_mm < thickness - nothing_mm;
    const double rabbet = outside ? (end.tongue_to_mm + thickness) / 2 : end.tongue_from_mm / 2;
    report.same(Kind::measure, drawer.name, "back's shoulder gap",
                tip_gap_mm(drawer, left, drawer.back_face_y_mm - thickness + rabbet), 0);
}

void check_end(const Assembly& drawer, bool left, const End& end, Report& report) {
    check_end_relief(drawer, left, end, report);
    check_shoulder(drawer, left, end, report);
}

// How far in front of the rear end the back's face stands, or the dado: where the ends are rabbeted on the outside these are two
// places, and the job's word does not say which.
void check_setback(const Assembly& drawer, Report& report) {
    const double of_face = drawer.box.depth_mm - drawer.back_face_y_mm;
    const double of_dado = drawer.box.depth_mm - drawer.left_shape.back.to_mm;
    if (!drawer.asked.back.setback_mm) {
        report.within(Kind::measure, drawer.name, "dado's distance from the rear end", of_dado,
                      {drawer.back_thickness_mm(), drawer.box.depth_mm / 2});
        return;
    }
    const double asked = *drawer.asked.back.setback_mm;
    if (!report.equal(of_face, asked))
        report.same(Kind::measure, drawer.name, "back's setback", of_dado, asked);
}

// Where the job asks for a tongue on the back, its setback is to the back's outside face.
void check_setback_of_face(const Assembly& drawer, Report& report) {
    const double of_face = drawer.box.depth_mm - drawer.back_face_y_mm;
    if (drawer.asked.back.setback_mm)
        report.same(Kind::measure, drawer.name, "back's setback", of_face, *drawer.asked.back.setback_mm);
    else report.within(Kind::measure, drawer.name, "back's setback", of_face, {0, drawer.box.depth_mm / 2});
}

void check_play(const Assembly& drawer, Report& report) {
    const double z = drawer.line_z_mm();
    const double half_depth = drawer.left_shape.back.depth_mm / 2;
    const double left_x = drawer.side_thickness_mm() - half_depth;
    const double right_x = drawer.box.width_mm - left_x;
    report.same(Kind::measure, drawer.name, "back's left clearance in the dado",
                play_mm(drawer.left, drawer.back, y_axis, {left_x, 0, z}), drawer.fit.clearance_mm);
    report.same(Kind::measure, drawer.name, "back's right clearance in the dado",
                play_mm(drawer.right, drawer.back, y_axis, {right_x, 0, z}), drawer.fit.clearance_mm);
}

void measure_dado(const Assembly& drawer, Report& report) {
    if (drawer.left_shape.back.to_mm > drawer.box.depth_mm - nothing_mm) {
        report.say(Kind::measure, drawer.name, "the back's dado runs out at the rear end");
        return;
    }
    check_play(drawer, report);
    check_setback(drawer, report);
}

bool has_back_tongue(const Assembly& drawer, const End& end) {
    const bool inside_half = end.tongue_from_mm < nothing_mm;
    return inside_half && end.tongue_to_mm < drawer.back_thickness_mm() - nothing_mm;
}

// CP: a third of the side is left under the dado, and the groove of a captured bottom does not go through the tongue by more than
// a rule can be read to.
void check_strength(const Assembly& drawer, Report& report) {
    constexpr double groove_past_tongue_mm = 25.4 / 64;
    const double side = drawer.side_thickness_mm();
    if (side - drawer.left_shape.back.depth_mm < side / 3 - report.tolerance_mm())
        report.say(Kind::measure, drawer.name,
                   "the web under the back's dado is less than a third of the side");
    const auto& groove = drawer.back_shape.groove;
    if (groove && groove->depth_mm > drawer.back_shape.left.tongue_to_mm + groove_past_tongue_mm + nothing_mm)
        report.say(Kind::measure, drawer.name, "the groove goes through the back's tongue");
}

void measure_tongue_and_dado(const Assembly& drawer, Report& report) {
    if (!has_back_tongue(drawer, drawer.back_shape.left) ||
        !has_back_tongue(drawer, drawer.back_shape.right)) {
        report.say(Kind::measure, drawer.name, "the back has no tongue on the inside half of an end");
        return;
    }
    check_play(drawer, report);
    check_setback_of_face(drawer, report);
    check_strength(drawer, report);
    if (drawer.asked.back.dado_width_mm)
        report.same(Kind::measure, drawer.name, "back's dado width", drawer.left_shape.back.width_mm(),
                    *drawer.asked.back.dado_width_mm);
}

void measure_back_rabbet(const Assembly& drawer, Report& report) {
    report.same(Kind::measure, drawer.name, "end of the back's rabbet", drawer.left_shape.back.to_mm,
                drawer.box.depth_mm);
    const double proud = drawer.box.depth_mm - drawer.back_face_y_mm;
    if (!report.equal(proud, drawer.fit.step_mm))
        report.same(Kind::measure, drawer.name, "sides' ends behind the back's face", proud, 0);
    if (drawer.back_shape.left.shoulder_mm > 0 || drawer.back_shape.right.shoulder_mm > 0)
        report.say(Kind::measure, drawer.name,
                   "the back's ends are cut, and a rabbet in the sides wants them plain");
}

}  // namespace

void measure_back(const Assembly& drawer, Report& report) {
    if (drawer.asked.back.joint == "box joint") return measure_fingers(drawer, true, report);
    if (drawer.asked.back.depth_mm) {
        report.same(Kind::measure, drawer.name, "depth of the joint with the back",
                    drawer.left_shape.back.depth_mm, *drawer.asked.back.depth_mm);
    }
    check_end(drawer, true, drawer.back_shape.left, report);
    check_end(drawer, false, drawer.back_shape.right, report);
    if (drawer.asked.back.joint == "rabbet") measure_back_rabbet(drawer, report);
    else if (drawer.asked.back.joint == "tongue and dado") measure_tongue_and_dado(drawer, report);
    else measure_dado(drawer, report);
}

}  // namespace checker
