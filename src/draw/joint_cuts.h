#pragma once
// One joint as given settings cut it, ready to be closed and drawn.

#include <optional>

#include "job/work.h"
#include "joint/closed.h"

namespace kw::draw {

struct JointCuts {
    Length receiver_thickness;
    Length insert_thickness;
    Removal slot;
    std::optional<Removal> end;  // where the insert is cut too
    Seat seat = Seat::near_wall;
    Length reach;
    Length step;  // asked
    bool step_is_place = false;
};

// `settings` stand for `group`; where another group makes the joint's other cut, that one stands as it does in
// work.standing_design.
JointCuts joint_cuts(const Work& work, const Group& group, const Settings& settings);

// The boards are `shown` long. Nothing where nothing enters the slot.
std::optional<ClosedJoint> closed(const JointCuts& cuts, Length shown);

// The same joint with its fit, its shoulder gap and the error of its step `times` as large, by a tongue, a length and a
// place of the slot that suit. The slot keeps its width and depth, and the gap at the insert's end its size.
JointCuts exaggerated(const JointCuts& cuts, int times);

// The largest of 1, 2, 3, 5, 10, 20, 50 that leaves every one of these below a fifth of the slot's width and depth.
int fitting_exaggeration(const JointCuts& cuts);
// The same of an error and the room that it is to stay within.
int fitting_times(Length error, Length room);

// The group that cuts the insert of the joint whose slot `group` cuts; nullptr where none does but itself.
const Group* end_group_of(const Work& work, const Group& group);

}  // namespace kw::draw
