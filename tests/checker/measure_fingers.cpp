#include <algorithm>

#include "checker/lines.h"
#include "checker/measure.h"

namespace checker {
namespace {

// What is left between the sockets, up the end.
std::vector<Span> fingers_between(const Sockets& sockets, double height_mm) {
    constexpr double splinter_mm = 0.003;
    std::vector<Span> fingers;
    double at = 0;
    for (const Slot& socket : sockets) {
        if (socket.from_mm - at > nothing_mm) fingers.push_back({at, socket.from_mm});
        at = socket.to_mm;
    }
    if (height_mm - at > splinter_mm) fingers.push_back({at, height_mm});
    return fingers;
}

struct Corner {
    const Assembly& drawer;
    std::string name;
    Report& report;

    void same(const std::string& what, double is_mm, double asked_mm) const {
        report.same(Kind::measure, drawer.name, name + " " + what, is_mm, asked_mm);
    }
    void say(const std::string& what) const { report.say(Kind::measure, drawer.name, name + " " + what); }

    // Every finger has its socket, and beside it the clearance in all; the last may run out at the top.
    void fit(const char* whose, const std::vector<Span>& fingers, const Sockets& sockets) const {
        const double height = drawer.box.height_mm;
        for (const Span& finger : fingers) {
            const auto socket = std::find_if(sockets.begin(), sockets.end(), [&](const Slot& one) {
                return one.from_mm <= finger.from + report.tolerance_mm() &&
                       one.to_mm >= finger.to - report.tolerance_mm();
            });
            if (socket == sockets.end()) {
                say(std::string(whose) + " have a finger that has no socket");
                continue;
            }
            if (finger.to > height - drawer.fit.clearance_mm - report.tolerance_mm()) continue;
            same(std::string(whose) + " finger's clearance", socket->width_mm() - (finger.to - finger.from),
                 drawer.fit.clearance_mm);
        }
    }

    // All but the last are alike, and stand alike far from each other.
    void row(const char* whose, const Sockets& sockets) const {
        for (std::size_t i = 1; i < sockets.size(); ++i) {
            if (i + 1 < sockets.size())
                same(std::string(whose) + " socket's width", sockets[i].width_mm(), sockets[0].width_mm());
            if (i > 1)
                same(std::string(whose) + " socket's distance", sockets[i].from_mm - sockets[i - 1].from_mm,
                     sockets[1].from_mm - sockets[0].from_mm);
        }
    }

    void deep(const char* whose, const Sockets& sockets, double asked_mm) const {
        for (const Slot& socket : sockets)
            same(std::string(whose) + " socket's depth", socket.depth_mm, asked_mm);
    }
};

}  // namespace

void measure_fingers(const Assembly& drawer, bool at_back, Report& report) {
    const double step = drawer.fit.step_mm, height = drawer.box.height_mm;
    const double thickness = at_back ? drawer.back_thickness_mm() : drawer.front_thickness_mm();
    const CrossShape& cross = at_back ? drawer.back_shape : drawer.front_shape;
    const Solid& solid = at_back ? drawer.back : drawer.front;
    for (const bool at_left : {true, false}) {
        const SideShape& side = at_left ? drawer.left_shape : drawer.right_shape;
        const Sockets& in_side = at_back ? side.back_sockets : side.front_sockets;
        const Sockets& in_cross = at_left ? cross.left_sockets : cross.right_sockets;
        const Corner corner{
            drawer, std::string(at_back ? "back's " : "front's ") + (at_left ? "left" : "right"), report};
        if (in_side.front().from_mm < nothing_mm || in_cross.front().from_mm > nothing_mm)
            corner.say("begins with no finger of the side at the bottom edge");
        corner.fit("sides'", fingers_between(in_side, height), in_cross);
        corner.fit("crossing", fingers_between(in_cross, height), in_side);
        corner.row("sides'", in_side);
        corner.row("crossing", in_cross);
        corner.deep("sides'", in_side, thickness + step);
        corner.deep("crossing", in_cross, drawer.side_thickness_mm() + step);
        // Half-way up the highest whole finger that crosses, above the groove.
        const Slot& high = in_side.size() > 1 ? in_side[in_side.size() - 2] : in_side.front();
        const double z = (high.from_mm + high.to_mm) / 2;
        const double y =
            (at_back ? drawer.back_face_y_mm - thickness / 4 : drawer.front_face_y_mm + thickness / 4);
        const double proud = at_left ? -first_wood_mm(solid, x_axis, {0, y, z})
                                     : last_wood_mm(solid, x_axis, {0, y, z}) - drawer.box.width_mm;
        corner.same("fingers proud", proud, step);
        const Solid& side_solid = at_left ? drawer.left : drawer.right;
        const double x =
            at_left ? drawer.side_thickness_mm() / 2 : drawer.box.width_mm - drawer.side_thickness_mm() / 2;
        const double gap = at_back ? gap_mm(side_solid, solid, y_axis, {x, 0, z})
                                   : gap_mm(solid, side_solid, y_axis, {x, 0, z});
        corner.same("gap at the sockets' floor", gap, 0);
    }
}

}  // namespace checker
