#include <algorithm>
#include <cmath>

#include "checker/lines.h"
#include "checker/measure.h"

namespace checker {
namespace {

void check_step(const Assembly& drawer, Report& report) {
    const Point line{drawer.box.width_mm / 2, 0, drawer.line_z_mm()};
    const double face_y_mm = first_wood_mm(drawer.front, y_axis, line);
    report.same(Kind::measure, drawer.name, "front's step", face_y_mm, drawer.fit.step_mm);
}

// Shoulders, ends and play of one end of the front. `first` is the part at lower x.
struct FrontEnd {
    const char* name;
    const Solid& side;
    const Solid& first;
    const Solid& second;
    const End& end;
    double dado_x_mm;  // in the dado, in the tongue
};

void check_locking_end(const Assembly& drawer, const FrontEnd& at, Report& report) {
    const double thickness = drawer.front_thickness_mm();
    const double z = drawer.line_z_mm();
    const Point along_dado{at.dado_x_mm, 0, z};
    const Point across_rabbet{0, drawer.front_face_y_mm + (thickness - at.end.tongue_to_mm) / 2, z};
    const Point across_tongue{0, drawer.front_face_y_mm + thickness - at.end.tongue_to_mm / 2, z};
    const auto same = [&](const char* what, double is_mm, double asked_mm) {
        report.same(Kind::measure, drawer.name, std::string("front's ") + at.name + " " + what, is_mm,
                    asked_mm);
    };
    same("clearance in the dado", play_mm(at.side, drawer.front, y_axis, along_dado),
         drawer.fit.clearance_mm);
    same("shoulder gap", gap_mm(at.first, at.second, x_axis, across_rabbet), 0);
    same("end relief", gap_mm(at.first, at.second, x_axis, across_tongue), drawer.fit.end_relief_mm);
}

bool has_front_tongue(const Assembly& drawer, const End& end, Report& report) {
    const bool inside_half = end.tongue_from_mm < nothing_mm;
    const bool rabbeted = end.tongue_to_mm < drawer.front_thickness_mm() - nothing_mm;
    if (inside_half && rabbeted) return true;
    report.say(Kind::measure, drawer.name, "the front has no tongue on the inside half of an end");
    return false;
}

// CP: at least a third of the side is left under the dado.
void check_web(const Assembly& drawer, const Slot& dado, Report& report) {
    const double side = drawer.side_thickness_mm();
    if (side - dado.depth_mm < side / 3 - report.tolerance_mm())
        report.say(Kind::measure, drawer.name,
                   "the web under the front's dado is less than a third of the side");
}

void check_asked_dado(const Assembly& drawer, const Slot& dado, Report& report) {
    const AskedPart& front = drawer.asked.front;
    if (front.dado_width_mm)
        report.same(Kind::measure, drawer.name, "front's dado width", dado.width_mm(), *front.dado_width_mm);
    if (front.depth_mm)
        report.same(Kind::measure, drawer.name, "depth of the joint with the front", dado.depth_mm,
                    *front.depth_mm);
}

// The usual quarter, quarter, quarter makes the groove as deep as the tongue is thick, and a clearance in the dado makes it a little
// deeper: across the groove's height the tongue is gone, above it it holds. More than the reading of a rule is a slip
// (common practice, no source).
constexpr double groove_past_tongue_mm = 25.4 / 64;

void check_tongue_in_groove(const Assembly& drawer, const End& end, Report& report) {
    if (drawer.front_shape.groove->depth_mm > end.tongue_to_mm + groove_past_tongue_mm + nothing_mm)
        report.say(Kind::measure, drawer.name, "the groove goes through the front's tongue");
}

void measure_locking(const Assembly& drawer, Report& report) {
    const End& left = drawer.front_shape.left;
    const End& right = drawer.front_shape.right;
    if (drawer.left_shape.front.from_mm < nothing_mm) {
        report.say(Kind::measure, drawer.name, "the side's dado has no lip");
        return;
    }
    if (!has_front_tongue(drawer, left, report) || !has_front_tongue(drawer, right, report)) return;
    const double inside = drawer.side_thickness_mm();
    check_locking_end(drawer,
                      {"left", drawer.left, drawer.left, drawer.front, left, inside - left.shoulder_mm / 2},
                      report);
    check_locking_end(drawer,
                      {"right", drawer.right, drawer.front, drawer.right, right,
                       drawer.box.width_mm - inside + right.shoulder_mm / 2},
                      report);
    check_web(drawer, drawer.left_shape.front, report);
    check_tongue_in_groove(drawer, left, report);
}

void measure_front_rabbet(const Assembly& drawer, Report& report) {
    const Point line{0, drawer.front_face_y_mm + drawer.front_thickness_mm() / 2, drawer.line_z_mm()};
    if (drawer.left_shape.front.from_mm > nothing_mm)
        report.say(Kind::measure, drawer.name, "the side's rabbet does not begin at its front end");
    if (drawer.front_shape.left.shoulder_mm > 0 || drawer.front_shape.right.shoulder_mm > 0)
        report.say(Kind::measure, drawer.name,
                   "the front's ends are cut, and a rabbet in the sides wants them plain");
    // Its ends are what it is glued by and clamped against: a gap there would come off the box's width.
    report.same(Kind::measure, drawer.name, "gap at the front's left end",
                gap_mm(drawer.left, drawer.front, x_axis, line), 0);
    report.same(Kind::measure, drawer.name, "gap at the front's right end",
                gap_mm(drawer.front, drawer.right, x_axis, line), 0);
}

// A half lap is what is left of both boards, each filling the other's rabbet: seen from above there is no air at the corner.
void measure_half_lap(const Assembly& drawer, Report& report) {
    const double thickness = drawer.front_thickness_mm(), z = drawer.line_z_mm();
    const Slot& rabbet = drawer.left_shape.front;
    const auto say = [&](const char* what) { report.say(Kind::measure, drawer.name, what); };
    if (rabbet.from_mm > nothing_mm) say("the side's rabbet does not begin at its front end");
    const auto same = [&](const std::string& what, double is_mm, double asked_mm) {
        report.same(Kind::measure, drawer.name, what, is_mm, asked_mm);
    };
    for (const bool at_left : {true, false}) {
        const End& end = at_left ? drawer.front_shape.left : drawer.front_shape.right;
        const double rabbeted = end.tongue_from_mm;
        if (rabbeted < nothing_mm || end.tongue_to_mm < thickness - nothing_mm) {
            say("the front has no lap on the outside half of an end");
            return;
        }
        const Solid& first = at_left ? drawer.left : drawer.front;
        const Solid& second = at_left ? drawer.front : drawer.right;
        const std::string name = at_left ? "front's left " : "front's right ";
        const double y = drawer.front_face_y_mm;
        same(name + "lap to the floor", gap_mm(first, second, x_axis, {0, y + (thickness - rabbeted) / 2, z}),
             0);
        same(name + "shoulder gap", gap_mm(first, second, x_axis, {0, y + thickness - rabbeted / 2, z}), 0);
        if (thickness - rabbeted < thickness / 3 - report.tolerance_mm())
            say("the front's lap is less than a third of it");
        if (std::abs(thickness - drawer.side_thickness_mm()) < report.tolerance_mm())
            same(name + "rabbet, of boards equally thick", rabbeted, rabbet.depth_mm);
    }
    check_web(drawer, rabbet, report);
}

}  // namespace

void measure_front(const Assembly& drawer, Report& report) {
    check_step(drawer, report);
    if (drawer.asked.front.joint == "box joint") return measure_fingers(drawer, false, report);
    check_asked_dado(drawer, drawer.left_shape.front, report);
    if (drawer.asked.front.joint == "rabbet") measure_front_rabbet(drawer, report);
    else if (drawer.asked.front.joint == "half lap corner") measure_half_lap(drawer, report);
    else measure_locking(drawer, report);
}

}  // namespace checker
