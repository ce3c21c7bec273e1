#include "joint/kinds.h"

namespace kw {

JointResult design_groove(const JointAsk& ask) {
    const Length half = ask.receiver_thickness.scaled(1, 2);
    const Length depth = ask.depth.value_or(min(Length::inches(1, 4), half));
    const Length most = ask.receiver_thickness - least_web(ask.receiver_thickness);
    if (depth > most)
        return tl::unexpected(Refusal{"depth",
                                      Message::say("joint.groove_leaves", depth,
                                                   ask.receiver_thickness - depth, ask.receiver_thickness),
                                      Message::say("joint.at_most_half", half)});
    if (depth < least_tongue)
        return tl::unexpected(Refusal{"depth", Message::say("joint.groove_holds_nothing", depth),
                                      Message::say("joint.at_least_deep", least_tongue)});
    if (ask.near < least_tongue)
        return tl::unexpected(Refusal{"offset", Message::say("joint.offset_leaves_nothing", ask.near),
                                      Message::say("joint.set_groove_at_least", Length::inches(1, 8))});
    JointDesign joint;
    joint.kind = "groove";
    joint.cuts = {{Member::receiver, BoardFace::inside, ask.near, ask.insert_thickness + ask.clearance, depth,
                   "groove"}};
    joint.reach = depth;
    joint.clearance = ask.clearance;
    joint.step = ask.near;
    if (depth > half)
        joint.remarks.push_back(Message::say("joint.groove_deep", depth, ask.receiver_thickness));
    return joint;
}

}  // namespace kw
