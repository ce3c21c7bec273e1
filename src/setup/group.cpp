#include "setup/group.h"

#include <algorithm>
#include <map>

#include "length/text.h"

namespace kw {
namespace {

// Half of an odd number of ticks and its other half are one size.
constexpr Length rounding = Length::from_ticks(1);

std::string mm(Length length) { return exact_text(length, Unit::millimetre); }

// A back with a tongue that stands flush is cut as a front with a locking rabbet is. All joints with a rabbeted insert go by the
// name that logs have for them, so that those that stand alike are one work. A lap is on the other face, and is none of them.
const std::string& make_of(const JointDesign& joint) {
    static const std::string rabbeted = "locking rabbet";
    return has_tongue(joint) ? rabbeted : joint.kind;
}

// Says everything that makes two groups the same work: the joint, where the controls stand, and how thick the board is that
// enters, since that is what fits or does not. What the drawers call the joint and its boards makes no difference.
std::string key_of(const Group& group) {
    const JointWork& work = group.work;
    const Settings& s = group.designed;
    std::string key =
        make_of(work.chosen.joint) + (group.cuts_slot ? ", slot" : "") + (group.cuts_end ? ", end" : "");
    key += "; " + work.chosen.machine.name + ", " + work.chosen.cutter.name + " " + mm(s.kerf);
    key += "; fence " + mm(s.fence) + ", height " + mm(s.height);
    if (s.shift > Length{}) key += ", shift " + mm(s.shift);
    if (s.spacer > Length{}) key += ", spacer " + mm(s.spacer);
    return key + "; " + work.guide + ", for " + mm(entering_thickness(group));
}

Settings slot_settings(const Cut& slot, Length kerf) {
    return slot.near == Length{} ? settings_for_end(slot, kerf, std::nullopt) : settings_for_slot(slot, kerf);
}

Group finished(Group group) {
    group.stands = group.designed;
    group.key = key_of(group);
    return group;
}

}  // namespace

std::string_view name_of(Reference reference) {
    switch (reference) {
        case Reference::left_end: return "left end";
        case Reference::right_end: return "right end";
        case Reference::front_end: return "front end";
        case Reference::rear_end: return "rear end";
        case Reference::bottom_edge: return "bottom edge";
        case Reference::top_edge: return "top edge";
    }
    return {};
}

std::optional<Reference> reference_named(std::string_view name) {
    for (const Reference reference : {Reference::left_end, Reference::right_end, Reference::front_end,
                                      Reference::rear_end, Reference::bottom_edge, Reference::top_edge})
        if (name_of(reference) == name) return reference;
    return std::nullopt;
}

Reference opposite(Reference reference) {
    switch (reference) {
        case Reference::left_end: return Reference::right_end;
        case Reference::right_end: return Reference::left_end;
        case Reference::front_end: return Reference::rear_end;
        case Reference::rear_end: return Reference::front_end;
        case Reference::bottom_edge: return Reference::top_edge;
        case Reference::top_edge: return Reference::bottom_edge;
    }
    return reference;
}

std::string_view name_of(BoardFace face) { return face == BoardFace::inside ? "inside" : "outside"; }

int Group::slot_passes() const {
    if (slot_is_open()) return 1;
    const int planned = designed.shift > Length{} ? planned_passes(slot().width, work.chosen.cutter) : 1;
    // Before a test cut they are as designed, whatever is known of the kerf.
    if (stands == designed || stands.shift <= Length{} || stands.kerf <= Length{}) return planned;
    // Wider than planned, or by a cutter that turned out narrower, it takes more; but a log may hold any nonsense.
    constexpr int most = 20;
    const Length covers = stands.kerf + ridge;
    return std::clamp(passes_for(stands.shift + covers, covers), planned, std::max(planned, most));
}

bool follows_pin(const Group& group) { return !group.row_of.empty(); }

Length entering_thickness(const Group& group) {
    const bool own_row = has_fingers(group.work.chosen.joint) && !group.cuts_slot;
    return own_row ? group.work.receiver_thickness : group.work.insert_thickness;
}

Settings in_row(Settings settings, const Group& group, const Group* leads) {
    if (!has_fingers(group.work.chosen.joint)) return settings;
    if (leads) {
        settings.fence = leads->stands.fence;
        settings.kerf = leads->stands.kerf;
    }
    if (group.cuts_end) settings.spacer = settings.fence;
    return settings;
}

std::vector<Group> groups_of(const JointWork& work) {
    const Length kerf = work.chosen.cutter.kerf;
    const Cut& slot = work.chosen.joint.slot();
    const Cut* end = work.chosen.joint.insert_cut();

    Group first;
    first.work = work;
    first.designed = slot_settings(slot, kerf);
    if (!end) return {finished(first)};

    const Settings at_end = settings_for_end(*end, kerf, first.designed.fence);
    // A rabbet at the receiver's end has a spacer too, and there is one of them.
    const bool one_spacer = !first.slot_is_open() || abs(at_end.spacer - first.designed.spacer) <= rounding;
    if (abs(end->depth - slot.depth) <= rounding && at_end.fence == first.designed.fence && one_spacer) {
        first.cuts_end = true;
        if (!first.slot_is_open()) first.designed.spacer = at_end.spacer;
        return {finished(first)};
    }
    Group second = first;
    second.cuts_slot = false;
    second.cuts_end = true;
    second.designed = at_end;
    return {finished(first), finished(second)};
}

namespace {

bool is_by_one_pin(const Group& a, const Group& b) {
    const ChosenJoint &one = a.work.chosen, &other = b.work.chosen;
    return has_fingers(one.joint) && has_fingers(other.joint) && one.machine.name == other.machine.name &&
           one.cutter.name == other.cutter.name && a.designed.fence == b.designed.fence &&
           a.designed.kerf == b.designed.kerf;
}

const Group* leading_of(const Group& group, const std::vector<Group>& groups,
                        const std::vector<std::string>& begun) {
    for (const std::string& key : begun)
        for (const Group& other : groups)
            if (other.key == key && is_by_one_pin(group, other)) return &other;
    for (const Group& other : groups)
        if (other.cuts_slot && is_by_one_pin(group, other)) return &other;
    return nullptr;
}

}  // namespace

void lead_rows(std::vector<Group>& groups, const std::vector<std::string>& begun) {
    for (Group& group : groups) {
        const Group* leads = leading_of(group, groups, begun);
        group.row_of = leads && leads != &group ? leads->key : std::string();
    }
}

std::vector<Group> merge_groups(const std::vector<Group>& groups) {
    std::vector<Group> merged;
    std::map<std::string, std::size_t> place_of;
    for (const Group& group : groups) {
        const auto [place, is_new] = place_of.try_emplace(group.key, merged.size());
        if (is_new) {
            merged.push_back(group);
            merged.back().id = "G" + std::to_string(merged.size());
            continue;
        }
        JointWork& work = merged[place->second].work;
        // Of a front and of a back: then only what the joint is called says what all of it is.
        if (work.label != group.work.label) work.label = work.chosen.joint.kind;
        // One face among them to be flush with is enough.
        JointDesign& joint = work.chosen.joint;
        joint.step_is_place = joint.step_is_place && group.work.chosen.joint.step_is_place;
        work.insert_uneven = max(work.insert_uneven, group.work.insert_uneven);
        // Shown and drawn is the thinnest, under which the least is left.
        if (group.work.receiver_thickness < work.receiver_thickness) {
            work.receiver_thickness = group.work.receiver_thickness;
            work.receiver_stock = group.work.receiver_stock;
        }
        work.receivers.insert(work.receivers.end(), group.work.receivers.begin(), group.work.receivers.end());
        work.inserts.insert(work.inserts.end(), group.work.inserts.begin(), group.work.inserts.end());
    }
    lead_rows(merged);
    return merged;
}

}  // namespace kw
