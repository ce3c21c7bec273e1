#pragma once
// From the job to its drawers, joints and groups, all as designed: no test cut is looked at here.

#include <map>

#include "job/job.h"

namespace kw {

// The groups that make one joint of a drawer: slot and insert's cut, the same group where one height serves both.
struct JointKeys {
    std::string slot;
    std::string end;  // empty where the insert is not cut
};

struct DrawerDesign {
    const DrawerSpec* spec = nullptr;  // into the job that was designed
    BoxSize box;
    DrawerThickness thickness;
    Length seasonal_swell;
    ChosenJoint front, back, bottom;
    JointKeys front_keys, back_keys, bottom_keys;
    bool back_follows_front = false;  // the back's depth was left open: its reach is the front's
};

struct Design {
    std::vector<DrawerDesign> drawers;
    std::vector<Group> groups;  // over the whole batch, equal ones merged
    std::vector<Note> notes;

    const Group* group_with_key(const std::string& key) const;
};

// Part names: "seeds.1.front" is the front of the first of the drawers named seeds.
std::string part_id(const DrawerSpec& drawer, int copy, Role role);

// Whether a drawer of the design has such a part.
bool has_part(const Design& design, std::string_view id);

tl::expected<Design, std::vector<Problem>> design(const Job& job);

}  // namespace kw
