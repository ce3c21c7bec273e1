#include "joint/kinds.h"

namespace kw {

JointResult design_rabbet(const JointAsk& ask) {
    const Length depth = ask.depth.value_or(ask.receiver_thickness.scaled(1, 2));
    if (auto refusal = check_web(ask.receiver_thickness, depth, "depth")) return tl::unexpected(*refusal);
    const Length reach = depth - ask.end_relief;
    if (reach < least_tongue)
        return tl::unexpected(
            Refusal{"depth", Message::of("a rabbet ", depth, " deep holds only ", reach, " of the board"),
                    Message::of("make it at least ", least_tongue + ask.end_relief, " deep")});
    JointDesign joint;
    joint.kind = "rabbet";
    joint.cuts = {{Member::receiver, BoardFace::inside, Length{}, ask.insert_thickness + ask.step, depth,
                   "side rabbet"}};
    joint.reach = reach;
    joint.seat = Seat::far_wall;
    joint.end_relief = ask.end_relief;
    joint.step = ask.step;
    return joint;
}

}  // namespace kw
