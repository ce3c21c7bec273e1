#pragma once
// A group: the cuts of one joint that share a locked fence and height, over the whole batch. It is what is tested, corrected
// and locked as one. Its setups follow from its settings.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "joint/fingers.h"
#include "setup/choose_cutter.h"

namespace kw {

enum class Reference { left_end, right_end, front_end, rear_end, bottom_edge, top_edge };

// "left end" and so on: as in plan files.
std::string_view name_of(Reference reference);
std::string_view name_of(BoardFace face);

std::optional<Reference> reference_named(std::string_view name);
// The other end, or the other edge.
Reference opposite(Reference reference);

// One end or edge of one part.
struct PartEnd {
    std::string part;
    Reference reference = Reference::left_end;
    Length up =
        {};  // how far the end reaches from the bottom edge, where that was asked for: a row of sockets runs so far
    bool operator==(const PartEnd&) const = default;
};

// What one joint of one drawer, all copies, asks of the machines.
struct JointWork {
    ChosenJoint chosen;
    std::string label;  // "locking rabbet", "back dado": leads each setup's `work`
    Length receiver_thickness;
    Length insert_thickness;
    Length insert_uneven;        // one sigma, of one piece of that stock against another
    std::string receiver_stock;  // for telling groups apart by what is tested on
    std::string insert_stock;
    std::vector<PartEnd> receivers;
    std::vector<PartEnd> inserts;
    std::string guide;  // "miter gauge" for ends, "rip fence" for edges, "indexing jig" for fingers
};

struct Group {
    std::string id;         // "G1"
    std::string key;        // the same for the same work however the plan is numbered; the log names it
    JointWork work;         // merged over all joints with equal settings
    bool cuts_slot = true;  // the receiver's cut is made here
    bool cuts_end = false;  // the insert's cut is made here
    std::string row_of;     // key of the group whose row it stands in: see follows_pin(); empty: of none
    Settings designed;
    Settings stands;  // as tested and locked; the designed ones before the first test cut

    const Cut& slot() const { return work.chosen.joint.slot(); }
    bool slot_is_open() const { return slot().near == Length{}; }
    // From one socket of a row to the next: the board is set over by a finger and a socket.
    Length pitch() const { return max(stands.fence + stands.kerf, least_pitch); }
    // How many passes the slot takes by these settings: as planned, or more where a test cut has asked for them.
    int slot_passes() const;
};

// Whether it is a row of sockets that is cut with pin and cutter as another row has left them, at a height of its own: by one pin all
// boards' fingers come to stand in each other's sockets, and where it is locked it is left.
bool follows_pin(const Group& group);

// Gives each row of fingers the one that it follows: of those by one setting of the pin the one begun first, by their keys in `begun`; of a
// row that is not begun the first of the sides'.
void lead_rows(std::vector<Group>& groups, const std::vector<std::string>& begun = {});

// Of the board that what this group cuts has to take: the insert; of an insert's own row of sockets, through which the receiver's fingers
// come, the receiver.
Length entering_thickness(const Group& group);

// These settings with what follows from others in a row of fingers: its spacer is one finger, and pin and cutter stand as in `leads`,
// the group whose row it is in (nullptr: its own). Of all other joints, as they are.
Settings in_row(Settings settings, const Group& group, const Group* leads);

// One group, or two where slot and insert's cut need different heights.
std::vector<Group> groups_of(const JointWork& work);

// Groups with equal settings become one; parts keep their order. Ids are given in the order in which they come.
std::vector<Group> merge_groups(const std::vector<Group>& groups);

}  // namespace kw
