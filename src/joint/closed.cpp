#include "joint/closed.h"

namespace kw {
namespace {

struct Slot {
    Length near;
    Length far;
    Length depth;
    bool open;  // a rabbet: no wall on the near side
};

// The first stretch without wood along the receiver's inside face.
std::optional<Slot> find_slot(const Region& receiver) {
    const auto solid = solid_along_x(receiver, hair);
    if (solid.empty()) return std::nullopt;
    Slot slot{};
    slot.open = solid.front().first > Length{};
    if (!slot.open && solid.size() < 2) return std::nullopt;
    slot.near = slot.open ? Length{} : solid[0].second;
    slot.far = slot.open ? solid[0].first : solid[1].first;
    const auto under = solid_along_y(receiver, slot.near + (slot.far - slot.near).scaled(1, 2));
    if (under.empty()) return std::nullopt;  // sawn right through
    slot.depth = under.front().first;
    return slot;
}

// How far the insert's end runs before the board is full: the tongue's length. Looked for beside the tongue.
std::optional<Length> find_shoulder(const Region& insert, Span tongue, Length full_thickness) {
    const Length beside = tongue.first > Length{} ? tongue.first - hair : tongue.second + hair;
    if (beside < Length{} || beside > full_thickness) return std::nullopt;
    const auto solid = solid_along_x(insert, beside);
    if (solid.empty() || solid.front().first == Length{}) return std::nullopt;
    return solid.front().first;
}

// A lap on the insert's outside has its shoulder beyond the slot.
Region find_gap(const ClosedJoint& joint, Length left, Length right) {
    const Rect within{left, -joint.shoulder_gap.value_or(Length{}), right, joint.slot_depth};
    return subtract(subtract(to_region(within), joint.receiver), joint.insert);
}

}  // namespace

Region cut_section(Member member, Length thickness, Length shown, const std::vector<Removal>& removals) {
    const BoardFace frame = member == Member::receiver ? BoardFace::inside : BoardFace::outside;
    std::vector<Rect> cuts;
    for (const Removal& cut : removals) {
        const bool from_zero = cut.down == frame;
        cuts.push_back({cut.near, from_zero ? Length{} : thickness - cut.depth, cut.far,
                        from_zero ? cut.depth : thickness});
    }
    return subtract(to_region(Rect{Length{}, Length{}, shown, thickness}), cuts);
}

std::vector<Removal> designed_removals(const JointDesign& joint, Member member) {
    std::vector<Removal> removals;
    for (const Cut& cut : joint.cuts)
        if (cut.member == member) removals.push_back({cut.down, cut.near, cut.far(), cut.depth});
    return removals;
}

std::optional<ClosedJoint> close_joint(const Region& receiver, const Region& insert, Seat seat,
                                       Length reach) {
    const auto slot = find_slot(receiver);
    const auto end = solid_along_y(insert, hair);
    const auto insert_box = bounds(insert);
    if (!slot || end.empty() || !insert_box) return std::nullopt;
    const Span tongue = end.front();

    ClosedJoint joint;
    joint.receiver = receiver;
    joint.slot_width = slot->far - slot->near;
    joint.slot_depth = slot->depth;
    joint.slot_near = slot->near;
    joint.entering = tongue.second - tongue.first;
    if (!slot->open) joint.fit = joint.slot_width - joint.entering;
    joint.tongue_length = find_shoulder(insert, tongue, insert_box->top);

    const Length in = joint.tongue_length ? min(*joint.tongue_length, slot->depth) : min(reach, slot->depth);
    if (joint.tongue_length) joint.shoulder_gap = *joint.tongue_length - in;
    joint.end_gap = slot->depth - in;
    joint.face_step = seat == Seat::near_wall ? slot->near - tongue.first : slot->far - tongue.second;
    joint.insert = turned_to_meet(insert, {joint.face_step, in});
    joint.overlap = intersect(joint.receiver, joint.insert);
    const Length left = joint.tongue_length ? joint.face_step : max(slot->near, joint.face_step);
    const bool is_lap = joint.tongue_length && tongue.first == Length{};
    const Length right = is_lap ? max(slot->far, joint.face_step + insert_box->top) : slot->far;
    joint.gap = find_gap(joint, max(left, Length{}), right);
    return joint;
}

}  // namespace kw
