#include "job/drawer_checks.h"

#include <algorithm>

namespace kw {
namespace {

constexpr Length least_back = Length::millimetres(20);

void check_groove(const DrawerDesign& drawer, const ChosenJoint& joint, const char* which,
                  const std::string& at, std::vector<Problem>& problems) {
    if (!joint.joint.insert_cut()) return;
    const Length tongue = tongue_of(joint.joint);
    const Length groove = drawer.bottom.joint.slot().depth;
    if (groove <= tongue + groove_past_tongue) return;
    problems.push_back({at + "/bottom/depth",
                        Message::of("a groove ", groove, " deep goes through the ", which,
                                    "'s tongue, which is ", tongue, " thick"),
                        Message::of("make the groove at most ", tongue, " deep, or the dado wider")});
}

std::string width_field(const DrawerDesign& drawer, const std::string& at, const char* name) {
    return at + (drawer.spec->box ? "/box/" : "/opening/") + name;
}

void check_back_width(const DrawerDesign& drawer, const std::string& at, std::vector<Problem>& problems) {
    const Cut& groove = drawer.bottom.joint.slot();
    if (drawer.box.height - groove.far() >= least_back) return;
    problems.push_back(
        {width_field(drawer, at, "height"),
         Message::of("a box ", drawer.box.height, " high leaves no back above a groove whose top is at ",
                     groove.far()),
         Message::of("make the box at least ", groove.far() + least_back, " high, or the offset less")});
}

void check_bottom_depth(const DrawerDesign& drawer, const std::string& at, std::vector<Problem>& problems) {
    const Length taken = drawer.back.joint.step + drawer.thickness.back + drawer.thickness.front;
    if (drawer.box.depth - taken >= least_back) return;
    problems.push_back(
        {width_field(drawer, at, "depth"),
         Message::of("front, back and setback take ", taken, " of a box ", drawer.box.depth, " deep"),
         Message::of("make the box at least ", taken + least_back, " deep, or the setback less")});
}

void check_face(const DrawerDesign& drawer, const std::string& at, std::vector<Problem>& problems) {
    const FaceSpec& face = drawer.spec->face;
    if (face.style != FaceStyle::inset || !drawer.spec->opening) return;
    const auto check = [&](Length size, Length gaps, const char* field, const char* gap) {
        if (size - gaps >= least_back) return;
        problems.push_back(
            {at + "/face/" + gap,
             Message::of("gaps of ", gaps, " in all leave no face in an opening ", size, " ", field),
             Message::of("make the gaps less")});
    };
    check(drawer.spec->opening->width, face.left + face.right, "wide", "left");
    check(drawer.spec->opening->height, face.top + face.bottom, "high", "top");
}

// The shortest part that a machine's operator can hold: the machine says it. A part is looked at for the machine that cuts
// its ends; where none does, for the one that cuts its groove.
void check_short_parts(const DrawerDesign& drawer, const std::string& at, std::vector<Problem>& problems) {
    const Length front = drawer.box.width - 2 * drawer.thickness.sides + 2 * drawer.front.joint.reach;
    const Length back = drawer.box.width - 2 * drawer.thickness.sides + 2 * drawer.back.joint.reach;
    const auto check = [&](Length length, const Machine& machine, const char* part, const char* field) {
        if (length >= machine.least_part) return false;
        problems.push_back(
            {width_field(drawer, at, field),
             Message::of("the ", part, " would be ", length, " long, shorter than is safe at `", machine.name,
                         "` (", machine.least_part, ")"),
             Message::of("cut its joints on a longer board, in a carrier, or make the drawer larger")});
        return true;
    };
    const Machine& for_front = drawer.front.joint.insert_cut() ? drawer.front.machine : drawer.bottom.machine;
    const Machine& for_back = drawer.back.joint.insert_cut() ? drawer.back.machine : drawer.bottom.machine;
    if (!check(front, for_front, "front", "width")) check(back, for_back, "back", "width");
    if (!check(drawer.box.depth, drawer.front.machine, "side", "depth"))
        check(drawer.box.depth, drawer.back.machine, "side", "depth");
}

}  // namespace

std::vector<Problem> check_drawer(const DrawerDesign& drawer, const std::string& at) {
    std::vector<Problem> problems;
    check_groove(drawer, drawer.front, "front", at, problems);
    if (drawer.spec->bottom.style == BottomStyle::captured)
        check_groove(drawer, drawer.back, "back", at, problems);
    check_back_width(drawer, at, problems);
    check_bottom_depth(drawer, at, problems);
    check_face(drawer, at, problems);
    check_short_parts(drawer, at, problems);
    return problems;
}

}  // namespace kw
