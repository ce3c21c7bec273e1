#include "joint/kinds.h"

namespace kw {

JointResult design_rabbet(const JointAsk& ask) {
    const Length depth = ask.depth.value_or(ask.receiver_thickness.scaled(1, 2));
    if (auto refusal = check_web(ask.receiver_thickness, depth, "depth")) return tl::unexpected(*refusal);
    if (depth < least_tongue)
        return tl::unexpected(Refusal{"depth", Message::say("joint.rabbet_holds_only", depth),
                                      Message::say("joint.at_least_deep", least_tongue)});
    JointDesign joint;
    joint.kind = "rabbet";
    joint.cuts = {{Member::receiver, BoardFace::inside, Length{}, ask.insert_thickness + ask.step, depth,
                   "side rabbet"}};
    joint.reach = depth;
    joint.seat = Seat::far_wall;
    joint.step = ask.step;
    joint.sets_length = true;
    return joint;
}

}  // namespace kw
