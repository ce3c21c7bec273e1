#include "job/finger_notes.h"

#include "joint/fingers.h"

namespace kw {
namespace {

// The sides' row: a finger from 0 on, then a socket, which a finger of the other board fills.
struct SideRow {
    Length finger, socket;

    Length pitch() const { return finger + socket; }
    // Below `at`, how far up the last finger or socket began.
    Length within(Length at) const { return Length::from_ticks(at.ticks() % pitch().ticks()); }
    Length boundary_below(Length at) const {
        const Length past = within(at);
        return past >= finger ? at - past + finger : at - past;
    }
    Length boundary_above(Length at) const {
        const Length past = within(at);
        if (past == Length{}) return at;
        return past <= finger ? at - past + finger : at - past + pitch();
    }
};

void note_top(const DrawerDesign& drawer, const SideRow& row, std::vector<Note>& notes) {
    const Length height = drawer.box.height, below = row.boundary_below(height);
    const Length last = height - below;
    if (last <= splinter || last >= least_tongue) return;
    notes.push_back({Level::warning, drawer.spec->name,
                     Message::say("job.top_finger", last, below, row.boundary_above(height))});
}

// Less wood than this under a groove breaks away (common practice, no source).
constexpr Length least_under_groove = Length::inches(1, 4);

// The next place up or down where the groove lies in a finger of the sides; nothing where it is wider than these.
std::optional<Length> offset_in_finger(const SideRow& row, Length near, Length width) {
    const Length room = row.finger - width;
    if (room < Length{}) return std::nullopt;
    const Length begins = near - row.within(near);
    if (row.within(near) <= room) return near;
    const Length down = begins + room, up = begins + row.pitch();
    return down >= least_under_groove && near - down <= up - near ? down : up;
}

void note_groove(const DrawerDesign& drawer, const SideRow& row, std::vector<Note>& notes) {
    const Cut& groove = drawer.bottom.joint.slot();
    const Length past = row.within(groove.near), top = past + groove.width;
    const bool in_side_finger = past < row.finger || top > row.pitch();
    const bool in_socket = top > row.finger && past < row.pitch();
    const bool is_covered = drawer.spec->face.style != FaceStyle::none;
    const auto say = [&](Message text) {
        notes.push_back({Level::note, drawer.spec->name, std::move(text)});
    };
    if (in_socket) {
        say(Message::say("job.groove_in_fingers.side", groove.depth));
        const auto better = offset_in_finger(row, groove.near, groove.width);
        if (better && is_covered) say(Message::say("job.groove_in_fingers.offset", *better, groove.near));
    }
    if (in_side_finger)
        say(Message::say(is_covered ? "job.groove_in_fingers.covered" : "job.groove_in_fingers.front",
                         groove.depth));
}

// Pushed to one side and to the other, a board is set over by as much more or less as the pin has play.
void note_play(const DrawerDesign& drawer, const Cut& sockets, std::vector<Note>& notes) {
    const int count = sockets_up(sockets.near, *sockets.pitch, drawer.box.height);
    notes.push_back({Level::note, drawer.spec->name, Message::say("job.push_to_pin", count)});
}

}  // namespace

std::vector<Note> finger_notes(const DrawerDesign& drawer) {
    std::vector<Note> notes;
    const ChosenJoint& corner = has_fingers(drawer.front.joint) ? drawer.front : drawer.back;
    if (!has_fingers(corner.joint)) return notes;
    const Cut& sockets = corner.joint.slot();
    const SideRow row{sockets.near, sockets.width};
    note_top(drawer, row, notes);
    if (&corner == &drawer.front) note_groove(drawer, row, notes);
    note_play(drawer, sockets, notes);
    return notes;
}

}  // namespace kw
