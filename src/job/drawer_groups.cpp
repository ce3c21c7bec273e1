#include "job/drawer_groups.h"

namespace kw {
namespace {

struct Joined {
    std::vector<Role> receivers;
    Reference receiver_end;
    std::vector<Role> inserts;
};

JointWork work_of(const DrawerDesign& drawer, const ChosenJoint& chosen, std::string label,
                  const Joined& joined, const Stock& sides, const Stock& insert) {
    JointWork work;
    work.chosen = chosen;
    work.label = std::move(label);
    work.receiver_thickness = drawer.thickness.sides;
    work.receiver_stock = drawer.spec->side_stock;
    work.insert_thickness = insert.thickness;
    work.insert_uneven = insert.uneven;
    work.insert_stock = insert.name;
    const bool is_bottom = joined.receiver_end == Reference::bottom_edge;
    work.guide = guide_for(is_bottom ? Place::bottom : Place::front, chosen.joint);
    const Length receiver_up = is_bottom ? Length{} : cut_height(drawer, sides),
                 insert_up = cut_height(drawer, insert);
    for (int copy = 1; copy <= drawer.spec->count; ++copy) {
        for (const Role role : joined.receivers)
            work.receivers.push_back({part_id(*drawer.spec, copy, role), joined.receiver_end, receiver_up});
        for (const Role role : joined.inserts) {
            work.inserts.push_back({part_id(*drawer.spec, copy, role), Reference::left_end, insert_up});
            work.inserts.push_back({part_id(*drawer.spec, copy, role), Reference::right_end, insert_up});
        }
    }
    return work;
}

void add_groups(const JointWork& work, JointKeys& keys, std::vector<Group>& groups) {
    for (Group& group : groups_of(work)) {
        if (group.cuts_slot) keys.slot = group.key;
        if (group.cuts_end) keys.end = group.key;
        groups.push_back(std::move(group));
    }
}

}  // namespace

Length cut_height(const DrawerDesign& drawer, const Stock& stock) {
    const bool banded = stock.banding && stock.banding->has(BandedEdge::top);
    return banded ? drawer.box.height - stock.banding->thickness : drawer.box.height;
}

std::string label_of(Place place, const JointDesign& joint) {
    if (place == Place::back) return "back " + joint.kind;
    return place == Place::front && joint.kind == "rabbet" ? "front rabbet" : joint.kind;
}

const char* guide_for(Place place, const JointDesign& joint) {
    if (has_fingers(joint)) return "indexing jig";
    return place == Place::bottom ? "rip fence" : "miter gauge";
}

JointKeys keys_of(const JointWork& work) {
    JointKeys keys;
    for (const Group& group : groups_of(work)) {
        if (group.cuts_slot) keys.slot = group.key;
        if (group.cuts_end) keys.end = group.key;
    }
    return keys;
}

std::optional<PartEnd> mate_of(const PartEnd& end) {
    const std::size_t role = end.part.rfind('.') + 1;
    const std::string of = end.part.substr(0, role), what = end.part.substr(role);
    if (what == "side_left" || what == "side_right") {
        const bool is_front = end.reference == Reference::front_end;
        if (!is_front && end.reference != Reference::rear_end) return std::nullopt;
        return PartEnd{of + (is_front ? "front" : "back"),
                       what == "side_left" ? Reference::left_end : Reference::right_end};
    }
    if (what != "front" && what != "back") return std::nullopt;
    const bool is_left = end.reference == Reference::left_end;
    if (!is_left && end.reference != Reference::right_end) return std::nullopt;
    return PartEnd{of + (is_left ? "side_left" : "side_right"),
                   what == "front" ? Reference::front_end : Reference::rear_end};
}

void add_all_groups(const Job& job, DrawerDesign& drawer, std::vector<Group>& groups) {
    const DrawerSpec& spec = *drawer.spec;
    const Stock& side_stock = *job.stock_named(spec.side_stock);
    const std::vector<Role> sides = {Role::side_left, Role::side_right};
    std::vector<Role> grooved = {Role::side_left, Role::side_right, Role::front};
    if (spec.bottom.style == BottomStyle::captured) grooved.push_back(Role::back);
    add_groups(
        work_of(drawer, drawer.front, label_of(Place::front, drawer.front.joint),
                {sides, Reference::front_end, {Role::front}}, side_stock, *job.stock_named(spec.front.stock)),
        drawer.front_keys, groups);
    add_groups(
        work_of(drawer, drawer.back, label_of(Place::back, drawer.back.joint),
                {sides, Reference::rear_end, {Role::back}}, side_stock, *job.stock_named(spec.back.stock)),
        drawer.back_keys, groups);
    add_groups(
        work_of(drawer, drawer.bottom, label_of(Place::bottom, drawer.bottom.joint),
                {grooved, Reference::bottom_edge, {}}, side_stock, *job.stock_named(spec.bottom.stock)),
        drawer.bottom_keys, groups);
}

}  // namespace kw
