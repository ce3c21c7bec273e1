#include "joint/kinds.h"

namespace kw {

JointResult design_dado(const JointAsk& ask) {
    const Length depth = ask.depth.value_or(ask.receiver_thickness.scaled(1, 2));
    if (auto refusal = check_web(ask.receiver_thickness, depth, "depth")) return tl::unexpected(*refusal);
    const Length reach = depth - ask.end_relief;
    if (reach < least_tongue)
        return tl::unexpected(Refusal{"depth", Message::say("joint.dado_holds_only", depth, reach),
                                      Message::say("joint.at_least_deep", least_tongue + ask.end_relief)});
    if (ask.near < least_tongue)
        return tl::unexpected(
            Refusal{"setback", Message::say("joint.setback_leaves_nothing", ask.near),
                    Message::say("joint.set_back_at_least", ask.insert_thickness, in_quotes("rabbet"))});
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
        joint.remarks.push_back(Message::say("joint.short_grain", ask.near, ask.insert_thickness));
    return joint;
}

}  // namespace kw
