#include "job/standing.h"

#include <algorithm>
#include <tuple>

#include "testcut/observe.h"

namespace kw {
namespace {

bool are_cut_by(const JointKeys& keys, const std::string& key) { return keys.slot == key || keys.end == key; }

// Whether every joint that is cut by this group of the drawer's back leaves its depth to the same front.
bool follows_alone(const Design& design, const DrawerDesign& drawer, const std::string& key) {
    return std::all_of(design.drawers.begin(), design.drawers.end(), [&](const DrawerDesign& other) {
        if (are_cut_by(other.front_keys, key)) return false;
        if (!are_cut_by(other.back_keys, key)) return true;
        return other.back_follows_front && other.front_keys.slot == drawer.front_keys.slot;
    });
}

// Slot and tongue, or neither: a tongue that stays while its slot follows would not go home.
bool follows_alone(const Design& design, const DrawerDesign& drawer) {
    const JointKeys& keys = drawer.back_keys;
    return follows_alone(design, drawer, keys.slot) &&
           (keys.end.empty() || follows_alone(design, drawer, keys.end));
}

void set_tongue_length(Settings& settings, Length length) {
    const Length spacer = settings.fence + settings.kerf - length;
    const bool by_spacer = settings.spacer > Length{} && spacer >= Length{};
    if (!by_spacer) settings.fence = length - settings.kerf;
    settings.spacer = by_spacer ? spacer : Length{};
}

// The same joint, planned to hold by `reach`: its slot deeper or less deep, its tongue longer or shorter. Where one height cuts
// both, the height is what the tongue's thickness comes of and stays: there the relief gives, as long as there is any.
Group with_reach(Group group, Length reach) {
    JointDesign& joint = group.work.chosen.joint;
    if (group.cuts_slot && group.cuts_end) {
        if (reach > joint.slot().depth) return group;
        joint.end_relief = joint.slot().depth - reach;
    }
    joint.reach = reach;
    for (Cut& cut : joint.cuts)
        (cut.member == Member::receiver ? cut.depth : cut.width) =
            cut.member == Member::receiver ? reach + joint.end_relief : reach;
    for (Settings* settings : {&group.designed, &group.stands}) {
        if (group.cuts_slot) settings->height = reach + joint.end_relief;
        if (group.cuts_end) set_tongue_length(*settings, reach);
    }
    return group;
}

}  // namespace

namespace {

// A second pass that was taken back is none, whatever is believed of how far the fence's moves came out.
Settings stands_of(const GroupStanding& standing, const Settings& designed) {
    Settings stands = settings_by(standing.model, designed, planned(standing));
    if (turned(standing.dial, standing.model, standing.advice.unread).shift <= Length{})
        stands.shift = Length{};
    return stands;
}

}  // namespace

const DrawerDesign* leader_of(const Design& design, const Group& group) {
    for (const DrawerDesign& drawer : design.drawers)
        if (drawer.back_follows_front && are_cut_by(drawer.back_keys, group.key) &&
            follows_alone(design, drawer))
            return &drawer;
    return nullptr;
}

std::vector<Move> moves_told(const Model& model, const std::vector<NamedLength>& told) {
    std::vector<Move> moves;
    for (const NamedLength& move : told)
        if (const auto control = control_named(model, move.name))
            moves.push_back({*control, move.value.mm()});
    return moves;
}

Belief after_moves(const GroupStanding& standing, const std::optional<std::vector<NamedLength>>& told) {
    if (!told) return standing.next;
    return predict_moves(standing.model, standing.now, moves_told(standing.model, *told));
}

Belief planned(const GroupStanding& standing) {
    return standing.locked ? standing.now
                           : predict_moves(standing.model, standing.next, standing.advice.unread);
}

std::vector<Observation> observations_of(const Model& model, const LogEntry& entry) {
    std::vector<Observation> out;
    for (const NamedLength& reading : entry.readings) {
        const Reading* known = reading_named(model, reading.name);
        if (!known) continue;
        const bool gap = reading.name == "fit" || known->kind == ReadingKind::at_least_zero;
        out.push_back(entry.tool ? taken(*known, reading.value.mm(), spread_of(*entry.tool, gap))
                                 : taken(*known, reading.value.mm()));
    }
    const Reading* fit = reading_named(model, "fit");
    if (const auto feel = feel_of_word(entry.felt); feel && fit) out.push_back(felt(fit->form, *feel));
    for (const std::string& word : entry.seen) {
        const Sight* sight = sight_of_word(word);
        const Reading* known = sight ? reading_named(model, sight->reading) : nullptr;
        if (known) out.push_back(seen(known->form, *sight));
    }
    return out;
}

AdviceOptions advice_options(const Job& job, const std::vector<std::string>& read) {
    AdviceOptions options;
    options.wanted_chance = job.fit.wanted_chance;
    options.already_read = read;
    return options;
}

namespace {

// What a machine was last used for, and how often it has been set for something.
struct MachineUse {
    std::string what;  // a group's key, or a sizing cut's
    int settings = 0;
};

// What is cut, of which part, at which end or edge.
using RanIdentity = std::tuple<std::string, std::string, std::string>;
RanIdentity identity(const Ran& ran) { return {ran.work_key, ran.part, ran.reference}; }

class Replay {
public:
    Replay(const Job& job, const Design& design) : job_(job), design_(design) {}

    Standing run() {
        for (const LogEntry& entry : job_.log) {
            if (!is_planned(entry)) {
                ++standing_.forgotten;
                continue;
            }
            if (entry.kind != LogKind::lost) note_set(entry);
            if (entry.kind == LogKind::ran) note_ran(entry);
            else if (entry.kind == LogKind::lost) note_lost(entry.part);
            else if (const Group* group = group_of(entry))
                entry.kind == LogKind::test ? test(*group, entry) : lock(*group, entry);
        }
        return standing_;
    }

private:
    bool is_planned(const LogEntry& entry) const {
        const bool of_part = entry.kind == LogKind::ran || entry.kind == LogKind::lost;
        if (of_part && !has_part(design_, entry.part)) return false;
        if (entry.kind == LogKind::lost) return true;
        const bool sizing = entry.kind == LogKind::ran && (entry.key == "rip" || entry.key == "crosscut");
        return sizing || group_of(entry);
    }

    // An entry's key is its group's, behind which a setup's own work may stand.
    const Group* group_of(const LogEntry& entry) const {
        for (const Group& group : design_.groups)
            if (entry.key == group.key || entry.key.rfind(group.key + " | ", 0) == 0) return &group;
        return nullptr;
    }

    // Sizes are cut where the shop cuts them; a piece too wide for its stop is not told apart.
    std::string machine_of(const LogEntry& entry) const {
        if (const Group* group = group_of(entry)) return group->work.chosen.machine.name;
        const auto& machines = job_.shop.machines;
        const auto saw = std::find_if(machines.begin(), machines.end(), [](const Machine& machine) {
            return machine.kind == MachineKind::table_saw;
        });
        const Machine* cuts = entry.key == "crosscut" ? crosscut_machine(job_.shop)
                              : saw == machines.end() ? nullptr
                                                      : &*saw;
        return cuts ? cuts->name : std::string();
    }

    // A machine that is used for something else than before is set anew: its settings are counted.
    void note_set(const LogEntry& entry) {
        const Group* group = group_of(entry);
        MachineUse& use = uses_[machine_of(entry)];
        const std::string what = group ? group->key : entry.key;
        if (use.what != what) ++use.settings;
        use.what = what;
    }

    int settings_on(const Group& group) const {
        const auto use = uses_.find(group.work.chosen.machine.name);
        return use == uses_.end() ? 0 : use->second.settings;
    }

    GroupStanding& standing_of(const Group& group, const LogEntry& entry) {
        const auto [place, is_new] = standing_.groups.try_emplace(group.key);
        GroupStanding& standing = place->second;
        if (is_new) {
            standing.start =
                entry.start.value_or(Start{as_it_stands(group).stands, usual_scales(), job_.tool});
            standing.model =
                model_of(as_it_stands(group), tolerances_of(job_), partner(group), standing.start);
            standing.now = belief_from_priors(standing.model);
            standing.next = standing.now;
            standing.stood = standing.dial = standing.start.dial;
            standing.began = entry.time;
        }
        return standing;
    }

    // A back that takes its depth from the front is planned as deep as the front's tongue has come out.
    Group as_planned(const Group& group) const {
        const DrawerDesign* drawer = leader_of(design_, group);
        if (!drawer) return group;
        const bool cut = !drawer->front_keys.end.empty();
        const std::string& key = cut ? drawer->front_keys.end : drawer->front_keys.slot;
        if (standing_.groups.count(key) == 0) return group;
        const Settings front = as_it_stands(*design_.group_with_key(key)).stands;
        const Length reach = cut ? far_at_end(front) : front.height - drawer->front.joint.end_relief;
        return with_reach(group, reach);
    }

    Group as_it_stands(const Group& group) const {
        Group standing = as_planned(group);
        const auto found = standing_.groups.find(group.key);
        if (found != standing_.groups.end()) standing.stands = stands_of(found->second, standing.designed);
        return standing;
    }

    const Group* partner(const Group& group) {
        const Group* slot = partner_of(design_, group);
        if (!slot) return nullptr;
        partner_ = as_it_stands(*slot);
        return &partner_;
    }

    static std::optional<std::vector<NamedLength>> told(const LogEntry& entry) {
        return entry.moved_given ? std::optional(entry.moved) : std::nullopt;
    }

    void test(const Group& group, const LogEntry& entry) {
        GroupStanding& standing = standing_of(group, entry);
        // The joint that was asked to be measured further is still the same cut.
        const bool same_cut = standing.tests > 0 && !standing.locked &&
                              standing.advice.kind == AdviceKind::measure && !entry.fresh_end && !told(entry);
        make_moves(standing, entry);
        if (entry.fresh_end) standing.now = predict_fresh_ends(standing.model, standing.now);
        standing.now = observe_all(standing.now, observations_of(standing.model, entry));
        recall_ran(group, standing, same_cut ? standing.tests - 1 : standing.tests);
        if (!same_cut) {
            ++standing.tests;
            standing.read.clear();
        }
        standing.locked = false;
        for (const NamedLength& reading : entry.readings) standing.read.push_back(reading.name);
        standing.model = movable_from(std::move(standing.model), group, standing.stood);
        standing.advice = advise(standing.model, standing.now, advice_options(job_, standing.read));
        standing.next = predict_moves(standing.model, standing.now, standing.advice.moves);
        standing.dial = turned(standing.stood, standing.model, standing.advice.moves);
        standing.at_test = settings_by(standing.model, group.designed, standing.now);
        if (entry.fresh_end || standing.tests == 1) standing.at_fresh_ends = standing.at_test;
    }

    // Brings `now` to after the moves that were told, or else those that were advised; the dial stands there already for those.
    static void make_moves(GroupStanding& standing, const LogEntry& entry) {
        const auto other = told(entry);
        standing.now = after_moves(standing, other);
        if (other) standing.dial = turned(standing.stood, standing.model, moves_told(standing.model, *other));
        standing.stood = standing.dial;
    }

    // Parts that ran since the test before were cut by the controls as they are now found to have stood; but nothing is found of
    // those that ran before the machine did something else.
    void recall_ran(const Group& group, const GroupStanding& standing, int tests) {
        for (Ran& ran : standing_.ran)
            if (ran.group_key == group.key && ran.after_tests == tests &&
                ran_in_setting_.at(identity(ran)) == settings_on(group))
                ran.settings = settings_by(standing.model, group.designed, standing.now);
    }

    void lock(const Group& group, const LogEntry& entry) {
        GroupStanding& standing = standing_of(group, entry);
        make_moves(standing, entry);
        standing.next = standing.now;
        standing.locked = true;
        standing.locked_at = entry.time;
        standing.advice.moves.clear();
        standing.advice.unread.clear();
    }

    // Another piece begins at the board: nothing of it has been cut.
    void note_lost(const std::string& part) {
        std::erase_if(standing_.ran, [&](const Ran& ran) { return ran.part == part; });
        auto& lost = standing_.lost;
        if (std::find(lost.begin(), lost.end(), part) == lost.end()) lost.push_back(part);
    }

    void note_ran(const LogEntry& entry) {
        Ran ran;
        ran.work_key = without_pass_count(entry.key);
        ran.part = entry.part;
        ran.reference = entry.reference;
        if (const Group* group = group_of(entry)) {
            ran.group_key = group->key;
            const auto standing = standing_.groups.find(group->key);
            ran.settings = standing == standing_.groups.end()
                               ? as_it_stands(*group).stands
                               : settings_by(standing->second.model, group->designed, standing->second.next);
            ran.after_tests = standing == standing_.groups.end() ? 0 : standing->second.tests;
            const auto& inserts = group->work.inserts;
            const bool inserted =
                group->cuts_end && std::any_of(inserts.begin(), inserts.end(), [&](const PartEnd& end) {
                    return end.part == entry.part && name_of(end.reference) == entry.reference;
                });
            ran.member = inserted ? Member::insert : Member::receiver;
        }
        for (const NamedLength& reading : entry.readings)
            if (reading.name == "size") ran.size = reading.value;
        // Told twice is run once, as it ran last.
        standing_.ran.erase(
            std::remove_if(standing_.ran.begin(), standing_.ran.end(),
                           [&](const Ran& other) { return identity(other) == identity(ran); }),
            standing_.ran.end());
        if (const Group* group = group_of(entry)) ran_in_setting_[identity(ran)] = settings_on(*group);
        standing_.ran.push_back(std::move(ran));
    }

    const Job& job_;
    const Design& design_;
    Standing standing_;
    std::map<std::string, MachineUse> uses_;  // by machine
    std::map<RanIdentity, int> ran_in_setting_;
    Group partner_;
};

}  // namespace

GroupTolerances tolerances_of(const Job& job) {
    const Tolerances& t = job.fit.tolerance;
    return {t.fit, t.shoulder_gap, t.step, t.depth, t.place};
}

const Group* partner_of(const Design& design, const Group& group) {
    if (group.cuts_slot || !group.cuts_end) return nullptr;
    for (const DrawerDesign& drawer : design.drawers)
        for (const JointKeys* keys : {&drawer.front_keys, &drawer.back_keys})
            if (keys->end == group.key) return design.group_with_key(keys->slot);
    return nullptr;
}

std::string cut_of(const std::string& work) {
    const std::size_t colon = work.find(": ");
    return colon == std::string::npos ? work : work.substr(colon + 2);
}

std::string without_pass_count(const std::string& key) {
    const std::size_t pass = key.rfind(", pass "), of = key.find(" of ", pass);
    if (pass == std::string::npos || of == std::string::npos) return key;
    const std::string number = key.substr(pass + 7, of - pass - 7), count = key.substr(of + 4);
    if (number == "1") return key.substr(0, pass);
    return number == count ? key.substr(0, pass) + ", last pass" : key;
}

std::string work_key(const Setup& setup, const Design& design) {
    for (const Group& group : design.groups)
        if (group.id == setup.group) return without_pass_count(group.key + " | " + cut_of(setup.work));
    return setup.stage == Stage::rip ? "rip" : "crosscut";
}

Standing replay(const Job& job, const Design& design) { return Replay(job, design).run(); }

Design with_standing(Design design, const Standing& standing) {
    for (Group& group : design.groups) {
        const auto found = standing.groups.find(group.key);
        if (found != standing.groups.end()) group.stands = stands_of(found->second, group.designed);
    }
    for (Group& group : design.groups) {
        const DrawerDesign* drawer =
            standing.groups.count(group.key) == 0 ? leader_of(design, group) : nullptr;
        if (drawer) group = with_reach(group, joints_as_cut(design, *drawer).front_reach);
    }
    return design;
}

}  // namespace kw
