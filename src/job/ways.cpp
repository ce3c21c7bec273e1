#include "job/ways.h"

#include <algorithm>
#include <map>
#include <set>

#include "job/parts_of.h"
#include "job/scheduling.h"
#include "order/without.h"

namespace kw {
namespace {

// Beyond these the search would take longer than a maker waits: the ways that are usual stay, and no reasons are worked out.
constexpr std::size_t most_designs = 24;
constexpr std::size_t most_setups_for_reasons = 64, most_reasons = 6;
constexpr std::int64_t looks_per_choice = 200'000, looks_per_reason = 4'000;

struct Planned {
    std::vector<Setup> setups;
    std::vector<std::pair<int, int>> before;
    std::vector<std::string>
        names;  // of each setup: the same in every design in which it does the same for the same parts
    std::vector<std::string> groups;  // of each setup: its group's key
};

std::string name_of_sizing(const Setup& setup) {
    const Pass& first = setup.passes.front();
    return setup.machine + "|" + setup.work + "|" + std::to_string(setup.fence.ticks()) + "|" + first.part +
           "|" + std::string(name_of(first.reference));
}

std::optional<Planned> planned_of(const Job& job, const Design& design) {
    auto sizing = sizing_setups(with_implied_blades(job.shop), size_cuts_of(design, parts_of(job, design)));
    if (!sizing) return std::nullopt;
    Planned planned{std::move(*sizing), {}, {}, {}};
    for (const Setup& setup : planned.setups) planned.names.push_back(name_of_sizing(setup));
    planned.groups.resize(planned.setups.size());
    for (const Group& group : design.groups) {
        const std::string all =
            group.key + "|" + std::to_string(group.work.receivers.size() + group.work.inserts.size());
        for (Setup& setup : setups_of(group)) {
            planned.names.push_back(all + "|" + setup.work);
            planned.groups.push_back(group.key);
            planned.setups.push_back(std::move(setup));
        }
    }
    planned.before = precedence_of(design, planned.setups).before;
    return planned;
}

std::set<std::string> names_in(const Planned& planned, const Planned& but_not_in) {
    std::set<std::string> names(planned.names.begin(), planned.names.end());
    for (const std::string& name : but_not_in.names) names.erase(name);
    return names;
}

// An alternative with the setups that only one of its ways has.
struct Open {
    const Alternative* of = nullptr;
    std::vector<Planned> designs;              // by way
    std::vector<std::set<std::string>> names;  // by way
};

std::optional<Open> opened(const Job& job, const Design& design_of_usual, const Planned& usual,
                           const Alternative& alternative) {
    Picks picks;
    for (const Alternative& one : design_of_usual.alternatives) picks[one.id] = one.picked;
    Open open{&alternative, {}, {}};
    for (std::size_t way = 0; way < alternative.ways.size(); ++way) {
        if (way == alternative.picked) {
            open.designs.push_back(usual);
            continue;
        }
        picks[alternative.id] = way;
        const auto other = design(job, picks);
        auto planned = other ? planned_of(job, *other) : std::nullopt;
        if (!planned) return std::nullopt;
        open.designs.push_back(std::move(*planned));
    }
    // What the usual way has alone must be the same beside each of the others, and no two of those may share what the usual one lacks: else
    // they are no options of one choice.
    std::optional<std::set<std::string>> of_usual;
    std::set<std::string> of_others;
    for (std::size_t way = 0; way < open.designs.size(); ++way) {
        open.names.push_back(names_in(open.designs[way], usual));
        if (way == alternative.picked) continue;
        std::set<std::string> lacking = names_in(usual, open.designs[way]);
        if (lacking.empty() || open.names[way].empty() || (of_usual && *of_usual != lacking))
            return std::nullopt;
        of_usual = std::move(lacking);
        for (const std::string& name : open.names[way])
            if (!of_others.insert(name).second) return std::nullopt;
    }
    open.names[alternative.picked] = std::move(*of_usual);
    return open;
}

std::set<std::string> own_groups(const Open& open, std::size_t way) {
    std::set<std::string> own;
    const auto add = [&](std::size_t of, auto use) {
        for (std::size_t i = 0; i < open.designs[of].names.size(); ++i)
            if (open.names[of].contains(open.designs[of].names[i])) use(open.designs[of].groups[i]);
    };
    add(way, [&](const std::string& key) { own.insert(key); });
    for (std::size_t other = 0; other < open.names.size(); ++other)
        if (other != way) add(other, [&](const std::string& key) { own.erase(key); });
    own.erase("");
    return own;
}

// The way with which the joint was begun.
std::optional<std::size_t> begun_way(const Job& job, const Open& open) {
    for (auto entry = job.log.rbegin(); entry != job.log.rend(); ++entry)
        for (std::size_t way = 0; way < open.names.size(); ++way)
            for (const std::string& key : own_groups(open, way))
                if (entry->key.rfind(key + " | ", 0) == 0) return way;
    return std::nullopt;
}

// All setups of all ways, each once, as one problem.
class Together {
public:
    Together(const Job& job, const Planned& usual, const std::vector<Open>& open) {
        add(usual);
        for (const Open& one : open)
            for (const Planned& design : one.designs) add(design);
        problem_ = order_problem(job, setups_, {before_.begin(), before_.end()});
        for (const Open& one : open) {
            problem_.choices.emplace_back();
            for (const auto& names : one.names) {
                problem_.choices.back().options.emplace_back();
                for (const std::string& name : names)
                    problem_.choices.back().options.back().push_back(number_.at(name));
            }
        }
    }

    const order::Problem& problem() const { return problem_; }

private:
    void add(const Planned& design) {
        std::vector<int> number;
        for (std::size_t i = 0; i < design.setups.size(); ++i) {
            const auto [place, is_new] = number_.try_emplace(design.names[i], setups_.size());
            if (is_new) {
                setups_.push_back(design.setups[i]);
                // A group is told apart by what is in it, since designs number theirs each for itself.
                if (!setups_.back().group.empty())
                    setups_.back().group = design.names[i].substr(0, design.names[i].rfind('|'));
            }
            number.push_back(static_cast<int>(place->second));
        }
        for (const auto& [first, then] : design.before)
            before_.insert({number[std::size_t(first)], number[std::size_t(then)]});
    }

    std::vector<Setup> setups_;
    std::map<std::string, std::size_t> number_;
    std::set<std::pair<int, int>> before_;
    order::Problem problem_;
};

order::Result solved(const order::Problem& problem, std::int64_t looks, const Watch& watch = {}) {
    return order::solve(problem, {.node_limit = looks, .stop = watched(watch)});
}

std::vector<std::size_t> all_but(const order::Choice& choice, std::optional<std::size_t> option) {
    std::vector<std::size_t> others;
    for (std::size_t o = 0; o < choice.options.size(); ++o)
        if (o != option) others.insert(others.end(), choice.options[o].begin(), choice.options[o].end());
    return others;
}

struct Best {
    std::vector<std::size_t> picked;  // by choice
    std::int64_t seconds = 0;
};

// What each way adds to all the work without that joint. Where a way turns out to be better than what was picked, it is picked.
WayReason reason_of(const order::Problem& problem, std::size_t c, const Alternative& of, Best& best) {
    WayReason reason{of.label, of.drawers, {}};
    const order::Choice& choice = problem.choices[c];
    const std::int64_t without_it =
        solved(order::without(problem, all_but(choice, std::nullopt)), looks_per_reason).seconds;
    const std::size_t picked = best.picked[c];
    for (std::size_t way = 0; way < of.ways.size(); ++way) {
        order::Result with = solved(order::without(problem, all_but(choice, way)), looks_per_reason);
        if (way == picked) with.seconds = std::min(with.seconds, best.seconds);
        else if (with.seconds < best.seconds) {
            with.picked.insert(with.picked.begin() + std::ptrdiff_t(c), way);
            best = {with.picked, with.seconds};
        }
        reason.ways.push_back(
            {of.ways[way], std::max<std::int64_t>(0, with.seconds - without_it), way == picked});
    }
    std::stable_sort(reason.ways.begin(), reason.ways.end(), [](const WayCost& a, const WayCost& b) {
        return std::pair(!a.picked, a.seconds) < std::pair(!b.picked, b.seconds);
    });
    return reason;
}

// All reasons, for the best that is found on the way to them.
std::vector<WayReason> reasons_of(const order::Problem& problem, const std::vector<Open>& open, Best& best) {
    std::vector<WayReason> reasons;
    if (problem.operations.size() > most_setups_for_reasons || open.size() > most_reasons) return reasons;
    for (std::int64_t known = best.seconds + 1; best.seconds < known;) {
        known = best.seconds;
        reasons.clear();
        for (std::size_t c = 0; c < open.size() && best.seconds == known; ++c)
            reasons.push_back(reason_of(problem, c, *open[c].of, best));
    }
    return reasons;
}

bool overlap(const Open& a, const Open& b) {
    for (const auto& names : a.names)
        for (const std::string& name : names)
            for (const auto& others : b.names)
                if (others.contains(name)) return true;
    return false;
}

// Those that can be decided on each for itself, but for what is decided already.
std::vector<Open> open_ones(const Job& job, const Design& usual, const Planned& planned,
                            const Picks& decided) {
    std::vector<Open> all;
    std::size_t designs = 0;
    for (const Alternative& alternative : usual.alternatives) {
        designs += alternative.ways.size() - 1;
        if (designs > most_designs) break;
        if (decided.contains(alternative.id)) continue;
        auto open = opened(job, usual, planned, alternative);
        if (open &&
            std::none_of(all.begin(), all.end(), [&](const Open& one) { return overlap(one, *open); }))
            all.push_back(std::move(*open));
    }
    return all;
}

// `decided`: what is not to be chosen any more. `begun`: of the rest, what was begun in another way than is best.
FoundWays found_with(const Job& job, const Picks& decided, Picks& begun, const Watch& watch) {
    FoundWays found{decided, {}, {}};
    const auto usual = design(job, decided);
    const auto planned = usual ? planned_of(job, *usual) : std::nullopt;
    if (!planned) return found;
    const std::vector<Open> open = open_ones(job, *usual, *planned, decided);
    if (open.empty()) return found;
    const Together together(job, *planned, open);
    const order::Result result = solved(together.problem(), looks_per_choice, watch);
    if (result.order.empty()) return found;
    found.lower_bound_seconds = result.lower_bound_seconds;
    Best best{result.picked, result.seconds};
    found.reasons = reasons_of(together.problem(), open, best);
    for (std::size_t c = 0; c < open.size(); ++c) {
        found.picks[open[c].of->id] = best.picked[c];
        if (const auto way = begun_way(job, open[c]); way && *way != best.picked[c])
            begun[open[c].of->id] = *way;
    }
    return found;
}

}  // namespace

FoundWays find_ways(const Job& job, const Design& usual, const Watch& watch) {
    if (usual.alternatives.empty()) return {};
    // As if nothing were done yet, so that what is done changes nothing; unless the job was changed after that.
    Picks begun, none;
    FoundWays found = found_with(job, {}, begun, watch);
    return begun.empty() ? found : found_with(job, begun, none, watch);
}

}  // namespace kw
