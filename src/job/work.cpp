#include "job/work.h"

#include <algorithm>
#include <cassert>

#include "job/cut_again.h"
#include "job/on_hand.h"
#include "job/planned.h"
#include "setup/shims.h"
#include "testcut/first_setting.h"

namespace kw {

namespace {

// No caliper tells that from nothing; a scale's spread must be more than nothing.
constexpr double rounding_mm = 0.001;

// What the scales are to show for a group: as it was first set, as it is locked, or after the moves that a reading would ask for.
Settings on_the_scales(const Work& work, const Group& group) {
    const auto found = work.standing.groups.find(group.key);
    if (found == work.standing.groups.end()) return start_of(work, group).dial;
    const GroupStanding& standing = found->second;
    return standing.locked ? standing.dial : turned(standing.dial, standing.model, standing.advice.unread);
}

// Pin and cutter as the row has left them that leads, whatever these are believed to have come to.
Settings with_pin_of_row(const Work& work, const Group& group, Settings scales) {
    const Group* leads = leading_row(work.standing_design, work.standing, group);
    if (!leads) return scales;
    const Settings stands = on_the_scales(work, *leads);
    scales.fence = stands.fence;
    scales.kerf = stands.kerf;
    return scales;
}

// What is known of pin and cutter once they are locked by another row.
void know_pin(const Work& work, const Group& leads, Start& start) {
    const auto found = work.standing.groups.find(leads.key);
    if (found == work.standing.groups.end()) return;
    const Belief belief = planned(found->second);
    const auto known = [&](Scale& scale, const char* control, Length stands, Length dial) {
        scale.offset_mm = (stands - dial).mm();
        scale.spread_mm = std::max(spread_of(found->second.model, belief, control), rounding_mm);
    };
    known(start.scales.fence, "fence", leads.stands.fence, start.dial.fence);
    known(start.scales.kerf, "kerf", leads.stands.kerf, start.dial.kerf);
}

Start first_start(const Work& work, const Group& group) {
    const ChosenJoint& chosen = group.work.chosen;
    const Scales known = scales_for(work.memory, chosen.machine, chosen.cutter, work.day);
    Start start{group.stands, scales_of(group, known), work.job.tool};
    if (has_fingers(group.work.chosen.joint)) {
        start.row_to = row_to(group, start);
        start.sockets_up = most_sockets(group);
    }
    if (const Group* leads = leading_row(work.standing_design, work.standing, group)) {
        start.dial = with_pin_of_row(work, group, start.dial);
        know_pin(work, *leads, start);
    }
    start.dial = first_dial(
        model_of(group, tolerances_of(work.job), partner_of(work.standing_design, group), start), start.dial);
    start.dial = with_pin_of_row(work, group, start.dial);
    // The passes are planned by the known kerf, and the only one needs no second mark of the fence.
    if (group.cuts_slot && group.slot_passes() == 1) start.dial.shift = Length{};
    return start;
}

// Where a stack stands on the machine with other shims than the next step wants.
void add_shim_changes(Work& work) {
    std::map<std::string, Length> shims_of;  // by group
    const auto shims = [&](const Setup& setup) {
        const Group* group = work.plan.group_with_id(setup.group);
        if (!group || !lists_shims(group->work.chosen.cutter)) return Length{};
        const auto [known, is_new] = shims_of.try_emplace(setup.group);
        if (is_new) known->second = dial_of(work, setup).shims;
        return known->second;
    };
    // The order was sought without it: the bound stays below.
    const auto add = [&](RestStep& step) {
        step.changes.insert(step.changes.begin(), {"shims", work.job.times.shims_s});
        work.rest.seconds += work.job.times.shims_s;
        work.rest.proved = false;
    };
    std::map<std::string, const Setup*> on;
    for (const auto& [machine, id] : work.rest.stands) on[machine] = work.plan.setup_with_id(id);
    for (RestStep& step : work.rest.steps) {
        const Setup* setup = work.plan.setup_with_id(step.setup);
        const Setup*& before = on[setup->machine];
        if (before && before->cutter == setup->cutter && before->make_up == setup->make_up &&
            shims(*before) != shims(*setup))
            add(step);
        before = setup;
    }
}

// A slot of several passes, of which no test cut has told yet: where its cutter is known to cut wider or narrower than it is called, all
// of them as that kerf asks, so that the slot comes to its width by them. The scales are set for the same kerf.
void cut_by_known_kerf(Work& work) {
    for (const Group& group : work.plan.groups) {
        const bool several = group.cuts_slot && !group.slot_is_open() && group.designed.shift > Length{};
        if (!several || work.standing.groups.contains(group.key)) continue;
        const ChosenJoint& chosen = group.work.chosen;
        const Length wider = Length::nearest_mm(
            scales_for(work.memory, chosen.machine, chosen.cutter, work.day).kerf.offset_mm);
        if (wider == Length{}) continue;
        Group known = group;
        known.stands.kerf += wider;
        known.stands.shift = start_of(work, group).dial.shift;
        for (const Setup& cut : setups_of(known, group.slot_passes()))
            for (Setup& setup : work.plan.setups)
                if (setup.group == group.id && setup.work == cut.work) {
                    setup.fence = cut.fence;
                    setup.kerf = cut.kerf;
                }
    }
}

// The same of rows of fingers that are not begun: the pin is set for the kerf that is known, and the board is set over by both.
void cut_rows_by_known_kerf(Work& work) {
    for (const Group& group : work.plan.groups) {
        const bool is_begun =
            work.standing.groups.contains(group.key) || work.standing.groups.contains(group.row_of);
        if (!has_fingers(group.work.chosen.joint) || is_begun) continue;
        const Start start = start_of(work, group);
        Group known = group;
        known.stands.fence = start.dial.fence;
        known.stands.kerf = start.dial.kerf + Length::nearest_mm(start.scales.kerf.offset_mm);
        known.stands = in_row(known.stands, group, nullptr);
        for (const Setup& cut : setups_of(known))
            for (Setup& setup : work.plan.setups)
                if (setup.group == group.id && setup.work == cut.work) {
                    setup.fence = cut.fence;
                    setup.kerf = cut.kerf;
                    setup.spacer = cut.spacer;
                    setup.index = cut.index;
                    setup.passes = cut.passes;
                }
    }
}

// What the shop knows of each cutter's kerf; of a joint that was begun, what it knew when that was first tested or locked.
void note_known_kerfs(Work& work) {
    for (Cutter& cutter : work.job.shop.cutters)
        if (const Machine* machine = work.job.shop.machine_of(cutter))
            cutter.known_wider =
                Length::nearest_mm(scales_for(work.memory, *machine, cutter, work.day).kerf.offset_mm);
}
void keep_kerfs_as_begun(Design& design, const Standing& standing) {
    for (Group& group : design.groups)
        if (const auto begun = standing.groups.find(group.key); begun != standing.groups.end())
            group.work.chosen.cutter.known_wider =
                Length::nearest_mm(begun->second.start.scales.kerf.offset_mm);
}

// Nothing where a correction has added a pass, which has no name of its own.
std::optional<Settled> settled_by(const Work& work, const FoundWays& ways) {
    const auto planned = planned_of(work.job, work.design);
    const Plan& plan = work.plan;
    if (!planned || planned->names.size() != plan.order.size()) return std::nullopt;
    SettledOrder order{{}, plan.seconds, plan.lower_bound_seconds, plan.pins_s};
    for (const std::size_t i : plan.order) order.names.push_back(planned->names[i]);
    return Settled{ways, std::move(order)};
}

// A slot that takes another number of passes than its cutter is called for.
void add_notes_on_passes(Work& work) {
    for (const Group& group : work.plan.groups) {
        const Cutter& cutter = group.work.chosen.cutter;
        if (!group.cuts_slot || group.slot_is_open() || group.designed.shift <= Length{}) continue;
        const int called = passes_for(group.slot().width, cutter.kerf),
                  planned = planned_passes(group.slot().width, cutter);
        if (planned == called) continue;
        const bool wider = cutter.known_wider > Length{};
        work.plan.notes.push_back(
            {Level::note, group.work.label,
             Message::say(
                 wider ? "note.cuts_wider" : "note.cuts_narrower", cutter.name, abs(cutter.known_wider),
                 Message::say(planned == 1 ? "note.passes.one" : "note.passes.many", planned), called)});
    }
}

}  // namespace

tl::expected<std::shared_ptr<const Work>, std::vector<Problem>> work_out(Job job, Memory memory,
                                                                         std::string day, const Watch& watch,
                                                                         const Settled* settled) {
    auto work = std::make_shared<Work>();
    work->memory = std::move(memory);
    work->day = std::move(day);
    work->job = std::move(job);
    work->job.stock = stock_on_hand(work->job);
    note_known_kerfs(*work);
    auto designed = design(work->job);
    if (!designed) return tl::unexpected(std::move(designed.error()));
    if (settled) {
        const auto as_picked = design(work->job, settled->ways.picks);
        if (!as_picked || !is_settled(work->job, *as_picked, settled->order)) settled = nullptr;
    }
    bool is_ended = settled != nullptr;
    const Watch noting = watch ? Watch([&](std::int64_t best_s, std::int64_t bound_s) {
        const SearchMore more = watch(best_s, bound_s);
        is_ended = is_ended || more == SearchMore::no;
        return more;
    })
                               : Watch();
    const FoundWays ways = find_ways(work->job, *designed, noting, settled ? &settled->ways : nullptr);
    // What is picked is one of the ways that were designed without a problem.
    if (!ways.picks.empty()) designed = design(work->job, ways.picks);
    if (!designed) return tl::unexpected(std::move(designed.error()));
    work->reasons = ways.reasons;
    work->not_compared = ways.not_compared;
    work->design = std::move(*designed);
    work->standing = replay(work->job, work->design);
    keep_kerfs_as_begun(work->design, work->standing);
    work->standing_design = with_standing(work->design, work->standing);
    auto plan = make_plan(
        work->job, work->design, work->standing_design,
        {ways.lower_bound_seconds, ways.order, settled ? std::optional(settled->order) : std::nullopt},
        noting);
    if (!plan) return tl::unexpected(std::move(plan.error()));
    work->plan = std::move(*plan);
    if (is_ended) work->settled = settled_by(*work, ways);
    work->standing = with_cuts_again(std::move(work->standing), work->job, work->standing_design, work->plan);
    for (const Group& group : work->plan.groups)
        if (!work->standing.groups.contains(group.key))
            work->first_starts.emplace(group.key, first_start(*work, group));
    work->elsewhere = begun_elsewhere(work->job, work->design);
    for (const Elsewhere& one : work->elsewhere) work->plan.notes.push_back(note_of(one));
    work->rest = rest_of_work(work->job, work->standing_design, work->plan, work->standing, watch);
    add_shim_changes(*work);
    cut_by_known_kerf(*work);
    cut_rows_by_known_kerf(*work);
    add_notes_on_passes(*work);
    work->plan.sequence = work->rest.done;
    for (const RestStep& step : work->rest.steps) work->plan.sequence.push_back(step.step);
    work->affected = affected_parts(work->job, work->standing_design, work->plan, work->standing, work->rest);
    return work;
}

Start start_of(const Work& work, const Group& group) {
    const auto standing = work.standing.groups.find(group.key);
    if (standing != work.standing.groups.end()) return standing->second.start;
    const auto first = work.first_starts.find(group.key);
    assert(first != work.first_starts.end());
    return first->second;
}

Dial dial_of(const Work& work, const Setup& setup) {
    const Dial planned{setup.fence, setup.height.value_or(Length{}), setup.spacer, {}, {}, {}};
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group) return planned;
    Group shown = *group;
    shown.stands = with_pin_of_row(work, *group, on_the_scales(work, *group));
    Length fence_beyond, height_beyond;
    if (!work.standing.groups.contains(group->key)) {
        const Start start = start_of(work, *group);
        // No scale says where a pin stands.
        if (!has_fingers(group->work.chosen.joint))
            fence_beyond =
                start.dial.fence + Length::nearest_mm(start.scales.fence.offset_mm) - group->stands.fence;
        height_beyond =
            start.dial.height + Length::nearest_mm(start.scales.height.offset_mm) - group->stands.height;
    }
    // A finger is as wide as it is cut, whatever was set.
    if (has_fingers(group->work.chosen.joint)) shown.stands.spacer = group->stands.spacer;
    // The same cuts with the scales for the settings: the same setups in the same order.
    for (const Setup& other : setups_of(shown, group->slot_passes()))
        if (other.work == setup.work)
            return {other.fence,  other.height.value_or(Length{}),
                    other.spacer, shown.stands.kerf - group->designed.kerf,
                    fence_beyond, height_beyond};
    return planned;
}

Length kerf_as_put_on(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    // Of a group that is tested, the plan's kerf is the one that is believed; so it is of a row in which another was tested.
    const bool is_believed =
        group && (work.standing.groups.contains(group->key) || work.standing.groups.contains(group->row_of));
    if (!group || is_believed) return setup.kerf;
    const ChosenJoint& chosen = group->work.chosen;
    const Scales scales = scales_for(work.memory, chosen.machine, chosen.cutter, work.day);
    // Only listed shims are ever put in or left out.
    const Length put_on = lists_shims(chosen.cutter) ? start_of(work, *group).dial.kerf : group->stands.kerf;
    return put_on + Length::nearest_mm(scales.kerf.offset_mm);
}

std::vector<Lesson> lessons_of(const Work& work) {
    std::vector<Lesson> all;
    for (const Group& group : work.design.groups) {
        const auto found = work.standing.groups.find(group.key);
        if (found == work.standing.groups.end() || !found->second.locked || found->second.tests == 0)
            continue;
        const GroupStanding& standing = found->second;
        for (Lesson& lesson : lessons_of(group, standing.model, standing.now)) {
            lesson.tests = standing.tests;
            lesson.time = standing.locked_at;
            lesson.began = standing.began;
            lesson.job = work.job.name;
            all.push_back(std::move(lesson));
        }
    }
    return all;
}

bool has_run(const Work& work, const Setup& setup, const Pass& pass) {
    const std::string key = work_key(setup, work.design);
    return std::any_of(work.standing.ran.begin(), work.standing.ran.end(), [&](const Ran& ran) {
        return ran.work_key == key && ran.part == pass.part && ran.reference == name_of(pass.reference);
    });
}

bool is_locked(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group) return false;
    const auto found = work.standing.groups.find(group->key);
    return found != work.standing.groups.end() && found->second.locked;
}

bool is_torn_down(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    const auto found = group ? work.standing.groups.find(group->key) : work.standing.groups.end();
    if (found == work.standing.groups.end() || !found->second.locked || !found->second.torn_down)
        return false;
    return std::any_of(work.rest.steps.begin(), work.rest.steps.end(),
                       [&](const RestStep& step) { return step.setup == setup.id; });
}

}  // namespace kw
