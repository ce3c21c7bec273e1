#include "joint/kinds.h"

namespace kw {

JointResult design_dado(const JointAsk& ask) {
    const Length depth = ask.depth.value_or(ask.receiver_thickness.scaled(1, 2));
    if (auto refusal = check_web(ask.receiver_thickness, depth, "depth")) return tl::unexpected(*refusal);
    const Length reach = depth - ask.end_relief;
    if (reach < least_tongue)
        return tl::unexpected(
            Refusal{"depth", Message::of("a dado ", depth, " deep holds only ", reach, " of the back"),
                    Message::of("make it at least ", least_tongue + ask.end_relief, " deep")});
    if (ask.near < least_tongue)
        return tl::unexpected(
            Refusal{"setback", Message::of("a setback of ", ask.near, " leaves no wood behind the dado"),
                    Message::of("set the back at least ", ask.insert_thickness,
                                " in from the rear end, or use a `rabbet`")});
    JointDesign joint;
    joint.kind = "dado";
    joint.cuts = {{Member::receiver, BoardFace::inside, ask.near, ask.insert_thickness + ask.clearance, depth,
                   "side dado"}};
    joint.reach = reach;
    joint.clearance = ask.clearance;
    joint.end_relief = ask.end_relief;
    joint.step = ask.near;
    joint.sets_length = true;
    if (ask.near < ask.insert_thickness)
        joint.remarks.push_back(Message::of("only ", ask.near,
                                            " of wood behind the back: the short grain may break; ",
                                            ask.insert_thickness, " or more is usual"));
    return joint;
}

}  // namespace kw
