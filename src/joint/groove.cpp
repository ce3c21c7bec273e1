#include "joint/kinds.h"

namespace kw {

JointResult design_groove(const JointAsk& ask) {
    const Length half = ask.receiver_thickness.scaled(1, 2);
    const Length depth = ask.depth.value_or(min(Length::inches(1, 4), half));
    const Length most = ask.receiver_thickness - least_web(ask.receiver_thickness);
    if (depth > most)
        return tl::unexpected(
            Refusal{"depth",
                    Message::of("a groove ", depth, " deep leaves ", ask.receiver_thickness - depth,
                                " of a board ", ask.receiver_thickness, " thick"),
                    Message::of("make it at most ", half, " deep, half of the board")});
    if (depth < least_tongue)
        return tl::unexpected(Refusal{"depth",
                                      Message::of("a groove ", depth, " deep does not hold a bottom"),
                                      Message::of("make it at least ", least_tongue, " deep")});
    if (ask.near < least_tongue)
        return tl::unexpected(
            Refusal{"offset", Message::of("an offset of ", ask.near, " leaves no wood under the groove"),
                    Message::of("set the groove at least ", Length::inches(1, 8), " above the bottom edge")});
    JointDesign joint;
    joint.kind = "groove";
    joint.cuts = {{Member::receiver, BoardFace::inside, ask.near, ask.insert_thickness + ask.clearance, depth,
                   "groove"}};
    joint.reach = depth;
    joint.clearance = ask.clearance;
    joint.step = ask.near;
    if (depth > half)
        joint.remarks.push_back(Message::of("the groove is ", depth, " deep in a board ",
                                            ask.receiver_thickness, " thick; at most half is usual"));
    return joint;
}

}  // namespace kw
