#include "job/shared_ways.h"

#include <algorithm>

#include "job/planned.h"
#include "job/scheduling.h"
#include "order/without.h"

namespace kw {
namespace {

struct Timed {
    std::int64_t seconds = 0;
    bool proved = false;
};

// How a search is bounded.
struct Search {
    std::int64_t looks;
    const Watch& watch;
};

std::optional<Timed> timed(const order::Problem& problem, const Search& search) {
    const order::Result found =
        order::solve(problem, {.node_limit = search.looks, .stop = watched(search.watch)});
    if (found.order.empty()) return std::nullopt;
    return Timed{found.seconds, found.status == order::Status::proved};
}

// In how many places the drawer has a joint of this group.
int places_in(const DrawerDesign& drawer, const std::string& key) {
    int places = 0;
    for (const JointKeys* keys : {&drawer.front_keys, &drawer.back_keys, &drawer.bottom_keys})
        places += !key.empty() && (keys->slot == key || keys->end == key) ? 1 : 0;
    return places;
}

bool is_one_of(const std::vector<std::string>& drawers, const std::string& name) {
    return std::find(drawers.begin(), drawers.end(), name) != drawers.end();
}

bool is_of(const Pass& pass, const std::vector<std::string>& drawers) {
    return std::any_of(drawers.begin(), drawers.end(),
                       [&](const std::string& drawer) { return pass.part.rfind(drawer + ".", 0) == 0; });
}

// All the work without that joint of these drawers: of a setup that others share, without their ends. What must come before it is left
// as it is, so where one is shared it may be a little less.
std::optional<Timed> timed_without(const Job& job, const Design& design, Planned planned,
                                   const JointKeys& keys, const std::vector<std::string>& drawers,
                                   const Search& search) {
    std::vector<std::size_t> gone;
    bool is_shared = false;
    for (const std::string& key : {keys.slot, keys.end}) {
        for (const DrawerDesign& drawer : design.drawers)
            if (is_one_of(drawers, drawer.spec->name) && places_in(drawer, key) > 1) return std::nullopt;
        const Group* group = design.group_with_key(key);
        for (std::size_t i = 0; group && i < planned.setups.size(); ++i) {
            Setup& setup = planned.setups[i];
            if (setup.group != group->id || setup.passes.empty()) continue;
            setup.passes.erase(std::remove_if(setup.passes.begin(), setup.passes.end(),
                                              [&](const Pass& pass) { return is_of(pass, drawers); }),
                               setup.passes.end());
            if (setup.passes.empty()) gone.push_back(i);
            else is_shared = true;
        }
    }
    std::sort(gone.begin(), gone.end());
    auto found = timed(order::without(order_problem(job, planned.setups, planned.before), gone), search);
    if (found) found->proved = found->proved && !is_shared;
    return found;
}

}  // namespace

Surety surety_of(bool proved_with, bool proved_without) {
    if (proved_with) return proved_without ? Surety::exact : Surety::at_least;
    return proved_without ? Surety::at_most : Surety::about;
}

void sort_ways(WayReason& reason) {
    std::stable_sort(reason.ways.begin(), reason.ways.end(), [](const WayCost& a, const WayCost& b) {
        return std::pair(!a.picked, a.seconds) < std::pair(!b.picked, b.seconds);
    });
}

std::optional<WayReason> compare_alone(const Job& job, const Alternative& of, Picks& picks,
                                       std::int64_t looks, const Watch& watch) {
    const Search search{looks, watch};
    std::vector<Timed> with;
    std::optional<Timed> without_it;
    Picks trial = picks;
    for (std::size_t way = 0; way < of.ways.size(); ++way) {
        trial[of.id] = way;
        const auto made = design(job, trial);
        const auto planned = made ? planned_of(job, *made) : std::nullopt;
        const auto time =
            planned ? timed(order_problem(job, planned->setups, planned->before), search) : std::nullopt;
        if (!time) return std::nullopt;
        with.push_back(*time);
        if (way != of.picked) continue;
        without_it = timed_without(job, *made, *planned, of.keys[way], of.drawers, search);
        if (!without_it) return std::nullopt;
    }
    std::size_t best = of.picked;
    for (std::size_t way = 0; way < with.size(); ++way)
        if (with[way].seconds < with[best].seconds) best = way;
    picks[of.id] = best;
    WayReason reason{of.label, of.drawers, {}};
    for (std::size_t way = 0; way < with.size(); ++way)
        reason.ways.push_back({of.ways[way],
                               std::max<std::int64_t>(0, with[way].seconds - without_it->seconds),
                               way == best, surety_of(with[way].proved, without_it->proved)});
    sort_ways(reason);
    return reason;
}

}  // namespace kw
