#include "job/plan.h"

#include <algorithm>

#include "job/notes.h"
#include "job/parts_of.h"
#include "job/scheduling.h"

namespace kw {
namespace {

template <class Items>
auto find_with_id(const Items& items, std::string_view id) -> decltype(items.data()) {
    const auto found = std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.id == id; });
    return found == items.end() ? nullptr : &*found;
}

// Setups named in the order in which they are done, so that the maker counts up.
std::vector<Setup> in_order(const std::vector<Setup>& setups, const std::vector<std::size_t>& order) {
    std::vector<Setup> sorted;
    for (const std::size_t index : order) {
        sorted.push_back(setups[index]);
        sorted.back().id = "S" + std::to_string(sorted.size());
    }
    return sorted;
}

std::vector<Problem> impossible(const std::vector<Setup>& setups, const std::vector<std::size_t>& culprits) {
    std::string names;
    for (const std::size_t index : culprits) names += (names.empty() ? "" : "; ") + setups[index].work;
    return {{"/drawers", Message::of("these setups wait for each other: ", names),
             Message::of("name a cutter on another machine for one of them")}};
}

}  // namespace

const Setup* Plan::setup_with_id(std::string_view id) const { return find_with_id(setups, id); }
const Group* Plan::group_with_id(std::string_view id) const { return find_with_id(groups, id); }
const Part* Plan::part_with_id(std::string_view id) const { return find_with_id(parts, id); }

tl::expected<Plan, std::vector<Problem>> make_plan(const Job& job, const Design& design) {
    Plan plan;
    plan.job = job.name;
    for (const DrawerDesign& drawer : design.drawers) plan.boxes.push_back({drawer.spec->name, drawer.box});
    plan.parts = parts_of(job, design);
    plan.groups = design.groups;

    auto setups = sizing_setups(with_implied_blades(job.shop), size_cuts_of(plan.parts));
    if (!setups)
        return tl::unexpected(std::vector<Problem>{
            {"/" + setups.error().field, setups.error().why, setups.error().remedy}});
    for (const Group& group : design.groups)
        for (Setup& setup : setups_of(group)) setups->push_back(std::move(setup));

    const Precedence precedence = precedence_of(design, *setups);
    const order::Result result = order::solve(order_problem(job, *setups, precedence.before));
    if (result.order.empty()) return tl::unexpected(impossible(*setups, result.culprits));
    plan.setups = in_order(*setups, result.order);
    for (const Setup& setup : plan.setups) plan.sequence.push_back(setup.id);
    plan.seconds = result.seconds;
    plan.lower_bound_seconds = result.lower_bound_seconds;
    plan.proved = result.status == order::Status::proved;
    plan.notes = design.notes;
    plan.notes.insert(plan.notes.end(), precedence.notes.begin(), precedence.notes.end());
    add_setup_notes(job, plan);
    return plan;
}

}  // namespace kw
