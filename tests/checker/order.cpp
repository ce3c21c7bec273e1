#include "checker/order.h"

#include <algorithm>
#include <map>
#include <set>

#include "checker/workpiece.h"

namespace checker {
namespace {

struct Work {
    std::vector<std::string> rips;
    std::vector<std::string> crosscuts;
    std::vector<std::string> end_joints;
    std::vector<std::string> edge_joints;
    std::vector<std::string> front_end_joints;
};

std::string setup_of(const std::string& entry) { return entry.substr(0, entry.find('#')); }

class OrderCheck {
public:
    OrderCheck(const Plan& plan, const Asked& asked, Report& report)
        : plan_(plan), asked_(asked), report_(report) {}

    void run() {
        read_sequence();
        read_work();
        for (const PlanPart& part : plan_.parts) check_part(part);
        check_groups();
        check_time();
    }

private:
    void read_sequence() {
        for (const Setup& setup : plan_.setups) setups_.emplace(setup.id, &setup);
        for (std::size_t i = 0; i < plan_.sequence.size(); ++i) {
            const std::string id = setup_of(plan_.sequence[i]);
            if (setups_.find(id) == setups_.end())
                report_.say(Kind::order, id, "the sequence has no such setup");
            first_.emplace(id, i);
            last_[id] = i;
        }
        const std::set<std::string> entries(plan_.sequence.begin(), plan_.sequence.end());
        if (entries.size() != plan_.sequence.size())
            report_.say(Kind::order, "sequence", "an entry comes twice");
        for (const Setup& setup : plan_.setups) {
            if (first_.find(setup.id) == first_.end())
                report_.say(Kind::order, setup.id, "it is not in the sequence");
        }
    }

    void read_work() {
        std::map<std::string, std::string> roles;
        for (const PlanPart& part : plan_.parts) roles.emplace(part.id, part.role);
        for (const Setup& setup : plan_.setups) {
            for (const Pass& pass : setup.passes) {
                const auto role = roles.find(pass.part);
                if (role == roles.end()) continue;
                const auto reference = find_reference(role->second, worked_at(setup, pass));
                if (reference) add_work(work_[pass.part], setup, pass, reference->axis == along);
            }
        }
    }

    static void add_work(Work& work, const Setup& setup, const Pass& pass, bool at_end) {
        if (setup.through()) (at_end ? work.crosscuts : work.rips).push_back(setup.id);
        else (at_end ? work.end_joints : work.edge_joints).push_back(setup.id);
        if (!setup.through() && worked_at(setup, pass) == "front end")
            work.front_end_joints.push_back(setup.id);
    }

    // At its first time the one, at its last the other. What is not in the sequence is said elsewhere.
    bool comes_before(const std::string& one, const std::string& other) const {
        const auto from = first_.find(one);
        const auto to = last_.find(other);
        return from == first_.end() || to == last_.end() || from->second < to->second;
    }

    void all_before(const std::string& about, const std::vector<std::string>& early,
                    const std::vector<std::string>& late, const std::string& rule) {
        for (const std::string& one : early) {
            for (const std::string& other : late) {
                if (comes_before(one, other)) continue;
                report_.say(Kind::order, about, rule + ": " + one + " before " + other);
                return;
            }
        }
    }

    void check_part(const PlanPart& part) {
        const Work& work = work_[part.id];
        const AskedDrawer* drawer = find_named(asked_.drawers, part.drawer);
        if (drawer == nullptr || part.role == "face" || part.role == "filler") return;
        if (work.rips.empty() || work.crosscuts.empty())
            report_.say(Kind::order, part.id, "it is never cut to size");
        if (part.role == "bottom") {
            check_bottom(part, work);
            return;
        }
        const bool back_over_bottom = part.role == "back" && !drawer->captured;
        if (!back_over_bottom) all_before(part.id, work.rips, work.crosscuts, "rip, then crosscut");
        all_before(part.id, work.crosscuts, work.end_joints, "to length before the joints at its ends");
        all_before(part.id, work.rips, work.edge_joints, "rip before groove");
        if (back_over_bottom)
            all_before(part.id, of_sides(part, &Work::edge_joints), work.rips,
                       "a back's width after the groove");
        if (part.role == "front" && drawer->front.joint == "locking rabbet") check_front(part, work);
    }

    // The tongue's length is locked with the dado's near pass, whose fence the rabbet shares; the passes that widen the dado with
    // the fence moved may come later.
    void check_front(const PlanPart& part, const Work& work) {
        const std::vector<std::string> dados = of_sides(part, &Work::front_end_joints);
        for (const std::string& crosscut : work.crosscuts) {
            const bool locked = std::any_of(dados.begin(), dados.end(), [&](const std::string& dado) {
                return comes_before(dado, crosscut) ||
                       only_saw(setups_.at(dado)->machine, setups_.at(crosscut)->machine);
            });
            if (!locked && !dados.empty())
                report_.say(Kind::order, part.id,
                            "to length after the locking rabbet: " + dados.front() + " before " + crosscut);
        }
    }

    // Its last cut comes after all joints of its drawer, whichever of rip and crosscut that is.
    void check_bottom(const PlanPart& part, const Work& work) {
        std::size_t latest = 0;
        for (const auto* cuts : {&work.rips, &work.crosscuts}) {
            for (const std::string& cut : *cuts) {
                if (const auto found = last_.find(cut); found != last_.end())
                    latest = std::max(latest, found->second);
            }
        }
        for (const std::string& joint : joints_of(part.drawer)) {
            const auto found = first_.find(joint);
            if (found == first_.end() || found->second < latest) continue;
            report_.say(Kind::order, part.id, "a bottom to size after the joints: " + joint);
            return;
        }
    }

    std::vector<std::string> joints_of(const std::string& drawer) {
        std::vector<std::string> all;
        for (const PlanPart& part : plan_.parts) {
            if (part.drawer != drawer) continue;
            const Work& work = work_[part.id];
            all.insert(all.end(), work.end_joints.begin(), work.end_joints.end());
            all.insert(all.end(), work.edge_joints.begin(), work.edge_joints.end());
        }
        return all;
    }

    // The dado's machine crosscuts as well, and no other does.
    bool only_saw(const std::string& of_dado, const std::string& of_crosscut) const {
        if (of_dado != of_crosscut) return false;
        return std::none_of(asked_.machines.begin(), asked_.machines.end(), [&](const AskedMachine& machine) {
            return machine.name != of_dado && machine.kind != "router table";
        });
    }

    std::vector<std::string> of_sides(const PlanPart& part, std::vector<std::string> Work::*kind) {
        std::vector<std::string> all;
        for (const PlanPart& other : plan_.parts) {
            const bool side = other.role == "side_left" || other.role == "side_right";
            if (!side || other.drawer != part.drawer || other.copy != part.copy) continue;
            const std::vector<std::string>& some = work_[other.id].*kind;
            all.insert(all.end(), some.begin(), some.end());
        }
        return all;
    }

    // Between two setups of one group nothing else is set up on its machine, unless the later one is marked as set again: other
    // work has a test cut of its own, which may move what was locked. Rips and crosscuts have nothing locked.
    void check_groups() {
        for (std::size_t i = 0; i < plan_.sequence.size(); ++i) {
            const std::string& entry = plan_.sequence[i];
            const auto found = setups_.find(setup_of(entry));
            if (found == setups_.end() || found->second->through() || entry.find('#') != std::string::npos)
                continue;
            if (is_disturbed(*found->second, i))
                report_.say(Kind::order, entry, "its group was disturbed before all its parts had run");
        }
    }

    // Whether, going back from `at`, something else was set up on the machine after the setup's own group was.
    bool is_disturbed(const Setup& setup, std::size_t at) const {
        bool other = false;
        while (at-- > 0) {
            const auto found = setups_.find(setup_of(plan_.sequence[at]));
            if (found == setups_.end() || found->second->machine != setup.machine) continue;
            if (found->second->group == setup.group) return other;
            other = true;
        }
        return false;
    }

    void check_time() {
        if (!(plan_.seconds > 0)) report_.say(Kind::order, "plan", "it takes no time");
        if (plan_.lower_bound_seconds > plan_.seconds * (1 + 1e-9))
            report_.say(Kind::order, "plan", "it is faster than its lower bound");
        if (plan_.proved && plan_.lower_bound_seconds < plan_.seconds * (1 - 1e-9))
            report_.say(Kind::order, "plan", "it is said to be proved and is not at its lower bound");
    }

    const Plan& plan_;
    const Asked& asked_;
    Report& report_;
    std::map<std::string, const Setup*> setups_;
    std::map<std::string, std::size_t> first_;
    std::map<std::string, std::size_t> last_;
    std::map<std::string, Work> work_;
};

}  // namespace

void check_order(const Plan& plan, const Asked& asked, Report& report) {
    OrderCheck(plan, asked, report).run();
}

}  // namespace checker
