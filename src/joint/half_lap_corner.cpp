#include "joint/kinds.h"

namespace kw {

JointResult design_half_lap_corner(const JointAsk& ask) {
    const Length depth = ask.depth.value_or(ask.receiver_thickness.scaled(1, 2));
    if (auto refusal = check_web(ask.receiver_thickness, depth, "depth")) return tl::unexpected(*refusal);
    if (depth < least_tongue)
        return tl::unexpected(Refusal{"depth", Message::say("joint.rabbet_holds_only", depth),
                                      Message::say("joint.at_least_deep", least_tongue)});
    const bool alike = ask.insert_thickness == ask.receiver_thickness;
    const Length rabbet = alike ? depth : ask.insert_thickness.scaled(1, 2);
    const Length lap = ask.insert_thickness - rabbet;
    if (rabbet < least_tongue)
        return tl::unexpected(Refusal{"stock",
                                      Message::say("joint.lap_only", ask.insert_thickness, min(lap, rabbet)),
                                      Message::say("joint.thicker_to_lap", 2 * least_tongue)});

    JointDesign joint;
    joint.kind = "half lap corner";
    joint.cuts = {{Member::receiver, BoardFace::inside, Length{}, lap + ask.step, depth, "side rabbet"},
                  {Member::insert, BoardFace::inside, Length{}, depth, rabbet, "end rabbet"}};
    joint.reach = depth;
    joint.seat = Seat::far_wall;
    joint.step = ask.step;
    joint.sets_length = true;
    if (!alike || ask.step > Length{})
        joint.remarks.push_back(Message::say("joint.two_settings", lap + ask.step, depth, rabbet));
    return joint;
}

}  // namespace kw
