#include "joint/kinds.h"

namespace kw {
namespace {

std::optional<Refusal> check_tongue(const JointAsk& ask, Length width, Length tongue, Length rabbet) {
    if (tongue < least_tongue)
        return Refusal{"dado_width", Message::say("joint.tongue_only", width, tongue),
                       Message::say("joint.dado_at_least_wide", least_tongue + ask.clearance)};
    if (rabbet < least_tongue)
        return Refusal{"dado_width", Message::say("joint.lip_only", width, rabbet, ask.insert_thickness),
                       Message::say("joint.dado_or_narrower_cutter",
                                    ask.insert_thickness + ask.clearance - least_tongue)};
    return std::nullopt;
}

// As deep as the rabbet where that leaves web enough (one height for both cuts), else as deep as the web allows.
Length depth_left_open(const JointAsk& ask, Length rabbet) {
    return min(rabbet, ask.receiver_thickness - least_web(ask.receiver_thickness));
}

}  // namespace

JointResult design_locking_rabbet(const JointAsk& ask) {
    const Length width = ask.slot_width.value_or(ask.insert_thickness.scaled(1, 2));
    const Length tongue = width - ask.clearance;
    const Length rabbet = ask.insert_thickness - tongue;
    if (auto refusal = check_tongue(ask, width, tongue, rabbet)) return tl::unexpected(*refusal);

    const Length depth = ask.depth.value_or(depth_left_open(ask, rabbet));
    if (auto refusal = check_web(ask.receiver_thickness, depth, "depth")) return tl::unexpected(*refusal);
    const Length reach = depth - ask.end_relief;
    if (reach < least_tongue)
        return tl::unexpected(Refusal{ask.depth ? "depth" : "stock",
                                      Message::say("joint.tongue_too_short", ask.receiver_thickness, reach),
                                      Message::say("joint.thicker_or_less_relief")});

    const Length lip = max(rabbet + ask.step, ask.near);
    JointDesign joint;
    joint.kind = "locking rabbet";
    joint.cuts = {{Member::receiver, BoardFace::inside, lip, width, depth, "side dado"},
                  {Member::insert, BoardFace::outside, Length{}, reach, rabbet, "rabbet"}};
    joint.reach = reach;
    joint.clearance = ask.clearance;
    joint.end_relief = ask.end_relief;
    joint.step = lip - rabbet;
    joint.step_is_place = ask.near > rabbet + ask.step;
    joint.sets_length = true;
    if (depth != rabbet && !ask.depth)
        joint.remarks.push_back(Message::say("joint.two_heights", rabbet, ask.receiver_thickness));
    return joint;
}

}  // namespace kw
