#include "job/plan.h"

#include <algorithm>
#include <map>

#include "job/notes.h"
#include "job/parts_of.h"
#include "job/pin_words.h"
#include "job/pins.h"
#include "job/planned.h"
#include "job/scheduling.h"
#include "order/cost.h"
#include "words/names.h"

namespace kw {
namespace {

template <class Items>
auto find_with_id(const Items& items, std::string_view id) -> decltype(items.data()) {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.id == id; });
    return found == items.end() ? nullptr : &*found;
}

// The groups as designed, but for passes that a slot got by its correction.
std::vector<Group> with_added_passes(std::vector<Group> groups, const Design& standing) {
    for (std::size_t i = 0; i < groups.size(); ++i)
        if (standing.groups[i].slot_passes() > groups[i].slot_passes())
            groups[i].stands = standing.groups[i].stands;
    return groups;
}

// Passes with a number of their own: not those that a narrow kerf asks for, which may be learned in the midst of the work.
int numbered_passes(Group group) {
    const int planned = group.slot_passes();
    group.work.chosen.cutter.known_wider = Length{};
    return std::min(planned, group.slot_passes());
}

// Setups named in the order in which they are done, so that the maker counts up. A pass that was added goes by the number of its
// group's setup before it, S7b, so that nothing else changes its name.
std::vector<Setup> in_order(const std::vector<Setup>& setups, const std::vector<Group>& designed,
                            const std::vector<std::size_t>& order) {
    std::map<std::string, std::size_t> still_planned;  // by group
    for (const Group& group : designed)
        still_planned[group.id] = setups_of(group, numbered_passes(group)).size();
    std::vector<Setup> sorted;
    std::map<std::string, std::string> last_of;
    int number = 0;
    for (const std::size_t index : order) {
        Setup& setup = sorted.emplace_back(setups[index]);
        std::string& last = last_of[setup.group];
        if (setup.group.empty() || still_planned[setup.group] > 0) {
            setup.id = "S" + std::to_string(++number);
            last = setup.id + "a";
            if (!setup.group.empty()) --still_planned[setup.group];
        } else {
            ++last.back();
            setup.id = last;
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

struct Ordered {
    order::Result result;
    std::int64_t pins_s = 0;
    std::vector<Note> notes;
};

// The order of these setups by their names; empty where they are not the same.
std::vector<std::size_t> order_by_names(const Job& job, const Design& designed, std::size_t setups,
                                        const std::vector<std::string>& names) {
    if (names.size() != setups) return {};
    const auto planned = planned_of(job, designed);
    if (!planned || planned->names.size() != setups) return {};
    std::map<std::string, std::size_t> number;
    for (std::size_t i = 0; i < setups; ++i) number[planned->names[i]] = i;
    std::vector<std::size_t> order;
    for (const std::string& name : names)
        if (const auto found = number.find(name); found != number.end()) order.push_back(found->second);
    return order;
}

// A search that ends early may find less than the one for the ways has.
order::Result or_known(const order::Problem& problem, order::Result result,
                       const std::vector<std::size_t>& known) {
    if (known.empty() || order::first_breach(problem, known)) return result;
    const std::int64_t seconds = order::price(problem, known).seconds;
    if (!result.order.empty() && result.seconds <= seconds) return result;
    result.order = known;
    result.seconds = seconds;
    return result;
}

std::vector<Note> idle_notes(const Job& job, const Design& designed, const std::vector<Setup>& setups) {
    std::vector<Note> notes;
    for (const std::string& idle : idle_pins(job.pins, designed, setups)) {
        const std::string away = away_with(idle, job.shop);
        notes.push_back({Level::note, "order",
                         away.empty() ? Message::say("job.pin_idle", said_pin(idle))
                                      : Message::say("job.pin_away", away, said_pin(idle)),
                         Message::say("job.about.order")});
    }
    return notes;
}

// Pins that can't be kept are let go, and that is said: a plan is worth more.
Ordered in_best_order(const Job& job, const Design& designed, const std::vector<Setup>& setups,
                      const std::vector<std::pair<int, int>>& before, const std::vector<std::size_t>& known,
                      const Watch& watch) {
    const auto solved = [&](const std::vector<std::pair<int, int>>& pairs) {
        const order::Problem problem = order_problem(job, setups, pairs);
        return or_known(problem,
                        order::solve(problem, {.node_limit = looks_per_plan, .stop = watched(watch)}), known);
    };
    Ordered ordered{solved(before), 0, idle_notes(job, designed, setups)};
    std::vector<std::pair<int, int>> pairs = pinned_pairs(job.pins, designed, setups, before);
    if (pairs.empty()) return ordered;
    pairs.insert(pairs.end(), before.begin(), before.end());
    order::Result pinned = solved(pairs);
    if (pinned.order.empty()) {
        ordered.notes.push_back(
            {Level::warning, "order", Message::say("job.pins_let_go"), Message::say("job.about.order")});
        return ordered;
    }
    ordered.pins_s = std::max<std::int64_t>(0, pinned.seconds - ordered.result.seconds);
    ordered.result = std::move(pinned);
    return ordered;
}

// Nothing where the work is another by now, or where what is pinned is.
std::optional<order::Result> as_settled(const Job& job, const Design& designed,
                                        const std::vector<Setup>& setups,
                                        const std::vector<std::pair<int, int>>& before,
                                        const SettledOrder& settled) {
    order::Result result;
    result.order = order_by_names(job, designed, setups.size(), settled.names);
    if (result.order.size() != setups.size()) return std::nullopt;
    std::vector<std::pair<int, int>> pairs = pinned_pairs(job.pins, designed, setups, before);
    pairs.insert(pairs.end(), before.begin(), before.end());
    const order::Problem problem = order_problem(job, setups, pairs);
    if (order::first_breach(problem, result.order)) return std::nullopt;
    result.seconds = order::price(problem, result.order).seconds;
    if (result.seconds != settled.seconds) return std::nullopt;
    result.status = order::Status::limited;
    result.lower_bound_seconds = settled.lower_bound_seconds;
    return result;
}

std::vector<Problem> no_order(const std::vector<Setup>& setups, const order::Result& result) {
    if (result.status != order::Status::impossible)
        return {{"/drawers", Message::say("job.no_order_found", static_cast<int>(setups.size())),
                 Message::say("job.split_job")}};
    Message names;
    for (const std::size_t index : result.culprits)
        names = names + Message::of(names.empty() ? "" : "; ", Message::shown(work_word, setups[index].work));
    return {{"/drawers", Message::say("job.wait_for_each_other", names), Message::say("job.other_machine")}};
}

}  // namespace

std::size_t step_of(const Plan& plan, const std::string& step) {
    const auto found = std::find(plan.sequence.begin(), plan.sequence.end(), step);
    return static_cast<std::size_t>(found - plan.sequence.begin());
}

const Setup* Plan::setup_with_id(std::string_view id) const { return find_with_id(setups, id); }
const Group* Plan::group_with_id(std::string_view id) const { return find_with_id(groups, id); }
const Part* Plan::part_with_id(std::string_view id) const { return find_with_id(parts, id); }

bool is_settled(const Job& job, const Design& designed, const SettledOrder& settled) {
    const auto planned = planned_of(job, designed);
    return planned && as_settled(job, designed, planned->setups, planned->before, settled);
}

tl::expected<Plan, std::vector<Problem>> make_plan(const Job& job, const Design& designed,
                                                   const Design& standing, const FoundOrder& found,
                                                   const Watch& watch) {
    auto setups =
        sizing_setups(with_implied_blades(job.shop), size_cuts_of(designed, parts_of(job, designed)));
    if (!setups)
        return tl::unexpected(
            std::vector<Problem>{{"/" + setups.error().field, setups.error().why, setups.error().remedy}});
    const std::vector<Group> groups = with_added_passes(designed.groups, standing);
    for (const Group& group : groups)
        for (Setup& setup : setups_of(group)) setups->push_back(std::move(setup));

    const Precedence precedence = precedence_of(designed, *setups);
    auto settled =
        found.settled ? as_settled(job, designed, *setups, precedence.before, *found.settled) : std::nullopt;
    const Ordered ordered =
        settled ? Ordered{std::move(*settled), found.settled->pins_s, idle_notes(job, designed, *setups)}
                : in_best_order(job, designed, *setups, precedence.before,
                                order_by_names(job, designed, setups->size(), found.names), watch);
    const order::Result& result = ordered.result;
    if (result.order.empty()) return tl::unexpected(no_order(*setups, result));
    Plan plan;
    plan.job = job.name;
    for (const DrawerDesign& drawer : designed.drawers) plan.boxes.push_back({drawer.spec->name, drawer.box});
    plan.parts = parts_of(job, standing);
    plan.groups = standing.groups;
    plan.setups = as_they_stand(in_order(*setups, designed.groups, result.order), standing, plan);
    for (const Setup& setup : plan.setups) plan.sequence.push_back(setup.id);
    plan.seconds = result.seconds;
    plan.lower_bound_seconds =
        std::min(result.lower_bound_seconds, found.least_seconds.value_or(result.lower_bound_seconds));
    plan.proved = plan.seconds == plan.lower_bound_seconds;
    plan.notes = designed.notes;
    plan.notes.insert(plan.notes.end(), precedence.notes.begin(), precedence.notes.end());
    plan.notes.insert(plan.notes.end(), ordered.notes.begin(), ordered.notes.end());
    plan.pins_s = ordered.pins_s;
    plan.order = result.order;
    add_setup_notes(job, plan);
    return plan;
}

}  // namespace kw
