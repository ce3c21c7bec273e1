#include "job/box_as_made.h"

#include "job/parts_of.h"

namespace kw {
namespace {

class BoxAsMade {
public:
    BoxAsMade(const Work& work, const DrawerDesign& drawer, int copy)
        : work_(work), drawer_(drawer), copy_(copy) {}

    BoxSides sides() const {
        return {width(Role::front, drawer_.front.joint, drawer_.front_keys, Reference::front_end),
                width(Role::back, drawer_.back.joint, drawer_.back_keys, Reference::rear_end),
                length(Role::side_left), length(Role::side_right)};
    }

private:
    std::string id(Role role) const { return part_id(*drawer_.spec, copy_, role); }

    Length length(Role role) const {
        const std::string part = id(role);
        for (const Ran& ran : work_.standing.ran)
            if (ran.part == part && ran.work_key == "crosscut" && ran.size) return *ran.size;
        return work_.plan.part_with_id(part)->size.length;
    }

    // Of a group, as this end was cut by it.
    Settings settings(const std::string& key, const std::string& part, Reference end) const {
        for (const Ran& ran : work_.standing.ran)
            if (ran.group_key == key && ran.part == part && ran.reference == name_of(end))
                return ran.settings;
        return work_.standing_design.group_with_key(key)->stands;
    }

    Length reach(const JointDesign& joint, const JointKeys& keys, Role side, Reference side_end, Role insert,
                 Reference insert_end) const {
        const Settings slot = settings(keys.slot, id(side), side_end);
        if (keys.end.empty()) return reach_by(joint, slot, nullptr);
        const Settings end = settings(keys.end, id(insert), insert_end);
        return reach_by(joint, slot, &end);
    }

    Length width(Role insert, const JointDesign& joint, const JointKeys& keys, Reference side_end) const {
        return length(insert) + 2 * drawer_.thickness.sides -
               reach(joint, keys, Role::side_left, side_end, insert, Reference::left_end) -
               reach(joint, keys, Role::side_right, side_end, insert, Reference::right_end);
    }

    const Work& work_;
    const DrawerDesign& drawer_;
    int copy_;
};

}  // namespace

BoxSides box_as_made(const Work& work, const DrawerDesign& drawer, int copy) {
    return BoxAsMade(work, drawer, copy).sides();
}

bool is_near(const BoxSides& a, const BoxSides& b, Length by) {
    return abs(a.front - b.front) < by && abs(a.back - b.back) < by && abs(a.left - b.left) < by &&
           abs(a.right - b.right) < by;
}

}  // namespace kw
