#include "job/rest.h"

#include <algorithm>

#include "job/follows.h"
#include "job/recheck.h"
#include "words/names.h"

namespace kw {

Message part_message(const std::string& part) {
    const std::size_t role = part.rfind('.') + 1;
    return Message::say("quote.name",
                        Message::of(part.substr(0, role), Message::name("job.part_id.", part.substr(role))));
}

Message Affected::said() const { return Message::of(part_message(part), Message::say("list.comma"), what); }

namespace {

Message end_word(const std::string& reference) { return Message::name("end.", reference); }

Group with_ends_of(Group group, const std::string& part) {
    for (auto* ends : {&group.work.receivers, &group.work.inserts})
        std::erase_if(*ends, [&](const PartEnd& end) { return end.part != part; });
    return group;
}

// Parts that went through a group's setup before it was corrected.
std::optional<Affected> recheck_joint(const Job& job, const Design& design, const Standing& standing,
                                      const Ran& ran) {
    const Group* group = design.group_with_key(ran.group_key);
    if (!group) return std::nullopt;
    const auto locked = standing.groups.find(ran.group_key);
    const bool is_locked = locked != standing.groups.end() && locked->second.locked;
    // Where the row that this one follows is tested anew it is not said yet where it will stand.
    const auto leads = standing.groups.find(group->row_of);
    if (leads != standing.groups.end() && !leads->second.locked && leading_row(design, standing, *group))
        return std::nullopt;
    // A joint that is being set again is to come where these parts were cut. Once it is locked there, each of both settings may be
    // off by the tolerance, to either side.
    if (ran.set_again_since && !is_locked) return std::nullopt;
    const Length alike = (ran.set_again_since ? 2 : 1) * job.fit.tolerance.fit;
    // A row counts as far up as the board goes that it was cut on.
    const Group its = has_fingers(group->work.chosen.joint) ? with_ends_of(*group, ran.part) : *group;
    const Fate fate = fate_of(its, ran.member, ran.settings, group->stands, alike);
    if (fate == Fate::fine) return std::nullopt;
    // Another pass has gone over it since, as it is to be.
    const bool widened = differs_in_width_only(job, design, ran) &&
                         std::any_of(standing.ran.begin(), standing.ran.end(), [&](const Ran& other) {
                             return other.group_key == ran.group_key && other.part == ran.part &&
                                    other.reference == ran.reference &&
                                    fate_of(*group, other.member, other.settings, group->stands,
                                            job.fit.tolerance.fit) == Fate::fine;
                         });
    if (fate == Fate::recut && widened) return std::nullopt;
    return Affected{ran.part, fate,
                    fate == Fate::recut ? Message::say("job.run_again", end_word(ran.reference))
                                        : Message::say("job.part_lost", end_word(ran.reference)),
                    false, ran.group_key};
}

// By how much a part's size may be off. A front or a back whose own sockets are cut after its length is as long as these ask for where
// they are as deep as planned: the box is then as much narrower or wider as they may be off at both ends.
Length size_tolerance(const Job& job, const Design& design, const Part& part, bool is_width) {
    const auto drawer = std::find_if(design.drawers.begin(), design.drawers.end(),
                                     [&](const DrawerDesign& one) { return one.spec->name == part.drawer; });
    const Role role = part.size.role;
    const bool by_own_row = !is_width && drawer != design.drawers.end() &&
                            ((role == Role::front && has_row_of_its_own(drawer->front, drawer->front_keys)) ||
                             (role == Role::back && has_row_of_its_own(drawer->back, drawer->back_keys)));
    return by_own_row ? max(2 * job.fit.tolerance.step, job.fit.tolerance.fit) : job.fit.tolerance.fit;
}

// How far what goes into the receiver reaches by these settings.
Length reach_at(const Group& group, const Settings& settings) {
    return has_fingers(group.work.chosen.joint) ? settings.height : far_at_end(settings);
}

// By how much less the part's own tongues or fingers reach that are cut, than they would if they were cut now: it need not be longer for these.
Length short_of_reach(const Design& design, const Standing& standing, const std::string& part) {
    Length less;
    for (const Ran& ran : standing.ran) {
        const Group* group = design.group_with_key(ran.group_key);
        if (group && ran.part == part && ran.member == Member::insert)
            less += reach_at(*group, group->stands) - reach_at(*group, ran.settings);
    }
    return less;
}

// Parts already cut to a size that has changed since.
std::optional<Affected> recheck_size(const Job& job, const Design& design, const Plan& plan,
                                     const Standing& standing, const Ran& ran) {
    const Part* part = plan.part_with_id(ran.part);
    if (!part || !ran.size) return std::nullopt;
    const bool is_width = ran.work_key == "rip";
    const Length wanted =
        is_width ? part->size.width : part->size.length - short_of_reach(design, standing, ran.part);
    const Length less = wanted - *ran.size;
    if (abs(less) <= size_tolerance(job, design, *part, is_width)) return std::nullopt;
    if (less < Length{})
        return Affected{ran.part, Fate::recut, Message::say("job.take_off", *ran.size, -less, wanted)};
    return Affected{ran.part, Fate::lost, Message::say("job.too_short", *ran.size, wanted, less)};
}

void add_keys(std::vector<std::string>& all, const JointKeys& keys) {
    for (const std::string& key : {keys.slot, keys.end})
        if (!key.empty()) all.push_back(key);
}

// The groups whose test cuts and locks say how large a part is; see size_parts.
std::vector<std::string> groups_behind_size(const Design& design, const Part& part, bool is_width) {
    std::vector<std::string> keys;
    const Role role = part.size.role;
    for (const DrawerDesign& drawer : design.drawers) {
        if (drawer.spec->name != part.drawer) continue;
        if (role == Role::bottom || (role == Role::back && is_width)) add_keys(keys, drawer.bottom_keys);
        if (role == Role::bottom || (role == Role::back && !is_width)) add_keys(keys, drawer.back_keys);
        if (role == Role::bottom || (role == Role::front && !is_width) ||
            (role == Role::back && !is_width && drawer.back_follows_front))
            add_keys(keys, drawer.front_keys);
    }
    return keys;
}

// The same, of how this end or edge is to be.
std::vector<std::string> groups_behind(const Design& design, const Plan& plan, const Ran& ran) {
    const Group* group = design.group_with_key(ran.group_key);
    const Part* part = plan.part_with_id(ran.part);
    if (!group)
        return part ? groups_behind_size(design, *part, ran.work_key == "rip") : std::vector<std::string>{};
    std::vector<std::string> keys{group->key};
    if (const DrawerDesign* leader = leader_of(design, *group)) add_keys(keys, leader->front_keys);
    return keys;
}

// With what the log told last of those since the end has run; as it is where nothing in the log has changed how it is to be.
Message with_change(Message what, const Design& design, const Plan& plan, const Standing& standing,
                    const Ran& ran) {
    const GroupStanding* last = nullptr;
    const Group* its = nullptr;
    for (const std::string& key : groups_behind(design, plan, ran)) {
        const auto found = standing.groups.find(key);
        if (found == standing.groups.end()) continue;
        const int at = std::max(found->second.tested_at, found->second.lock_at);
        if (at < ran.at || (last && at < std::max(last->tested_at, last->lock_at))) continue;
        last = &found->second;
        its = design.group_with_key(key);
    }
    if (!last) return what;
    const Message joint = Message::shown(work_word, its->work.label);
    return last->tested_at > ran.at ? Message::say("job.changed_by_test", what, joint, last->tests)
                                    : Message::say("job.changed_by_lock", what, joint);
}

// A part that was lost and is not made again yet: the setups that it must still go through, and which of them are set.
std::optional<Affected> remake(const Plan& plan, const Standing& standing, const Rest& rest,
                               const std::string& part) {
    std::vector<Message> setups;
    for (const RestStep& step : rest.steps) {
        if (std::find(step.parts.begin(), step.parts.end(), part) == step.parts.end()) continue;
        const Message work = Message::shown(work_word, plan.setup_with_id(step.setup)->work);
        setups.push_back(step.set_again   ? Message::say("job.to_be_set_again", work)
                         : step.still_set ? Message::say("job.still_set", work)
                                          : work);
    }
    if (setups.empty()) return std::nullopt;
    const bool is_begun = std::any_of(standing.ran.begin(), standing.ran.end(),
                                      [&](const Ran& ran) { return ran.part == part; });
    return Affected{
        part, Fate::lost,
        Message::say(is_begun ? "job.goes_on_again" : "job.make_again", Message::list(setups, "list.comma")),
        true};
}

}  // namespace

std::optional<Affected> recheck(const Job& job, const Design& design, const Plan& plan,
                                const Standing& standing, const Ran& ran) {
    auto affected = ran.group_key.empty() ? recheck_size(job, design, plan, standing, ran)
                                          : recheck_joint(job, design, standing, ran);
    if (affected) {
        affected->work_key = ran.work_key;
        affected->reference = ran.reference;
    }
    return affected;
}

bool differs_in_width_only(const Job& job, const Design& design, const Ran& ran) {
    const Group* group = design.group_with_key(ran.group_key);
    const Length alike = job.fit.tolerance.fit;
    return group && abs(ran.settings.height - group->stands.height) <= alike &&
           abs(ran.settings.fence - group->stands.fence) <= alike;
}

std::vector<Affected> affected_parts(const Job& job, const Design& design, const Plan& plan,
                                     const Standing& standing, const Rest& rest) {
    std::vector<Affected> out;
    for (const Ran& ran : standing.ran) {
        auto affected = recheck(job, design, plan, standing, ran);
        if (!affected) continue;
        // It would be open again, were there no slot at the end that comes off.
        const Part* part = plan.part_with_id(ran.part);
        if (part && ran.size && affected->fate == Fate::recut)
            affected->what = Message::say("job.too_long_at_slot", *ran.size, part->size.length,
                                          *ran.size - part->size.length);
        affected->what = with_change(std::move(affected->what), design, plan, standing, ran);
        out.push_back(std::move(*affected));
    }
    for (const Ran& ran : standing.again) {
        auto affected = recheck(job, design, plan, standing, ran);
        if (affected) affected->what = with_change(std::move(affected->what), design, plan, standing, ran);
        out.push_back(affected.value_or(
            Affected{ran.part, Fate::recut, Message::say("job.run_again_at_length", end_word(ran.reference)),
                     false, ran.group_key, ran.work_key, ran.reference}));
    }
    for (const std::string& part : standing.lost) {
        auto affected = remake(plan, standing, rest, part);
        if (!affected) continue;
        if (const auto by = standing.lost_by.find(part); by != standing.lost_by.end())
            affected->what =
                Message::say("job.changed_by_lock", affected->what,
                             Message::shown(work_word, design.group_with_key(by->second)->work.label));
        out.push_back(std::move(*affected));
    }
    return out;
}

}  // namespace kw
