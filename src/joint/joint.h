#pragma once
// A joint is data: which cuts each member gets, how far the insert reaches into the receiver, and what it rests
// against when it is closed. The geometry of each kind is derived in its own file. No screen and no setup code
// knows one kind from another.
//
// The receiver is the board with the slot in it (a side, for the front and the back; every board with the groove,
// for the bottom). The insert is the board that enters the slot.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "joint/section.h"
#include "length/message.h"

namespace kw {

enum class Member { receiver, insert };
enum class BoardFace { inside, outside };

// Wood to be taken away: from the member's reference end or edge, the span [near, near + width], from the
// face that lies down to `depth`, along the whole end or edge.
// With a pitch it is the first of a row of sockets: the board stands on its end, `near` and `width` run along that end from the
// bottom edge, `depth` into the board from the end, through its whole thickness, and each next socket lies a pitch farther.
struct Cut {
    Member member = Member::receiver;
    BoardFace down = BoardFace::inside;
    Length near;
    Length width;
    Length depth;
    std::string name;  // in the trade's words: "side dado", "front rabbet"
    std::optional<Length> pitch = std::nullopt;

    Length far() const { return near + width; }
    bool operator==(const Cut&) const = default;
};

// Which wall of the slot the insert rests against when the joint is closed: the one nearer to the receiver's
// reference end or edge, or the one farther away.
enum class Seat { near_wall, far_wall };

struct JointDesign {
    std::string kind;  // the name in job files: "locking rabbet"
    std::vector<Cut> cuts;
    Length reach;  // how far the insert enters, measured from the receiver's inside face
    Seat seat = Seat::near_wall;
    Length clearance;   // asked: slot width less what enters it
    Length end_relief;  // asked: slot depth less reach
    Length step;        // asked: how far the receiver's end stands proud of the insert's outside face
    // The step only says where the insert stands (a back at its setback): no face to be flush with.
    bool step_is_place = false;
    bool sets_length = false;  // the insert is cut to length only when this joint has been locked
    std::vector<Message> remarks;

    const Cut& slot() const;        // the receiver's cut
    const Cut* insert_cut() const;  // the insert's, or nullptr where the insert enters as it is
};

// What a maker asks of a joint. Lengths are measured ones; what the maker left open is filled by the kind.
struct JointAsk {
    Length receiver_thickness;
    Length insert_thickness;
    std::optional<Length> slot_width;  // of a dado that takes a tongue, usually the cutter's kerf
    std::optional<Length> depth;       // of the receiver's slot
    Length near;                       // setback of a back, offset of a bottom
    Length clearance;
    Length end_relief;
    Length step;
    Length kerf;    // of the cutter that is looked at
    Length height;  // of the least board that the joint runs up; zero: not known
};

using JointResult = tl::expected<JointDesign, Refusal>;

// What must be left of a board under a slot: a third of its thickness (common practice, no source).
Length least_web(Length thickness);

// A tongue or a lip thinner than this breaks in handling (common practice, no source).
inline constexpr Length least_tongue = Length::micrometres(1500);

// Refuses a slot that leaves less than least_web of the receiver; `field` is blamed.
std::optional<Refusal> check_web(Length receiver_thickness, Length depth, const char* field);

enum class Place { front, back, bottom };

struct JointType {
    std::string_view name;
    std::vector<Place> places;
    bool width_from_cutter = false;  // the slot may be as wide as the cutter; otherwise the insert sets it
    bool has_relief = false;  // the insert stays clear of the slot's floor; otherwise it goes right to it
    bool at_the_end = false;  // the slot begins at the receiver's end: no wood of it stands beyond the insert
    bool width_is_cutter = false;  // the slot is as wide as the cutter, whatever the boards are
    bool runs_up =
        false;  // along an upright end, both boards of one height: a bottom under the back won't do
    bool depth_follows = false;  // a back's depth, left open, follows the front; otherwise the joint sets it
    std::string_view or_else = {};  // the kind that is cut instead where that takes less time
    JointResult (*design)(const JointAsk&);
};

// Whether the insert's ends are cut from their inside face: what is left is a lap on the outside, and no tongue.
inline bool has_lap(const JointDesign& joint) {
    return joint.insert_cut() && !joint.slot().pitch && joint.insert_cut()->down == BoardFace::inside;
}

// Whether the boards go into each other by a row of fingers.
inline bool has_fingers(const JointDesign& joint) { return joint.slot().pitch.has_value(); }

// Whether a tongue is left on the inside of the insert's ends, where a groove in that face crosses it.
inline bool has_tongue(const JointDesign& joint) {
    return joint.insert_cut() && !has_lap(joint) && !has_fingers(joint);
}

// How thick it is, for a joint with a tongue.
inline Length tongue_of(const JointDesign& joint) { return joint.slot().width - joint.clearance; }

const std::vector<JointType>& joint_types();
const JointType* find_joint_type(std::string_view name, Place place);

// "`locking rabbet` or `rabbet`": the kinds that can stand in a place, for messages.
Message joint_names_for(Place place);

}  // namespace kw
