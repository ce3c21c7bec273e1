#include <algorithm>

#include "checker/lines.h"
#include "checker/measure.h"

namespace checker {
namespace {

// The most that a panel moves in service, as a part of its size: the greatest tangential coefficient of Wood Handbook table 13-5
// (American beech, 0.00431 per 1 % moisture) over the whole 6 to 14 % that it holds for, rounded up. A solid bottom's slack may
// be more than asked by as much.
constexpr double most_movement = 0.036;

struct Grooved {
    const char* name;
    const Slot& groove;
};

std::vector<Grooved> grooves_of(const Assembly& drawer) {
    std::vector<Grooved> all{{"left side's", drawer.left_shape.groove},
                             {"right side's", drawer.right_shape.groove},
                             {"front's", *drawer.front_shape.groove}};
    if (drawer.back_shape.groove) all.push_back({"back's", *drawer.back_shape.groove});
    return all;
}

// One setup serves all: the groove is the same everywhere.
void check_grooves_alike(const Assembly& drawer, Report& report) {
    const Slot& first = drawer.left_shape.groove;
    const AskedPart& asked = drawer.asked.bottom;
    for (const Grooved& part : grooves_of(drawer)) {
        const auto same = [&](const char* what, double is_mm, double asked_mm) {
            report.same(Kind::measure, drawer.name, std::string(part.name) + " groove's " + what, is_mm,
                        asked_mm);
        };
        same("offset", part.groove.from_mm, asked.offset_mm.value_or(first.from_mm));
        same("depth", part.groove.depth_mm, asked.depth_mm.value_or(first.depth_mm));
        same("width", part.groove.width_mm(), first.width_mm());
    }
}

void check_groove_depth(const Assembly& drawer, Report& report) {
    double thinnest = std::min(drawer.side_thickness_mm(), drawer.front_thickness_mm());
    if (drawer.asked.captured) thinnest = std::min(thinnest, drawer.back_thickness_mm());
    if (drawer.left_shape.groove.depth_mm > thinnest / 2 + report.tolerance_mm())
        report.say(Kind::measure, drawer.name, "the groove is deeper than half the thinnest part");
}

// Across each groove, half-way in as far as the bottom reaches.
void check_thickness_play(const Assembly& drawer, Report& report) {
    const Block& bottom = drawer.bottom.hull;
    const double middle_x = drawer.box.width_mm / 2;
    const double middle_y = drawer.box.depth_mm / 2;
    const double front_inside_y = drawer.front_face_y_mm + drawer.front_thickness_mm();
    const double back_inside_y = drawer.back_face_y_mm - drawer.back_thickness_mm();
    const double right_inside_x = drawer.box.width_mm - drawer.side_thickness_mm();
    const auto same = [&](const char* where, const Solid& part, double x, double y) {
        report.same(Kind::measure, drawer.name, std::string("bottom's clearance in the ") + where + " groove",
                    play_mm(part, drawer.bottom, z_axis, {x, y, 0}), drawer.fit.groove_clearance_mm);
    };
    same("left side's", drawer.left, (drawer.side_thickness_mm() + bottom.low[x_axis]) / 2, middle_y);
    same("right side's", drawer.right, (right_inside_x + bottom.high[x_axis]) / 2, middle_y);
    same("front's", drawer.front, middle_x, (front_inside_y + bottom.low[y_axis]) / 2);
    if (drawer.asked.captured)
        same("back's", drawer.back, middle_x, (back_inside_y + bottom.high[y_axis]) / 2);
}

double bottom_z_mm(const Assembly& drawer) {
    return drawer.left_shape.groove.from_mm + drawer.pieces.bottom->part.thickness_mm / 2;
}

void check_slack_across(const Assembly& drawer, Report& report) {
    const Point line{0, drawer.box.depth_mm / 2, bottom_z_mm(drawer)};
    const double left = gap_mm(drawer.left, drawer.bottom, x_axis, line);
    const double right = gap_mm(drawer.bottom, drawer.right, x_axis, line);
    report.same(Kind::measure, drawer.name, "bottom's slack across", left + right,
                drawer.fit.bottom_slack_mm);
}

// From the floor of the front's groove to the back's outside face, or to the floor of the back's groove where it is captured.
void check_slack_back(const Assembly& drawer, Report& report) {
    const double z = bottom_z_mm(drawer);
    const Point line{drawer.box.width_mm / 2, 0, drawer.asked.captured ? z : drawer.line_z_mm()};
    const double limit = drawer.asked.captured ? first_wood_mm(drawer.back, y_axis, line)
                                               : last_wood_mm(drawer.back, y_axis, line);
    const double slack = limit - last_wood_mm(drawer.bottom, y_axis, {line[0], 0, z});
    const double asked = drawer.fit.bottom_slack_mm;
    const double more =
        drawer.asked.bottom.board.solid ? most_movement * drawer.pieces.bottom->part.width_mm : 0;
    report.within(Kind::measure, drawer.name, "bottom's slack from front to back", slack,
                  {asked, asked + more});
}

void check_back_edge(const Assembly& drawer, Report& report) {
    // In the outer half of its thickness, where no groove is.
    const double y = drawer.back_face_y_mm - drawer.back_thickness_mm() / 4;
    const double edge = first_wood_mm(drawer.back, z_axis, {drawer.box.width_mm / 2, y, 0});
    const double asked = drawer.asked.captured ? 0 : drawer.left_shape.groove.to_mm;
    report.same(Kind::measure, drawer.name, "back's bottom edge", edge, asked);
}

}  // namespace

void measure_bottom(const Assembly& drawer, Report& report) {
    check_grooves_alike(drawer, report);
    check_groove_depth(drawer, report);
    check_thickness_play(drawer, report);
    check_slack_across(drawer, report);
    check_slack_back(drawer, report);
    check_back_edge(drawer, report);
}

}  // namespace checker
