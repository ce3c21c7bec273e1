#include "job/standing.h"

#include <algorithm>

#include "job/follows.h"
#include "testcut/observe.h"

namespace kw {

Settings stands_of(const GroupStanding& standing, const Settings& designed) {
    Settings stands = settings_by(standing.model, designed, planned(standing));
    if (turned(standing.dial, standing.model, standing.advice.unread).shift <= Length{})
        stands.shift = Length{};
    return stands;
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

AdviceOptions advice_options(const Job& job, const std::vector<std::string>& read, const std::string& felt) {
    AdviceOptions options;
    options.wanted_chance = job.fit.wanted_chance;
    options.already_read = read;
    if (feel_of_word(felt) == Feel::will_not_enter)
        for (const char* closed : {"face_step", "shoulder_gap", "fit"})
            options.already_read.insert(options.already_read.end(), std::size_t(options.most_times), closed);
    return options;
}

GroupTolerances tolerances_of(const Job& job) {
    const Tolerances& t = job.fit.tolerance;
    return {t.fit, t.shoulder_gap, t.step, t.depth, t.place};
}

const Group* partner_of(const Design& design, const Group& group) {
    if (has_fingers(group.work.chosen.joint))
        return group.row_of.empty() ? nullptr : design.group_with_key(group.row_of);
    return slot_of(design, group);
}

const Group* leading_row(const Design& design, const Standing& standing, const Group& group) {
    if (group.row_of.empty()) return nullptr;
    const auto found = standing.groups.find(group.key);
    const bool has_own = found != standing.groups.end() && found->second.has_own_pin;
    return has_own ? nullptr : design.group_with_key(group.row_of);
}

const Group* slot_of(const Design& design, const Group& group) {
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
    for (Group& group : design.groups)
        group.stands = in_row(group.stands, group, leading_row(design, standing, group));
    return design;
}

}  // namespace kw
