#include "job/plan.h"

#include <algorithm>
#include <map>

#include "job/notes.h"
#include "job/parts_of.h"
#include "job/scheduling.h"

namespace kw {
namespace {

template <class Items>
auto find_with_id(const Items& items, std::string_view id) -> decltype(items.data()) {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.id == id; });
    return found == items.end() ? nullptr : &*found;
}

// The groups as designed, but for a pass that a slot found too narrow got by its correction.
std::vector<Group> with_added_passes(std::vector<Group> groups, const Design& standing) {
    for (std::size_t i = 0; i < groups.size(); ++i)
        if (groups[i].designed.shift == Length{}) groups[i].stands.shift = standing.groups[i].stands.shift;
    return groups;
}

// Setups named in the order in which they are done, so that the maker counts up. A pass that was added goes by the number of its
// group's first setup, S7b, so that nothing else changes its name.
std::vector<Setup> in_order(const std::vector<Setup>& setups, const std::vector<Group>& groups,
                            const std::vector<std::size_t>& order) {
    std::vector<Setup> sorted;
    std::map<std::string, std::string> last_of;  // groups with an added pass
    int number = 0;
    for (const Group& group : groups)
        if (group.stands.shift > group.designed.shift) last_of[group.id];
    for (const std::size_t index : order) {
        sorted.push_back(setups[index]);
        const auto added = last_of.find(sorted.back().group);
        if (added == last_of.end() || added->second.empty()) {
            sorted.back().id = "S" + std::to_string(++number);
            if (added != last_of.end()) added->second = sorted.back().id + "a";
        } else {
            ++added->second.back();
            sorted.back().id = added->second;
        }
    }
    return sorted;
}

// The setup of the standing group that does the same work.
Setup standing_setup(const Setup& designed, const Design& standing) {
    for (const Group& group : standing.groups) {
        if (group.id != designed.group) continue;
        for (Setup& setup : setups_of(group)) {
            if (setup.work != designed.work) continue;
            setup.id = designed.id;
            return setup;
        }
    }
    return designed;
}

// Parts that were of one size as designed may stand at several: the setup is then set more than once, S7 and S7b.
std::vector<Setup> standing_sizes(const Setup& designed, const Plan& plan) {
    std::vector<Setup> setups;
    for (const Pass& pass : designed.passes) {
        const PartSize& size = plan.part_with_id(pass.part)->size;
        const Length fence = designed.stage == Stage::rip ? size.width : size.length;
        auto same = std::find_if(setups.begin(), setups.end(),
                                 [&](const Setup& setup) { return setup.fence == fence; });
        if (same == setups.end()) {
            Setup setup = designed;
            setup.fence = fence;
            setup.passes.clear();
            if (!setups.empty()) setup.id += static_cast<char>('a' + static_cast<int>(setups.size()));
            same = setups.insert(setups.end(), std::move(setup));
        }
        same->passes.push_back(pass);
    }
    return setups;
}

std::vector<Setup> as_they_stand(const std::vector<Setup>& designed, const Design& standing,
                                 const Plan& plan) {
    std::vector<Setup> setups;
    for (const Setup& setup : designed) {
        if (!setup.group.empty()) {
            setups.push_back(standing_setup(setup, standing));
            continue;
        }
        for (Setup& sized : standing_sizes(setup, plan)) setups.push_back(std::move(sized));
    }
    return setups;
}

// The plan is made anew with each key that the maker presses. Sixteen times as many looks take a fifth of a second for fifty
// setups, and find orders 0.15 % shorter (mean of a hundred random jobs).
constexpr std::int64_t looks_per_plan = 25'000;

std::vector<Problem> no_order(const std::vector<Setup>& setups, const order::Result& result) {
    if (result.status != order::Status::impossible)
        return {{"/drawers",
                 Message::of("no order of work was found for these ", static_cast<int>(setups.size()),
                             " setups, though there may be one"),
                 Message::of("split the job into two")}};
    std::string names;
    for (const std::size_t index : result.culprits) names += (names.empty() ? "" : "; ") + setups[index].work;
    return {{"/drawers", Message::of("these setups wait for each other: ", names),
             Message::of("name a cutter on another machine for one of them")}};
}

}  // namespace

const Setup* Plan::setup_with_id(std::string_view id) const { return find_with_id(setups, id); }
const Group* Plan::group_with_id(std::string_view id) const { return find_with_id(groups, id); }
const Part* Plan::part_with_id(std::string_view id) const { return find_with_id(parts, id); }

tl::expected<Plan, std::vector<Problem>> make_plan(const Job& job, const Design& designed,
                                                   const Design& standing) {
    auto setups =
        sizing_setups(with_implied_blades(job.shop), size_cuts_of(designed, parts_of(job, designed)));
    if (!setups)
        return tl::unexpected(
            std::vector<Problem>{{"/" + setups.error().field, setups.error().why, setups.error().remedy}});
    const std::vector<Group> groups = with_added_passes(designed.groups, standing);
    for (const Group& group : groups)
        for (Setup& setup : setups_of(group)) setups->push_back(std::move(setup));

    const Precedence precedence = precedence_of(designed, *setups);
    const order::Result result = order::solve(order_problem(job, *setups, precedence.before),
                                              {.node_limit = looks_per_plan, .stop = {}});
    if (result.order.empty()) return tl::unexpected(no_order(*setups, result));
    Plan plan;
    plan.job = job.name;
    for (const DrawerDesign& drawer : designed.drawers) plan.boxes.push_back({drawer.spec->name, drawer.box});
    plan.parts = parts_of(job, standing);
    plan.groups = standing.groups;
    plan.setups = as_they_stand(in_order(*setups, groups, result.order), standing, plan);
    for (const Setup& setup : plan.setups) plan.sequence.push_back(setup.id);
    plan.seconds = result.seconds;
    plan.lower_bound_seconds = result.lower_bound_seconds;
    plan.proved = result.status == order::Status::proved;
    plan.notes = designed.notes;
    plan.notes.insert(plan.notes.end(), precedence.notes.begin(), precedence.notes.end());
    add_setup_notes(job, plan);
    return plan;
}

}  // namespace kw
