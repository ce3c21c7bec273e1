#pragma once
// From the job to its drawers, joints and groups, all as designed: no test cut is looked at here but for which row of fingers was begun
// first.

#include <map>

#include "job/job.h"

namespace kw {

// The groups that make one joint of a drawer: slot and insert's cut, the same group where one height serves both.
struct JointKeys {
    std::string slot;
    std::string end;  // empty where the insert is not cut
};

// Whether the insert's sockets of a box joint have a height of their own, and so a setting that comes after the sides'.
inline bool has_row_of_its_own(const ChosenJoint& chosen, const JointKeys& keys) {
    return has_fingers(chosen.joint) && !keys.end.empty() && keys.end != keys.slot;
}

struct DrawerDesign {
    const DrawerSpec* spec = nullptr;  // into the job that was designed
    BoxSize box;
    DrawerThickness thickness;
    Length seasonal_swell;
    ChosenJoint front, back, bottom;
    JointKeys front_keys, back_keys, bottom_keys;
    bool back_follows_front = false;  // the back's depth was left open: its reach is the front's
};

// A joint, of one drawer or several, that can be cut in more than one way with what is in the shop.
struct Alternative {
    std::string id;                    // all ways' groups: the same for joints that are one work
    std::string label;                 // "back dado"
    std::vector<std::string> drawers;  // their names
    std::vector<ChosenJoint> ways;     // in the shop's order
    std::vector<JointKeys> keys;       // by way: its groups
    std::size_t picked = 0;
};

// A way in which a joint could be cut too, but with other measures, so that other work would change with it: it is not among the
// alternatives. Not those by a blade, which leaves a ragged floor.
struct LeftOut {
    std::string label;                 // "locking rabbet"
    std::vector<std::string> drawers;  // their names
    ChosenJoint way;
};

// Which way an alternative is cut, by its id. Where none is named, it is the one that would be taken if there were no other work.
using Picks = std::map<std::string, std::size_t>;

struct Design {
    std::vector<DrawerDesign> drawers;
    std::vector<Group> groups;  // over the whole batch, equal ones merged
    std::vector<Alternative> alternatives;
    std::vector<LeftOut> left_out;
    std::vector<Note> notes;

    const Group* group_with_key(const std::string& key) const;
};

// Part names: "seeds.1.front" is the front of the first of the drawers named seeds.
std::string part_id(const DrawerSpec& drawer, int copy, Role role);

// Whether a drawer of the design has such a part.
bool has_part(const Design& design, std::string_view id);

tl::expected<Design, std::vector<Problem>> design(const Job& job, const Picks& picks = {});

}  // namespace kw
