#include "job/drawer_checks.h"

#include <algorithm>
#include <utility>

#include "job/opening_field.h"
#include "words/names.h"

namespace kw {
namespace {

constexpr Length least_back = Length::millimetres(20);

// "front's tongue", "front", "sides"
Message tongue_word(const char* which) { return Message::name("job.tongue.", which); }
Message part_word(const char* which) { return Message::name("job.part.", which); }

void check_groove(const DrawerDesign& drawer, const ChosenJoint& joint, const char* which,
                  const std::string& at, std::vector<Problem>& problems) {
    if (!has_tongue(joint.joint)) return;
    const Length tongue = tongue_of(joint.joint);
    const Length groove = drawer.bottom.joint.slot().depth;
    if (groove <= tongue + groove_past_tongue) return;
    problems.push_back({at + "/bottom/depth",
                        Message::say("job.groove_through_tongue", groove, tongue_word(which), tongue),
                        Message::say("job.groove_or_wider_dado", tongue)});
}

std::string width_field(const DrawerDesign& drawer, const std::string& at, const char* name) {
    return at + size_field(*drawer.spec, name);
}

void check_back_width(const DrawerDesign& drawer, const std::string& at, std::vector<Problem>& problems) {
    const Cut& groove = drawer.bottom.joint.slot();
    if (drawer.box.height - groove.far() >= least_back) return;
    problems.push_back({width_field(drawer, at, "height"),
                        Message::say("job.no_back_above_groove", drawer.box.height, groove.far()),
                        Message::say("job.box_at_least_high", groove.far() + least_back)});
}

void check_bottom_depth(const DrawerDesign& drawer, const std::string& at, std::vector<Problem>& problems) {
    const Length taken = drawer.back.joint.step + drawer.thickness.back + drawer.thickness.front;
    if (drawer.box.depth - taken >= least_back) return;
    problems.push_back({width_field(drawer, at, "depth"),
                        Message::say("job.no_inside_left", taken, drawer.box.depth),
                        Message::say("job.box_at_least_deep", taken + least_back)});
}

void check_face(const DrawerDesign& drawer, const std::string& at, std::vector<Problem>& problems) {
    const FaceSpec& face = drawer.spec->face;
    if (face.style != FaceStyle::inset || !drawer.spec->opening || face.in_bank) return;
    const auto check = [&](Length size, Length gaps, const char* way, const char* gap) {
        if (size - gaps >= least_back) return;
        problems.push_back({at + "/face/" + gap,
                            Message::say(std::string("job.gaps_leave_no_face.") + way, gaps, size),
                            Message::say("job.gaps_less")});
    };
    check(face_opening(*drawer.spec).width, face.left + face.right, "wide", "left");
    check(face_opening(*drawer.spec).height, face.top + face.bottom, "high", "top");
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
             Message::say("job.part_too_short", part_word(part), length, machine.name, machine.least_part),
             Message::say("job.longer_board")});
        return true;
    };
    const Machine& for_front = drawer.front.joint.insert_cut() ? drawer.front.machine : drawer.bottom.machine;
    const Machine& for_back = drawer.back.joint.insert_cut() ? drawer.back.machine : drawer.bottom.machine;
    if (!check(front, for_front, "front", "width")) check(back, for_back, "back", "width");
    if (!check(drawer.box.depth, drawer.front.machine, "side", "depth"))
        check(drawer.box.depth, drawer.back.machine, "side", "depth");
}

void note_cut_tongue(const DrawerDesign& drawer, const ChosenJoint& chosen, const char* which,
                     std::vector<Note>& notes) {
    if (!has_tongue(chosen.joint)) return;
    const Length groove = drawer.bottom.joint.slot().depth, tongue = tongue_of(chosen.joint);
    if (groove >= tongue)
        notes.push_back({Level::note, drawer.spec->name,
                         Message::say("job.tongue_gone", groove, tongue_word(which), tongue)});
    else if (tongue - groove < least_left)
        notes.push_back({Level::note, drawer.spec->name,
                         Message::say("job.tongue_left", groove, tongue - groove, tongue_word(which))});
}

// A groove no deeper than the laps ends in a rabbet at each corner, where nothing of it is seen.
void note_groove_past_lap(const DrawerDesign& drawer, std::vector<Note>& notes) {
    const JointDesign& front = drawer.front.joint;
    const Length groove = drawer.bottom.joint.slot().depth, lap = front.slot().depth;
    if (has_lap(front) && groove > lap)
        notes.push_back({Level::note, drawer.spec->name, Message::say("job.groove_past_lap", groove, lap)});
}

void note_thin_web(const DrawerDesign& drawer, const ChosenJoint& chosen, const char* which,
                   const char* boards, Length thickness, std::vector<Note>& notes) {
    const Cut& slot = chosen.joint.slot();
    if (has_fingers(chosen.joint) || thickness - slot.depth >= least_left) return;
    notes.push_back({Level::note, drawer.spec->name,
                     Message::say("job.thin_web", part_word(which), Message::shown(work_word, slot.name),
                                  thickness - slot.depth, part_word(boards))});
}

}  // namespace

std::vector<Note> notes_on(const DrawerDesign& drawer) {
    std::vector<Note> notes;
    const bool captured = drawer.spec->bottom.style == BottomStyle::captured;
    note_cut_tongue(drawer, drawer.front, "front", notes);
    if (captured) note_cut_tongue(drawer, drawer.back, "back", notes);
    note_groove_past_lap(drawer, notes);
    note_thin_web(drawer, drawer.front, "front", "sides", drawer.thickness.sides, notes);
    note_thin_web(drawer, drawer.back, "back", "sides", drawer.thickness.sides, notes);
    note_thin_web(drawer, drawer.bottom, "bottom", "sides", drawer.thickness.sides, notes);
    note_thin_web(drawer, drawer.bottom, "bottom", "front", drawer.thickness.front, notes);
    if (captured) note_thin_web(drawer, drawer.bottom, "bottom", "back", drawer.thickness.back, notes);
    return notes;
}

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
