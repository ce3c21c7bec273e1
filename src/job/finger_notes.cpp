#include "job/finger_notes.h"

#include <algorithm>

#include "job/drawer_groups.h"
#include "joint/fingers.h"

namespace kw {
namespace {

// A hole no higher than this is no more than a glue line, and is not plugged (common practice, no source).
constexpr Length nick = Length::micrometres(500);

// The sides' row: a finger from 0 on, then a socket, which a finger of the other board fills.
struct SideRow {
    Length finger, socket;

    bool operator==(const SideRow&) const = default;
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
    bool touches_finger(Length near, Length width) const {
        return finger - within(near) > nick || within(near) + width - pitch() > nick;
    }
    bool touches_socket(Length near, Length width) const {
        return within(near) + width - finger > nick && pitch() - within(near) > nick;
    }
};

// Where the sides meet a front or a back with fingers, and how high these boards are when they are cut: a band comes on later.
struct Corner {
    bool is_front = false;
    SideRow row;
    Length sides, other;
};

std::vector<Corner> corners_of(const Job& job, const DrawerDesign& drawer) {
    const DrawerSpec& spec = *drawer.spec;
    std::vector<Corner> corners;
    for (const bool is_front : {true, false}) {
        const JointDesign& joint = (is_front ? drawer.front : drawer.back).joint;
        if (!has_fingers(joint)) continue;
        corners.push_back(
            {is_front,
             {joint.slot().near, joint.slot().width},
             cut_height(drawer, *job.stock_named(spec.side_stock)),
             cut_height(drawer, *job.stock_named(is_front ? spec.front.stock : spec.back.stock))});
    }
    return corners;
}

class FingerNotes {
public:
    FingerNotes(const DrawerDesign& drawer, std::vector<Corner> corners)
        : drawer_(drawer), corners_(std::move(corners)) {}

    std::vector<Note> all() {
        if (corners_.empty()) return {};
        note_tops();
        note_groove();
        note_play();
        return std::move(notes_);
    }

private:
    void say(Level level, Message text) { notes_.push_back({level, drawer_.spec->name, std::move(text)}); }

    bool corners_are_alike() const { return corners_.front().row == corners_.back().row; }
    const Corner* corner(bool is_front) const {
        for (const Corner& one : corners_)
            if (one.is_front == is_front) return &one;
        return nullptr;
    }

    // The highest box that goes in, where that is known.
    std::optional<Length> most() const {
        const DrawerSpec& spec = *drawer_.spec;
        if (!spec.opening) return std::nullopt;
        return spec.opening->height - spec.slide.top - spec.slide.bottom;
    }

    // Of a board so high as it is cut, whose fingers at the top are the sides' or the other board's.
    void note_top(const Corner& corner, Length height, bool of_sides) {
        const Length below = corner.row.boundary_below(height), last = height - below;
        if ((corner.row.within(below) == Length{}) != of_sides) return;
        if (last <= splinter || last >= least_tongue) return;
        const bool is_told = std::find(tops_.begin(), tops_.end(), below) != tops_.end();
        if (is_told && corners_are_alike()) return;
        tops_.push_back(below);
        const Length band = drawer_.box.height - height;
        const Length lower = below + band, higher = corner.row.boundary_above(height) + band;
        Message text = Message::say("job.top_finger", last, lower, higher);
        if (most() && higher > *most()) text = Message::say("job.top_finger_lower", last, lower, *most());
        if (!corners_are_alike())
            text = Message::say(corner.is_front ? "job.fingers_in_front" : "job.fingers_behind", text);
        say(Level::warning, std::move(text));
    }
    void note_tops() {
        for (const Corner& corner : corners_) {
            note_top(corner, corner.sides, true);
            note_top(corner, corner.other, false);
        }
    }

    bool is_open_in_front() const { return corner(true) && drawer_.spec->face.style == FaceStyle::none; }

    // Whether a groove so far up is seen nowhere but where a face covers it, or behind; without a face, nowhere in front.
    bool is_better(Length near, Length width) const {
        return std::all_of(corners_.begin(), corners_.end(), [&](const Corner& one) {
            return is_open_in_front() ? !one.is_front || !one.row.touches_finger(near, width)
                                      : !one.row.touches_socket(near, width);
        });
    }

    // The nearest such place up or down.
    std::optional<Length> better_offset(Length near, Length width) const {
        std::optional<Length> best;
        const auto look_at = [&](Length offset) {
            if (offset < least_under_groove || offset + width + least_above_groove > drawer_.box.height)
                return;
            if (!is_better(offset, width)) return;
            if (!best || abs(offset - near) <= abs(*best - near)) best = offset;
        };
        for (const Corner& one : corners_)
            for (Length begins; begins < drawer_.box.height; begins += one.row.pitch()) {
                const Length socket = begins + one.row.finger, next = begins + one.row.pitch();
                for (const Length offset : {next, next - width, socket, socket - width}) look_at(offset);
            }
        return best;
    }

    void note_holes_in_sides(Length depth, bool in_front, bool behind) {
        if (!in_front && !behind) return;
        say(Level::note, Message::say(!behind     ? "job.groove_in_fingers.side"
                                      : !in_front ? "job.groove_in_fingers.side_behind"
                                                  : "job.groove_in_fingers.side_both",
                                      depth));
    }

    void note_groove() {
        const Cut& groove = drawer_.bottom.joint.slot();
        const Length near = groove.near, width = groove.width;
        const auto in_socket = [&](const Corner* one) { return one && one->row.touches_socket(near, width); };
        const auto in_finger = [&](const Corner* one) { return one && one->row.touches_finger(near, width); };
        const Corner *front = corner(true), *back = corner(false);
        note_holes_in_sides(groove.depth, in_socket(front), in_socket(back));
        if (in_finger(front))
            say(Level::note, Message::say(is_open_in_front() ? "job.groove_in_fingers.front"
                                                             : "job.groove_in_fingers.covered",
                                          groove.depth));
        if (in_finger(back)) say(Level::note, Message::say("job.groove_in_fingers.back", groove.depth));
        if (!is_better(near, width)) note_offset(near, width);
    }

    void note_offset(Length near, Length width) {
        const auto better = better_offset(near, width);
        const bool open = is_open_in_front();
        if (better)
            say(Level::note,
                Message::say(open ? "job.groove_in_fingers.offset_open" : "job.groove_in_fingers.offset",
                             *better, near));
        else
            say(Level::note, Message::say(open ? "job.groove_in_fingers.no_offset_open"
                                               : "job.groove_in_fingers.no_offset",
                                          width));
    }

    // Pushed to one side and to the other, a board is set over by as much more or less as the pin has play.
    void note_play() {
        int most = 0;
        for (const Corner& one : corners_)
            most = std::max(most, sockets_up(one.row.finger, one.row.pitch(), one.sides));
        say(Level::note, Message::say("job.push_to_pin", most));
    }

    // Less wood than this under a groove breaks away, and above it holds no bottom (common practice, no source).
    static constexpr Length least_under_groove = Length::inches(1, 4),
                            least_above_groove = least_under_groove;

    const DrawerDesign& drawer_;
    std::vector<Corner> corners_;
    std::vector<Length> tops_;  // where those begin that were told of
    std::vector<Note> notes_;
};

}  // namespace

std::vector<Note> finger_notes(const Job& job, const DrawerDesign& drawer) {
    return FingerNotes(drawer, corners_of(job, drawer)).all();
}

}  // namespace kw
