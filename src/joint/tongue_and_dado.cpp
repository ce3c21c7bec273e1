#include "joint/kinds.h"

namespace kw {
namespace {

std::optional<Refusal> check_width(const JointAsk& ask, Length width, Length tongue, Length rabbet) {
    if (tongue < least_tongue)
        return Refusal{"dado_width",
                       Message::of("a dado ", width, " wide takes a tongue of only ", max(tongue, Length{})),
                       Message::of("make the dado at least ", least_tongue + ask.clearance, " wide")};
    if (rabbet < least_tongue)
        return Refusal{
            "dado_width",
            Message::of("a dado ", width, " wide leaves a rabbet of only ", max(rabbet, Length{}),
                        " beside the tongue of a board ", ask.insert_thickness, " thick"),
            Message::of("make the dado at most ", ask.insert_thickness + ask.clearance - least_tongue,
                        " wide, or let the whole board in with a `dado`")};
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
        return tl::unexpected(Refusal{
            "depth",
            Message::of("a dado ", depth, " deep takes a tongue only ", max(reach, Length{}), " long"),
            Message::of("make it at least ", least_tongue + ask.end_relief, " deep")});
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
        joint.remarks.push_back(Message::of("only ", behind,
                                            " of wood behind the back's dado: the short grain may break; ",
                                            ask.insert_thickness, " or more is usual"));
    return joint;
}

}  // namespace kw
