#include <algorithm>
#include <tuple>

#include "job/follows.h"
#include "job/machine_use.h"
#include "job/parts_of.h"
#include "job/rows_cut.h"
#include "job/standing.h"
#include "job/work_order.h"
#include "testcut/chance.h"
#include "testcut/match_row.h"
#include "testcut/set_again.h"

namespace kw {
namespace {

// What is cut, of which part, at which end or edge.
using RanIdentity = std::tuple<std::string, std::string, std::string>;
RanIdentity identity(const Ran& ran) { return {ran.work_key, ran.part, ran.reference}; }

class Replay {
public:
    Replay(const Job& job, const Design& design) : job_(job), design_(design) {
        if (job.log.empty()) return;
        const auto sizing =
            sizing_setups(with_implied_blades(job.shop), size_cuts_of(design, parts_of(job, design)));
        if (sizing) sizing_ = *sizing;
    }

    Standing run() {
        for (const LogEntry* entry : in_order_of_work(job_.log)) {
            ++at_;
            if (!entry->together) told_with_.clear();
            if (entry->kind == LogKind::broken_down) {
                note_broken_down(*entry);
            } else if (!is_planned(*entry)) {
                ++standing_.forgotten;
                note_forgotten(*entry);
            } else if (entry->kind == LogKind::lost) {
                note_lost(*entry);
            } else {
                note_use(*entry);
            }
        }
        for (const Group& group : design_.groups)
            if (const auto found = standing_.groups.find(group.key); found != standing_.groups.end())
                note_torn_down(group, found->second);
        for (const Group& group : design_.groups)
            if (!group.row_of.empty() && standing_.groups.count(group.key) == 0 &&
                standing_.groups.count(group.row_of) > 0)
                standing_.pins_touched[group.key] = set_again(group);
        for (Ran& ran : standing_.ran)
            if (const Group* group = design_.group_with_key(ran.group_key))
                ran.set_again_since = ran_in_setting_.at(identity(ran)) <
                                      std::max(used_in_setting_[group->key], used_in_setting_[group->row_of]);
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

    const Group* group_of(const LogEntry& entry) const {
        return design_.group_with_key(std::string(group_in_key(entry.key)));
    }

    // Its machine was set for it all the same.
    void note_forgotten(const LogEntry& entry) {
        if (entry.kind == LogKind::lost) return;
        const Group* group = group_of(entry);
        if (!group) return note_unknown_use(entry);
        const auto standing = standing_.groups.find(group->key);
        if (standing != standing_.groups.end())
            set_again_by_hand(*group, standing->second, set_again(*group));
        uses_.note(group->work.chosen.machine.name, use_of(*group));
    }

    // For something of which no more is known.
    void note_unknown_use(const LogEntry& entry) {
        MachineUse use;
        use.what = entry.key;
        use.is_unknown = true;
        for (const std::string& machine : may_have_been_done_on(entry, job_.shop)) uses_.note(machine, use);
    }

    void note_use(const LogEntry& entry) {
        const Group* group = group_of(entry);
        if (!group) {
            note_sizing(entry);
            note_ran(entry);
            return;
        }
        const std::string& machine = group->work.chosen.machine.name;
        again_ = set_again(*group);
        uses_.note(machine, use_of(*group));
        if (entry.kind == LogKind::ran) note_ran(entry);
        else if (entry.kind == LogKind::test) test(*group, entry);
        else lock(*group, entry);
        // What was moved since.
        uses_.note(machine, use_of(*group));
        used_in_setting_[group->key] = settings_on(*group);
    }

    void note_sizing(const LogEntry& entry) {
        for (const Setup& setup : sizing_) {
            const bool is_it =
                (setup.stage == Stage::rip) == (entry.key == "rip") &&
                (entry.machine.empty() || entry.machine == setup.machine) &&
                std::any_of(setup.passes.begin(), setup.passes.end(), [&](const Pass& pass) {
                    return pass.part == entry.part && name_of(pass.reference) == entry.reference;
                });
            if (!is_it) continue;
            Settings dial;
            dial.fence = setup.fence;
            for (const NamedLength& reading : entry.readings)
                if (reading.name == "size") dial.fence = reading.value;
            dial.kerf = setup.kerf;
            uses_.note(setup.machine, {entry.key, setup.cutter, dial, true, false});
            return;
        }
        note_unknown_use(entry);
    }

    MachineUse use_of(const Group& group) const {
        const auto standing = standing_.groups.find(group.key);
        return {group.key, group.work.chosen.cutter.name,
                standing == standing_.groups.end() ? as_it_stands(group).stands : standing->second.dial,
                false, false};
    }

    std::vector<std::string> set_again(const Group& group) const {
        auto controls = uses_.set_again(group.work.chosen.machine.name, group.key);
        if (!group.row_of.empty() && standing_.groups.count(group.key) == 0) controls = pin_touched(group);
        // A blade or a bit that is put on again cuts as wide as before.
        if (group.work.chosen.cutter.kind != CutterKind::dado_stack) std::erase(controls, "kerf");
        return controls;
    }

    // Which of pin and cutter were set for something else since the row was cut that this one is to follow.
    std::vector<std::string> pin_touched(const Group& group) const {
        auto controls = uses_.set_again(group.work.chosen.machine.name, group.row_of);
        std::erase_if(controls, [](const std::string& control) { return !is_of_pin(control); });
        return controls;
    }

    int settings_on(const Group& group) const { return uses_.settings(group.work.chosen.machine.name); }

    // As it will be once it is set again: what is shown of it until then.
    void note_torn_down(const Group& group, GroupStanding& standing) const {
        standing.torn_down = !uses_.stands(group.work.chosen.machine.name, group.key);
        if (!standing.torn_down) return;
        standing.set_again = set_again(group);
        set_again_by_hand(group, standing, standing.set_again);
        if (standing.tests > 0)
            standing.advice.chance_in_tolerance = chance_in_tolerance(standing.model, standing.now);
    }

    static void set_by_hand(GroupStanding& standing, const std::vector<std::string>& controls) {
        standing.now = observe_set_again(standing.model, standing.now, controls, {});
        standing.next = observe_set_again(standing.model, standing.next, controls, {});
    }

    void set_again_by_hand(const Group& group, GroupStanding& standing,
                           const std::vector<std::string>& controls) const {
        match_row(job_, design_, standing_, group, standing, controls);
        set_by_hand(standing, controls);
    }

    GroupStanding& standing_of(const Group& group, const LogEntry& entry) {
        const auto [place, is_new] = standing_.groups.try_emplace(group.key);
        GroupStanding& standing = place->second;
        if (is_new) {
            standing.start = entry.start.value_or(
                Start{as_it_stands(group).stands, scales_of(group, usual_scales()), job_.tool});
            standing.model =
                model_of(as_it_stands(group), tolerances_of(job_), partner(group), standing.start);
            standing.now = belief_from_priors(standing.model);
            if (const auto leads = standing_.groups.find(group.row_of); leads != standing_.groups.end())
                standing.now =
                    with_pin_known(standing.model, standing.now, leads->second.model, planned(leads->second));
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
        standing.stands = standing_in_row(group, standing.stands);
        return standing;
    }

    const Group* partner(const Group& group) {
        const Group* slot = partner_of(design_, group);
        if (!slot) return nullptr;
        partner_ = as_it_stands(*slot);
        return &partner_;
    }

    // Where its controls stand by that belief; of a row of fingers, in the row that it follows.
    Settings settings_of(const Group& group, const Model& model, const Belief& belief) const {
        return standing_in_row(group, settings_by(model, group.designed, belief));
    }
    Settings standing_in_row(const Group& group, const Settings& settings) const {
        const Group* row = leading_row(design_, standing_, group);
        if (!row) return in_row(settings, group, nullptr);
        const Group leads = as_it_stands(*row);
        return in_row(settings, group, &leads);
    }

    // Before something is told of it: what it is cut by is set by hand, or moved.
    void begin(const Group& group, GroupStanding& standing, const LogEntry& entry) const {
        match_row(job_, design_, standing_, group, standing, again_);
        const std::vector<Move> moves = moves_made(standing, entry);
        const bool is_moved = std::any_of(moves.begin(), moves.end(), [&](const Move& move) {
            return is_of_pin(standing.model.controls[move.control].name);
        });
        if (!group.row_of.empty() && (is_moved || std::any_of(again_.begin(), again_.end(), is_of_pin)))
            standing.has_own_pin = true;
        make_moves(standing, entry);
    }

    static std::optional<std::vector<NamedLength>> told(const LogEntry& entry) {
        return entry.moved_given ? std::optional(entry.moved) : std::nullopt;
    }

    void test(const Group& group, const LogEntry& entry) {
        GroupStanding& standing = standing_of(group, entry);
        // The joint that was asked to be measured further is still the same cut.
        const bool same_cut = standing.tests > 0 && !standing.locked &&
                              standing.advice.kind == AdviceKind::measure && !entry.fresh_end &&
                              !told(entry) && again_.empty();
        const bool is_moved = !moves_made(standing, entry).empty();
        begin(group, standing, entry);
        if (entry.fresh_end) standing.now = predict_fresh_ends(standing.model, standing.now);
        standing.now =
            observe_set_again(standing.model, standing.now, again_, observations_of(standing.model, entry));
        if (!is_moved) recall_ran(group, standing, same_cut ? standing.tests - 1 : standing.tests);
        if (!same_cut) {
            ++standing.tests;
            standing.read.clear();
        }
        standing.locked = false;
        standing.tested_at = at_;
        for (const NamedLength& reading : entry.readings) standing.read.push_back(reading.name);
        standing.model = movable_from(std::move(standing.model), group, standing.stood);
        standing.advice =
            advise(standing.model, standing.now, advice_options(job_, standing.read, entry.felt));
        standing.next = predict_moves(standing.model, standing.now, standing.advice.moves);
        standing.dial = turned(standing.stood, standing.model, standing.advice.moves);
        standing.at_test = settings_of(group, standing.model, standing.now);
        if (entry.fresh_end || standing.tests == 1) standing.at_fresh_ends = standing.at_test;
    }

    // That were told, or else those that were advised.
    static std::vector<Move> moves_made(const GroupStanding& standing, const LogEntry& entry) {
        auto moves = entry.moved_given ? moves_told(standing.model, entry.moved) : standing.advice.moves;
        std::erase_if(moves, [](const Move& move) { return move.by_mm == 0.0; });
        return moves;
    }

    // Brings `now` to after the moves that were told, or else those that were advised; the dial stands there already for those.
    static void make_moves(GroupStanding& standing, const LogEntry& entry) {
        const auto other = told(entry);
        standing.now = after_moves(standing, other);
        if (other) standing.dial = turned(standing.stood, standing.model, moves_told(standing.model, *other));
        standing.stood = standing.dial;
    }

    // Parts that ran since the test before were cut by the controls as they are now found to have stood; but nothing is found of
    // those that ran before the machine did something else, or a control was moved.
    void recall_ran(const Group& group, const GroupStanding& standing, int tests) {
        for (Ran& ran : standing_.ran)
            if (ran.group_key == group.key && ran.after_tests == tests &&
                ran_in_setting_.at(identity(ran)) == settings_on(group))
                ran.settings = settings_of(group, standing.model, standing.now);
    }

    void lock(const Group& group, const LogEntry& entry) {
        GroupStanding& standing = standing_of(group, entry);
        begin(group, standing, entry);
        standing.next = standing.now;
        set_by_hand(standing, again_);
        standing.locked = true;
        standing.locked_at = entry.time;
        standing.lock_at = at_;
        told_with_ = group.key;
        standing.advice.moves.clear();
        standing.advice.unread.clear();
    }

    // Another piece begins at the board: nothing of it has been cut.
    void note_lost(const LogEntry& entry) {
        const std::string& part = entry.part;
        if (told_with_.empty()) standing_.lost_by.erase(part);
        else standing_.lost_by[part] = told_with_;
        std::erase_if(standing_.ran, [&](const Ran& ran) { return ran.part == part; });
        standing_.freed.erase(part);
        auto& lost = standing_.lost;
        if (std::find(lost.begin(), lost.end(), part) == lost.end()) lost.push_back(part);
    }

    void note_broken_down(const LogEntry& entry) {
        if (!entry.broken_down) return;
        const BrokenDown& down = *entry.broken_down;
        for (const FreedPart& freed : down.freed)
            standing_.freed.insert_or_assign(freed.part, Freed{down.stock, freed.length, freed.width});
    }

    void note_ran(const LogEntry& entry) {
        Ran ran;
        ran.work_key = without_pass_count(entry.key);
        ran.part = entry.part;
        ran.reference = entry.reference;
        ran.at = at_;
        if (const Group* group = group_of(entry)) {
            ran.group_key = group->key;
            const auto standing = standing_.groups.find(group->key);
            if (standing != standing_.groups.end()) {
                if (!group->row_of.empty() && std::any_of(again_.begin(), again_.end(), is_of_pin))
                    standing->second.has_own_pin = true;
                set_again_by_hand(*group, standing->second, again_);
            }
            ran.settings = standing == standing_.groups.end()
                               ? as_it_stands(*group).stands
                               : settings_of(*group, standing->second.model, standing->second.next);
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
        if (ran.size) note_sawn_off(ran);
        // Told twice is run once, as it ran last.
        standing_.ran.erase(
            std::remove_if(standing_.ran.begin(), standing_.ran.end(),
                           [&](const Ran& other) { return identity(other) == identity(ran); }),
            standing_.ran.end());
        if (const Group* group = group_of(entry)) ran_in_setting_[identity(ran)] = settings_on(*group);
        standing_.ran.push_back(std::move(ran));
    }

    // What is cut to a lesser size once more loses the tongue at the end that comes off.
    void note_sawn_off(const Ran& sized) {
        const auto against_the_stop = reference_named(sized.reference);
        const bool is_less = std::any_of(standing_.ran.begin(), standing_.ran.end(), [&](const Ran& before) {
            return identity(before) == identity(sized) && before.size &&
                   *before.size - *sized.size > job_.fit.tolerance.fit;
        });
        if (!is_less || !against_the_stop) return;
        const std::string_view end = name_of(opposite(*against_the_stop));
        std::erase_if(standing_.ran, [&](const Ran& ran) {
            return !ran.group_key.empty() && ran.member == Member::insert && ran.part == sized.part &&
                   ran.reference == end;
        });
    }

    const Job& job_;
    const Design& design_;
    Standing standing_;
    int at_ = 0;             // the entry that is replayed, from 1
    std::string told_with_;  // the group of the lock that what follows was told at once with; empty: of none
    std::vector<Setup> sizing_;
    MachineUses uses_;
    std::vector<std::string> again_;  // what had to be set by hand again for the entry that is replayed
    std::map<RanIdentity, int> ran_in_setting_;
    std::map<std::string, int>
        used_in_setting_;  // by group key: the setting of its machine in which it was used last
    Group partner_;
};

}  // namespace

Standing replay(const Job& job, const Design& design) { return Replay(job, design).run(); }

}  // namespace kw
