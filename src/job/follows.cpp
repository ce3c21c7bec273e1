#include "job/follows.h"

#include <algorithm>

namespace kw {
namespace {

bool are_cut_by(const JointKeys& keys, const std::string& key) { return keys.slot == key || keys.end == key; }

// Whether every joint that is cut by this group of the drawer's back leaves its depth to the same front.
bool follows_alone(const Design& design, const DrawerDesign& drawer, const std::string& key) {
    return std::all_of(design.drawers.begin(), design.drawers.end(), [&](const DrawerDesign& other) {
        if (are_cut_by(other.front_keys, key)) return false;
        if (!are_cut_by(other.back_keys, key)) return true;
        return other.back_follows_front && other.front_keys.slot == drawer.front_keys.slot;
    });
}

// Slot and tongue, or neither: a tongue that stays while its slot follows would not go home.
bool follows_alone(const Design& design, const DrawerDesign& drawer) {
    const JointKeys& keys = drawer.back_keys;
    return follows_alone(design, drawer, keys.slot) &&
           (keys.end.empty() || follows_alone(design, drawer, keys.end));
}

void set_tongue_length(Settings& settings, Length length) {
    const Length spacer = settings.fence + settings.kerf - length;
    const bool by_spacer = settings.spacer > Length{} && spacer >= Length{};
    if (!by_spacer) settings.fence = length - settings.kerf;
    settings.spacer = by_spacer ? spacer : Length{};
}

}  // namespace

const DrawerDesign* leader_of(const Design& design, const Group& group) {
    for (const DrawerDesign& drawer : design.drawers)
        if (drawer.back_follows_front && are_cut_by(drawer.back_keys, group.key) &&
            follows_alone(design, drawer))
            return &drawer;
    return nullptr;
}

Group with_reach(Group group, Length reach) {
    JointDesign& joint = group.work.chosen.joint;
    if (group.cuts_slot && group.cuts_end) {
        if (reach > joint.slot().depth) return group;
        joint.end_relief = joint.slot().depth - reach;
    }
    joint.reach = reach;
    for (Cut& cut : joint.cuts)
        (cut.member == Member::receiver ? cut.depth : cut.width) =
            cut.member == Member::receiver ? reach + joint.end_relief : reach;
    for (Settings* settings : {&group.designed, &group.stands}) {
        if (group.cuts_slot) settings->height = reach + joint.end_relief;
        if (group.cuts_end) set_tongue_length(*settings, reach);
    }
    return group;
}

}  // namespace kw
