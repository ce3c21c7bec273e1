#include "joint/fingers.h"
#include "joint/kinds.h"

namespace kw {
namespace {

std::optional<Refusal> check_fingers(const JointAsk& ask, Length finger) {
    if (ask.slot_width && abs(*ask.slot_width - ask.kerf) > same_width)
        return Refusal{"dado_width", Message::say("joint.sockets_wide", ask.kerf, *ask.slot_width),
                       Message::say("joint.cutter_of_that_width")};
    if (finger < least_tongue)
        return Refusal{"cutter", Message::say("joint.finger_only", ask.kerf, max(finger, Length{})),
                       Message::say("joint.cutter_at_least_wide", least_tongue + ask.clearance)};
    // A finger and a socket of each board.
    if (ask.height > Length{} && ask.height < 2 * (finger + ask.kerf))
        return Refusal{
            "cutter", Message::say("joint.too_few_fingers", ask.kerf, ask.height),
            Message::say("joint.cutter_at_most_wide", (ask.height + 2 * ask.clearance).scaled(1, 4))};
    return std::nullopt;
}

}  // namespace

JointResult design_box_joint(const JointAsk& ask) {
    const Length finger = ask.kerf - ask.clearance;
    if (auto refusal = check_fingers(ask, finger)) return tl::unexpected(*refusal);
    if (ask.depth)
        return tl::unexpected(
            Refusal{"depth", Message::say("joint.sockets_deep"), Message::say("joint.leave_depth_out")});

    JointDesign joint;
    joint.kind = "box joint";
    const Length pitch = finger + ask.kerf;
    joint.cuts = {{Member::receiver, BoardFace::inside, finger, ask.kerf, ask.insert_thickness + ask.step,
                   "side sockets", pitch},
                  {Member::insert, BoardFace::inside, Length{}, ask.kerf, ask.receiver_thickness + ask.step,
                   "end sockets", pitch}};
    joint.reach = ask.receiver_thickness + ask.step;
    joint.clearance = ask.clearance;
    joint.step = ask.step;
    joint.sets_length = true;
    return joint;
}

}  // namespace kw
