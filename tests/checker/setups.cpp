#include "checker/setups.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "checker/workpiece.h"

namespace checker {
namespace {

// Settings are written with six decimals; nearer than this (mm) they are one.
constexpr double one_setting_mm = 5e-6;

bool is_one(double one_mm, double other_mm) { return std::abs(one_mm - other_mm) < one_setting_mm; }

class SetupCheck {
public:
    SetupCheck(const Plan& plan, const Asked& asked, Report& report)
        : plan_(plan), asked_(asked), report_(report) {
        for (const PlanPart& part : plan.parts) parts_.emplace(part.id, part);
    }

    void run() {
        std::set<std::string> ids;
        for (const Setup& setup : plan_.setups) {
            if (!ids.insert(setup.id).second) say(setup, "two setups have this id");
            if (setup.passes.empty()) say(setup, "nothing goes through it");
            machine(setup);
            cutter(setup);
            if (setup.through()) through_cut(setup);
            else joint_cut(setup);
            heights(setup);
        }
        equal_settings();
        chosen_cutters();
    }

private:
    void say(const Setup& setup, const std::string& what) { report_.say(Kind::setup, setup.id, what); }

    void machine(const Setup& setup) {
        const AskedMachine* machine = find_named(asked_.machines, setup.machine);
        if (machine == nullptr) {
            say(setup, "no machine is called " + setup.machine);
            return;
        }
        if (setup.through()) return;
        if (machine->kind == "miter saw") say(setup, "a miter saw makes no joint");
        if (machine->max_height_mm && *setup.height_mm > *machine->max_height_mm + nothing_mm)
            say(setup, "the cutter does not rise that high");
        if (machine->max_dado_width_mm && setup.kerf_mm > *machine->max_dado_width_mm + nothing_mm)
            say(setup, "the cutter is wider than the arbor takes");
    }

    // A machine that is there only to crosscut need not have its blade in the job.
    bool has_own_blade(const Setup& setup) const {
        const AskedMachine* machine = find_named(asked_.machines, setup.machine);
        if (machine == nullptr || machine->kind != "miter saw") return false;
        return std::none_of(asked_.cutters.begin(), asked_.cutters.end(),
                            [&](const AskedCutter& cutter) { return cutter.machine == setup.machine; });
    }

    void cutter(const Setup& setup) {
        if (setup.through() && has_own_blade(setup)) return;
        const AskedCutter* cutter = find_named(asked_.cutters, setup.cutter);
        if (cutter == nullptr) {
            say(setup, "no cutter is called " + setup.cutter);
            return;
        }
        if (cutter->machine != setup.machine) say(setup, "its cutter is for another machine");
        if (!setup.through() && cutter->kerf_mm && !is_one(setup.kerf_mm, *cutter->kerf_mm))
            say(setup, "its kerf is not the cutter's");
        if (setup.through() && cutter->kind == "dado stack") say(setup, "a dado stack does not cut to size");
    }

    // A panel is long both ways and goes along the rip fence both ways; a board's end does not.
    static bool is_panel(const PlanPart& part) { return part.role == "bottom" || part.role == "face"; }

    void through_cut(const Setup& setup) {
        if (setup.sacrificial) say(setup, "a through cut runs in no spacer");
        for (const Pass& pass : setup.passes) {
            if (pass.nibble) say(setup, "a through cut nibbles");
            const auto found = parts_.find(pass.part);
            if (found == parts_.end() || is_panel(found->second)) continue;  // no such part: said already
            const auto reference = find_reference(found->second.role, pass.reference);
            if (reference && reference->axis == along && setup.guide.find("stop") == std::string::npos) {
                say(setup, "a crosscut goes without a stop");
                return;
            }
        }
    }

    // A deep cut by a bit rises from pass to pass, by no more than the bit takes, and ends at the joint's own height.
    void heights(const Setup& setup) {
        if (setup.through()) {
            if (!setup.heights_mm.empty()) say(setup, "a through cut has heights");
            return;
        }
        const std::vector<double> all =
            setup.heights_mm.empty() ? std::vector<double>{*setup.height_mm} : setup.heights_mm;
        if (!is_one(all.back(), *setup.height_mm)) say(setup, "its last pass is not at its height");
        const AskedCutter* cutter = find_named(asked_.cutters, setup.cutter);
        const auto most = cutter ? cutter->most_at_once_mm() : std::nullopt;
        if (!most && all.size() > 1) say(setup, "what is no bit is raised from pass to pass");
        double below = 0;
        for (const double height : all) {
            if (height <= below) say(setup, "a pass is no higher than the one before");
            if (most && height - below > *most + one_setting_mm)
                say(setup, "a pass takes more than the bit does");
            below = height;
        }
    }

    void joint_cut(const Setup& setup) {
        if (!(*setup.height_mm > 0) || !(setup.kerf_mm > 0)) say(setup, "it cuts nothing");
        if (setup.spacer_mm < 0) say(setup, "its spacer is thinner than nothing");
        const double near = setup.near_mm();
        const bool on_the_fence = std::abs(near) < one_setting_mm;
        if (!on_the_fence && setup.sacrificial != (near < 0))
            say(setup, near < 0 ? "the cutter runs in a spacer that is not sacrificial"
                                : "a spacer is called sacrificial that the cutter does not reach");
        for (const Pass& pass : setup.passes) {
            if (pass.nibble && near < one_setting_mm)
                say(setup, "it nibbles where no strip is left at the end");
            const auto found = parts_.find(pass.part);
            if (found != parts_.end() && !setup.index_mm && *setup.height_mm >= found->second.thickness_mm)
                say(setup, "it cuts through " + pass.part);
        }
        row(setup);
    }

    // On a jig the pin takes the edge or a socket: the board goes on by a finger, as wide as the gap, and a socket. What begins with a
    // socket begins by a spacer as wide as the gap.
    void row(const Setup& setup) {
        const bool on_jig = setup.guide == "indexing jig";
        if (on_jig != setup.index_mm.has_value())
            say(setup, "a row is cut on an indexing jig, and nothing else");
        if (!setup.index_mm) return;
        if (!is_one(*setup.index_mm, setup.fence_mm + setup.kerf_mm))
            say(setup, "it is set over by more or less than a finger and a socket");
        if (setup.spacer_mm > 0 && !is_one(setup.spacer_mm, setup.fence_mm))
            say(setup, "its spacer is no finger");
        if (setup.sacrificial) say(setup, "no cutter runs in a jig's spacer");
        for (const Pass& pass : setup.passes) {
            if (pass.nibble) say(setup, "nothing of a row is nibbled");
            const auto found = parts_.find(pass.part);
            const double last = setup.near_mm() + (pass.cuts - 1) * *setup.index_mm;
            if (found != parts_.end() && last > found->second.width_mm)
                say(setup, "its last socket is above " + pass.part);
        }
    }

    // Equal settings are one setup, for the whole batch. Looked at are whole groups: a further pass stands where its group was
    // locked, and two slots of unequal width that begin at the same fence are each tested for their own width. A front's lap is tested
    // in the rabbet that it goes into, and may be moved to suit it: it is not one with the rabbet of other sides.
    void equal_settings() {
        std::map<std::string, std::vector<const Setup*>> groups;
        for (const Setup& setup : plan_.setups)
            if (!setup.through()) groups[setup.group].push_back(&setup);
        for (auto one = groups.begin(); one != groups.end(); ++one) {
            for (auto other = std::next(one); other != groups.end(); ++other) {
                if (std::equal(one->second.begin(), one->second.end(), other->second.begin(),
                               other->second.end(), stand_alike))
                    say(*other->second.front(), "it has the same settings as " + one->second.front()->id);
            }
        }
    }

    static bool is_in_side(const Setup& setup) {
        if (setup.passes.empty()) return false;
        const std::string end = worked_at(setup, setup.passes.front());
        return end == "front end" || end == "rear end";
    }

    static bool stand_alike(const Setup* one, const Setup* other) {
        return is_in_side(*one) == is_in_side(*other) && one->machine == other->machine &&
               one->cutter == other->cutter && one->guide == other->guide &&
               is_one(one->kerf_mm, other->kerf_mm) && is_one(one->fence_mm, other->fence_mm) &&
               is_one(one->spacer_mm, other->spacer_mm) && is_one(*one->height_mm, *other->height_mm);
    }

    // Where the job names a joint's cutter, that one makes it.
    void chosen_cutters() {
        for (const Setup& setup : plan_.setups) {
            if (setup.through()) continue;
            for (const Pass& pass : setup.passes) {
                const auto found = parts_.find(pass.part);
                if (found == parts_.end()) continue;
                const std::string at = worked_at(setup, pass);
                const std::string chosen = chosen_cutter(found->second, at);
                if (!chosen.empty() && chosen != setup.cutter)
                    say(setup, pass.part + "'s " + at + " was to be cut with " + chosen);
            }
        }
    }

    std::string chosen_cutter(const PlanPart& part, const std::string& at) const {
        const AskedDrawer* drawer = find_named(asked_.drawers, part.drawer);
        if (drawer == nullptr) return "";
        if (at == "bottom edge" || at == "top edge") return drawer->bottom.cutter;
        const bool of_back = part.role == "back" || at == "rear end";
        return of_back ? drawer->back.cutter : drawer->front.cutter;
    }

    const Plan& plan_;
    const Asked& asked_;
    Report& report_;
    std::map<std::string, PlanPart> parts_;
};

}  // namespace

void check_setups(const Plan& plan, const Asked& asked, Report& report) {
    SetupCheck(plan, asked, report).run();
}

}  // namespace checker
