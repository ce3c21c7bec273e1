#include "job/precedence.h"

#include "job/follows.h"
#include "job/standing.h"

#include <algorithm>
#include <map>
#include <set>

namespace kw {
namespace {

struct PartSetups {
    int rip = -1;
    int crosscut = -1;
    std::vector<int> joints;
};

class Rules {
public:
    Rules(const Design& design, const std::vector<Setup>& setups) : design_(design), setups_(setups) {
        for (int i = 0; i < static_cast<int>(setups.size()); ++i) {
            const Setup& setup = setups[static_cast<std::size_t>(i)];
            if (!setup.group.empty()) of_group_[setup.group].push_back(i);
            for (const Pass& pass : setup.passes) {
                PartSetups& part = of_part_[pass.part];
                if (setup.stage == Stage::rip) part.rip = i;
                else if (setup.stage == Stage::crosscut) part.crosscut = i;
                else part.joints.push_back(i);
            }
        }
    }

    Precedence all() {
        for (const auto& [group, members] : of_group_)
            for (std::size_t i = 1; i < members.size(); ++i) add(members[i - 1], members[i]);
        for (const auto& [part, its] : of_part_) size_before_joints(its);
        for (const DrawerDesign& drawer : design_.drawers) drawer_rules(drawer);
        // A back that takes its depth from the front is cut when that is known.
        for (const Group& group : design_.groups)
            if (const DrawerDesign* drawer = leader_of(design_, group))
                add(first_of(drawer->front_keys.slot), first_of(group.key));
        // The pin is locked by the first of the sides' rows, and left where it stands.
        for (const Group& group : design_.groups)
            if (!group.row_of.empty()) add(first_of(group.row_of), first_of(group.key));
        return {{pairs_.begin(), pairs_.end()}, notes_};
    }

private:
    // A groove along the edge can be cut before the ends are; a cut at the ends can't.
    void size_before_joints(const PartSetups& part) {
        add(part.rip, part.crosscut);
        for (const int joint : part.joints) {
            add(part.rip, joint);
            if (!is_along_an_edge(setups_[static_cast<std::size_t>(joint)])) add(part.crosscut, joint);
        }
    }

    static bool is_along_an_edge(const Setup& setup) {
        const Reference reference = setup.passes.front().reference;
        return reference == Reference::bottom_edge || reference == Reference::top_edge;
    }

    void drawer_rules(const DrawerDesign& drawer) {
        const DrawerSpec& spec = *drawer.spec;
        for (int copy = 1; copy <= spec.count; ++copy) {
            const auto part = [&](Role role) -> const PartSetups& {
                return of_part_[part_id(spec, copy, role)];
            };
            length_after_lock(drawer.front, drawer.front_keys, part(Role::front), spec.name, "front");
            length_after_lock(drawer.back, drawer.back_keys, part(Role::back), spec.name, "back");
            if (drawer.back_follows_front) cut_after(drawer.front, drawer.front_keys, part(Role::back));
            if (spec.bottom.style == BottomStyle::slide_in)
                add(last_of(drawer.bottom_keys.slot), part(Role::back).rip);
            for (const Role role : {Role::side_left, Role::front, Role::back})
                for (const int joint : part(role).joints) add(joint, part(Role::bottom).rip);
        }
    }

    void length_after_lock(const ChosenJoint& chosen, const JointKeys& keys, const PartSetups& insert,
                           const std::string& drawer, const std::string& which) {
        if (!chosen.joint.sets_length || insert.crosscut < 0) return;
        // How deep its own sockets are is what counts, and those are cut on boards that have their length.
        if (has_row_of_its_own(chosen, keys)) return tell_of_two_heights(chosen, drawer, which);
        if (cut_after(chosen, keys, insert)) {
            if (!keys.end.empty() && keys.end != keys.slot) tell_of_two_heights(chosen, drawer, which);
            return;
        }
        if (chosen.joint.insert_cut() && told_.insert(drawer + which).second)
            notes_.push_back(
                {Level::note, drawer,
                 Message::say("job.length_first", Message::name("job.part.", which), chosen.joint.reach)});
    }

    // Not where the machine that cuts to length is the one that holds the joint's setup: going there would tear down what
    // was locked. Then the length comes first, from the kerf as it is known.
    bool cut_after(const ChosenJoint& joint, const JointKeys& keys, const PartSetups& insert) {
        if (insert.crosscut < 0) return false;
        if (setups_[static_cast<std::size_t>(insert.crosscut)].machine == joint.machine.name) return false;
        add(first_of(keys.slot), insert.crosscut);
        return true;
    }

    // The tongue has a setup of its own, and is cut on boards that have their length.
    void tell_of_two_heights(const ChosenJoint& chosen, const std::string& drawer, const std::string& which) {
        const char* key = has_fingers(chosen.joint) ? "job.fingers_own_height"
                          : has_lap(chosen.joint)   ? "job.lap_own_setting"
                                                    : "job.tongue_own_height";
        if (told_.insert(drawer + which).second)
            notes_.push_back({Level::note, drawer,
                              Message::say(key, Message::name("job.part.", which), chosen.joint.reach)});
    }

    int first_of(const std::string& key) const { return member(key, true); }
    int last_of(const std::string& key) const { return member(key, false); }
    int member(const std::string& key, bool first) const {
        const Group* group = design_.group_with_key(key);
        const auto members = of_group_.find(group->id);
        return first ? members->second.front() : members->second.back();
    }

    void add(int before, int after) {
        if (before >= 0 && after >= 0 && before != after) pairs_.insert({before, after});
    }

    const Design& design_;
    const std::vector<Setup>& setups_;
    std::map<std::string, PartSetups> of_part_;
    std::map<std::string, std::vector<int>> of_group_;
    std::set<std::pair<int, int>> pairs_;
    std::set<std::string> told_;
    std::vector<Note> notes_;
};

}  // namespace

Waits waits_of(const Plan& plan, const Setup& first, const Setup& then, const std::string& part) {
    if (first.group.empty()) return Waits::part;
    if (first.group == then.group) return Waits::group;
    return plan.part_with_id(part)->size.role == Role::bottom ? Waits::drawer : Waits::lock;
}

Precedence precedence_of(const Design& design, const std::vector<Setup>& setups) {
    return Rules(design, setups).all();
}

}  // namespace kw
