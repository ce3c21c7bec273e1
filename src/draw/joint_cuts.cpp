#include "draw/joint_cuts.h"

#include <array>

namespace kw::draw {
namespace {

Removal cut_slot(const Group& group, const Settings& settings) {
    return group.slot_is_open() ? end_removal(settings, group.slot().down)
                                : slot_removal(settings, group.slot().down);
}

Length depth_of_reach(const JointCuts& cuts) { return cuts.end ? cuts.end->far : cuts.reach; }

// How far the closed joint is from what was asked, largest first to be wrong.
Length largest_error(const ClosedJoint& joint, const JointCuts& cuts) {
    const Length fit = abs(joint.fit.value_or(Length{}));
    return max(max(fit, joint.shoulder_gap.value_or(Length{})), abs(joint.face_step - cuts.step));
}

Length shown_for_measuring(const JointCuts& cuts) {
    return 2 * (cuts.slot.far + cuts.receiver_thickness + cuts.insert_thickness + depth_of_reach(cuts));
}

void move_slot(JointCuts& cuts, Length by) {
    if (cuts.slot.near > Length{}) cuts.slot.near += by;
    cuts.slot.far += by;
}

}  // namespace

const Group* end_group_of(const Work& work, const Group& group) {
    for (const DrawerDesign& drawer : work.standing_design.drawers)
        for (const JointKeys* keys : {&drawer.front_keys, &drawer.back_keys, &drawer.bottom_keys})
            if (keys->slot == group.key && !keys->end.empty())
                return work.standing_design.group_with_key(keys->end);
    return nullptr;
}

JointCuts joint_cuts(const Work& work, const Group& group, const Settings& settings) {
    const JointDesign& joint = group.work.chosen.joint;
    JointCuts cuts;
    cuts.receiver_thickness = group.work.receiver_thickness;
    cuts.insert_thickness = group.work.insert_thickness;
    cuts.seat = joint.seat;
    cuts.reach = joint.reach;
    cuts.step = joint.step;
    cuts.step_is_place = joint.step_is_place;

    const Group* slot_group = group.cuts_slot ? nullptr : partner_of(work.standing_design, group);
    cuts.slot = slot_group ? cut_slot(*slot_group, slot_group->stands) : cut_slot(group, settings);
    if (!joint.insert_cut()) return cuts;
    const Group* end_group = group.cuts_end ? nullptr : end_group_of(work, group);
    cuts.end = end_removal(end_group ? end_group->stands : settings, joint.insert_cut()->down);
    return cuts;
}

std::optional<ClosedJoint> closed(const JointCuts& cuts, Length shown) {
    std::vector<Removal> end;
    if (cuts.end) end.push_back(*cuts.end);
    return close_joint(cut_section(Member::receiver, cuts.receiver_thickness, shown, {cuts.slot}),
                       cut_section(Member::insert, cuts.insert_thickness, shown, end), cuts.seat, cuts.reach);
}

JointCuts exaggerated(const JointCuts& cuts, int times) {
    const auto joint = closed(cuts, shown_for_measuring(cuts));
    if (!joint || times < 2) return cuts;
    JointCuts large = cuts;
    const Length thinner = (times - 1) * joint->fit.value_or(Length{});
    if (large.end) {
        large.end->depth += thinner;
        large.end->far += (times - 1) * joint->shoulder_gap.value_or(Length{});
    } else {
        large.insert_thickness -= thinner;
    }
    const auto again = closed(large, shown_for_measuring(cuts));
    if (!again) return cuts;
    move_slot(large, cuts.step + times * (joint->face_step - cuts.step) - again->face_step);
    return large;
}

int fitting_exaggeration(const JointCuts& cuts) {
    const auto joint = closed(cuts, shown_for_measuring(cuts));
    if (!joint) return 1;
    return fitting_times(largest_error(*joint, cuts), min(joint->slot_width, joint->slot_depth).scaled(1, 5));
}

int fitting_times(Length error, Length room) {
    constexpr std::array<int, 6> larger{50, 20, 10, 5, 3, 2};
    for (const int times : larger)
        if (times * error <= room) return times;
    return 1;
}

}  // namespace kw::draw
