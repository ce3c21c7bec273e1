#include "joint/kinds.h"

namespace kw {
namespace {

std::optional<Refusal> check_width(const JointAsk& ask, Length width, Length tongue, Length rabbet) {
    if (tongue < least_tongue)
        return Refusal{"dado_width", Message::say("joint.takes_tongue_only", width, max(tongue, Length{})),
                       Message::say("joint.dado_at_least_wide", least_tongue + ask.clearance)};
    if (rabbet < least_tongue)
        return Refusal{
            "dado_width",
            Message::say("joint.leaves_rabbet_only", width, max(rabbet, Length{}), ask.insert_thickness),
            Message::say("joint.dado_or_whole_board", ask.insert_thickness + ask.clearance - least_tongue,
                         in_quotes("dado"))};
    return std::nullopt;
}

}  // namespace

JointResult design_tongue_and_dado(const JointAsk& ask) {
    const Length width = ask.slot_width.value_or(ask.insert_thickness.scaled(1, 2));
    const Length tongue = width - ask.clearance;
    const Length rabbet = ask.insert_thickness - tongue;
    if (auto refusal = check_width(ask, width, tongue, rabbet)) return tl::unexpected(*refusal);

    const Length depth = ask.depth.value_or(ask.receiver_thickness.scaled(1, 2));
    if (auto refusal = check_web(ask.receiver_thickness, depth, "depth")) return tl::unexpected(*refusal);
    const Length reach = depth - ask.end_relief;
    if (reach < least_tongue)
        return tl::unexpected(Refusal{"depth",
                                      Message::say("joint.tongue_only_long", depth, max(reach, Length{})),
                                      Message::say("joint.at_least_deep", least_tongue + ask.end_relief)});
    // The rabbet's depth is behind the dado as well, and is never less than a tongue: so a setback of nothing is let be.
    const Length behind = ask.near + rabbet;
    JointDesign joint;
    joint.kind = "tongue and dado";
    joint.cuts = {{Member::receiver, BoardFace::inside, behind, width, depth, "side dado"},
                  {Member::insert, BoardFace::outside, Length{}, reach, rabbet, "rabbet"}};
    joint.reach = reach;
    joint.clearance = ask.clearance;
    joint.end_relief = ask.end_relief;
    joint.step = ask.near;
    joint.step_is_place = true;
    joint.sets_length = true;
    if (behind < ask.insert_thickness)
        joint.remarks.push_back(Message::say("joint.short_grain_at_dado", behind, ask.insert_thickness));
    return joint;
}

}  // namespace kw
