#include "job/ways.h"

#include <algorithm>
#include <map>
#include <memory>
#include <set>

#include "job/planned.h"
#include "job/scheduling.h"
#include "job/shared_ways.h"
#include "order/cost.h"
#include "order/without.h"

namespace kw {
namespace {

// Beyond these the search would take longer than a maker waits: the ways that are usual stay, and no reasons are worked out.
constexpr std::size_t most_designs = 24;
constexpr std::size_t most_setups_for_reasons = 64, most_reasons = 6;
constexpr std::int64_t looks_per_choice = 200'000, looks_per_reason = 4'000, looks_per_usual = 25'000;

std::set<std::string> names_in(const Planned& planned, const Planned& but_not_in) {
    std::set<std::string> names(planned.names.begin(), planned.names.end());
    for (const std::string& name : but_not_in.names) names.erase(name);
    return names;
}

// An alternative with the setups that only one of its ways has.
struct OpenChoice {
    const Alternative* of = nullptr;
    std::vector<Planned> designs;              // by way
    std::vector<std::set<std::string>> names;  // by way
};

std::optional<OpenChoice> opened(const Job& job, const Design& design_of_usual, const Planned& usual,
                                 const Alternative& alternative) {
    Picks picks;
    for (const Alternative& one : design_of_usual.alternatives) picks[one.id] = one.picked;
    OpenChoice open{&alternative, {}, {}};
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

bool is_about(const std::string& entry_key, const JointKeys& keys) {
    const auto begins_with = [&](const std::string& group) {
        return !group.empty() && entry_key.rfind(group + " | ", 0) == 0;
    };
    return begins_with(keys.slot) || begins_with(keys.end);
}

// The way in which a part of the joint was cut; where none was, the way that was tested or locked last.
std::optional<std::size_t> begun_way(const Job& job, const Alternative& of) {
    const auto is_own = [&](const std::string& part) {
        return std::any_of(of.drawers.begin(), of.drawers.end(),
                           [&](const std::string& drawer) { return part.rfind(drawer + ".", 0) == 0; });
    };
    std::optional<std::size_t> tested;
    for (auto entry = job.log.rbegin(); entry != job.log.rend(); ++entry)
        for (std::size_t way = 0; way < of.keys.size(); ++way) {
            if (!is_about(entry->key, of.keys[way])) continue;
            if (entry->kind == LogKind::ran && is_own(entry->part)) return way;
            if (entry->kind != LogKind::ran && !tested) tested = way;
        }
    return tested;
}

Picks all_begun(const Job& job, const Design& usual) {
    Picks begun;
    if (job.log.empty()) return begun;
    for (const Alternative& alternative : usual.alternatives)
        if (const auto way = begun_way(job, alternative)) begun[alternative.id] = *way;
    return begun;
}

// All setups of all ways, each once, as one problem.
class Together {
public:
    Together(const Job& job, const Planned& usual, const std::vector<OpenChoice>& open) {
        add(usual);
        for (const OpenChoice& one : open)
            for (const Planned& design : one.designs) add(design);
        problem_ = order_problem(job, setups_, {before_.begin(), before_.end()});
        for (const OpenChoice& one : open) {
            problem_.choices.emplace_back();
            for (const auto& names : one.names) {
                problem_.choices.back().options.emplace_back();
                for (const std::string& name : names)
                    problem_.choices.back().options.back().push_back(number_.at(name));
            }
        }
    }

    const order::Problem& problem() const { return problem_; }

    std::vector<std::string> names_of(const std::vector<std::size_t>& order) const {
        std::vector<std::string> names(setups_.size()), named;
        for (const auto& [name, number] : number_) names[number] = name;
        for (const std::size_t i : order) named.push_back(names[i]);
        return named;
    }

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

order::Result solved(const order::Problem& problem, std::int64_t looks, const Watch& watch) {
    return order::solve(problem, {.node_limit = looks, .stop = watched(watch)});
}

// The maker hears of all the work only. Searches of a part of it, or of one way, repeat what was told of all, to be stopped with it.
class Told {
public:
    explicit Told(const Watch& watch) {
        if (!watch) return;
        of_all_ = [last = last_, watch](std::int64_t best_s, std::int64_t bound_s) {
            *last = {best_s, bound_s};
            return watch(best_s, bound_s);
        };
        of_a_part_ = [last = last_, watch](std::int64_t, std::int64_t) {
            return *last ? watch((*last)->first, (*last)->second) : SearchMore::yes;
        };
    }
    const Watch& of_all() const { return of_all_; }
    const Watch& of_a_part() const { return of_a_part_; }

private:
    using Seconds = std::optional<std::pair<std::int64_t, std::int64_t>>;  // of the best, and of the bound
    std::shared_ptr<Seconds> last_ = std::make_shared<Seconds>();
    Watch of_all_, of_a_part_;
};

bool is_proved(const order::Result& result) { return result.status == order::Status::proved; }

std::vector<std::size_t> all_but(const order::Choice& choice, std::optional<std::size_t> option) {
    std::vector<std::size_t> others;
    for (std::size_t o = 0; o < choice.options.size(); ++o)
        if (o != option) others.insert(others.end(), choice.options[o].begin(), choice.options[o].end());
    return others;
}

// An order of what is left without these operations, in the numbers of the whole problem.
std::vector<std::size_t> numbered_in(const order::Problem& problem, std::vector<std::size_t> without,
                                     const std::vector<std::size_t>& order) {
    std::sort(without.begin(), without.end());
    std::vector<std::size_t> numbers, all;
    for (std::size_t i = 0; i < problem.operations.size(); ++i)
        if (!std::binary_search(without.begin(), without.end(), i)) numbers.push_back(i);
    for (const std::size_t i : order) all.push_back(numbers[i]);
    return all;
}

struct Best {
    std::vector<std::size_t> picked;  // by choice
    std::vector<std::size_t> order;   // of all the work
    std::int64_t seconds = 0;
    bool proved = false;
};

// How long all the work without that joint takes, and whether that is proved: a short search, or what is left of the best order.
std::pair<std::int64_t, bool> seconds_without(const order::Problem& problem, const order::Choice& choice,
                                              const Best& best, const Watch& watch) {
    const std::vector<std::size_t> its = all_but(choice, std::nullopt);
    const order::Problem left = order::without(problem, its);
    std::vector<std::size_t> number(problem.operations.size(), 0), order;
    for (std::size_t i = 0, next = 0; i < number.size(); ++i)
        if (std::find(its.begin(), its.end(), i) == its.end()) number[i] = next++;
    for (const std::size_t i : best.order)
        if (std::find(its.begin(), its.end(), i) == its.end()) order.push_back(number[i]);
    const std::int64_t kept = order::price(left, order).seconds;
    const order::Result found = solved(left, looks_per_reason, watch);
    return {found.order.empty() ? kept : std::min(kept, found.seconds), is_proved(found)};
}

// What each way adds to all the work without that joint. Where a way turns out to be better than what was picked, it is picked.
WayReason reason_of(const order::Problem& problem, std::size_t c, const Alternative& of, Best& best,
                    const Watch& watch) {
    WayReason reason{of.label, of.drawers, {}};
    const order::Choice& choice = problem.choices[c];
    const auto [without_it, is_least] = seconds_without(problem, choice, best, watch);
    const std::size_t picked = best.picked[c];
    for (std::size_t way = 0; way < of.ways.size(); ++way) {
        order::Result with = solved(order::without(problem, all_but(choice, way)), looks_per_reason, watch);
        bool proved = is_proved(with);
        if (way == picked && (with.order.empty() || with.seconds >= best.seconds)) {
            with.seconds = best.seconds;
            proved = proved || best.proved;
        } else if (with.order.empty()) {
            continue;
        }
        if (way != picked && with.seconds < best.seconds) {
            with.picked.insert(with.picked.begin() + std::ptrdiff_t(c), way);
            best = {with.picked, numbered_in(problem, all_but(choice, way), with.order), with.seconds, false};
        }
        reason.ways.push_back({of.ways[way], std::max<std::int64_t>(0, with.seconds - without_it),
                               way == picked, surety_of(proved, is_least)});
    }
    sort_ways(reason);
    return reason;
}

// All reasons, for the best that is found on the way to them.
std::vector<WayReason> reasons_of(const order::Problem& problem, const std::vector<OpenChoice>& open,
                                  Best& best, const Watch& watch) {
    std::vector<WayReason> reasons;
    if (problem.operations.size() > most_setups_for_reasons || open.size() > most_reasons) return reasons;
    for (std::int64_t known = best.seconds + 1; best.seconds < known;) {
        known = best.seconds;
        reasons.clear();
        for (std::size_t c = 0; c < open.size() && best.seconds == known; ++c)
            reasons.push_back(reason_of(problem, c, *open[c].of, best, watch));
    }
    return reasons;
}

bool overlap(const OpenChoice& a, const OpenChoice& b) {
    for (const JointKeys& one : a.of->keys)
        for (const JointKeys& other : b.of->keys)
            if (one.slot == other.slot || (!one.end.empty() && one.end == other.end)) return true;
    for (const auto& names : a.names)
        for (const std::string& name : names)
            for (const auto& others : b.names)
                if (others.contains(name)) return true;
    return false;
}

struct Opened {
    std::vector<OpenChoice> all;
    std::vector<const Alternative*> shared;    // what they are made of stands and falls with others
    std::vector<const Alternative*> too_many;  // there is no time for
};

// Those that can be decided on each for itself, but for what is decided already.
Opened open_ones(const Job& job, const Design& usual, const Planned& planned, const Picks& decided) {
    Opened open;
    std::size_t designs = 0;
    for (const Alternative& alternative : usual.alternatives) {
        if (decided.contains(alternative.id)) continue;
        designs += alternative.ways.size() - 1;
        if (designs > most_designs) {
            open.too_many.push_back(&alternative);
            continue;
        }
        auto one = opened(job, usual, planned, alternative);
        if (one && std::none_of(open.all.begin(), open.all.end(),
                                [&](const OpenChoice& other) { return overlap(other, *one); }))
            open.all.push_back(std::move(*one));
        else open.shared.push_back(&alternative);
    }
    return open;
}

// All the work as it is usually cut: where the search had to stop early, that may be shorter.
void keep_the_usual_if_shorter(const order::Problem& problem, const std::vector<OpenChoice>& open, Best& best,
                               const Watch& watch) {
    std::vector<std::size_t> others, picked;
    for (std::size_t c = 0; c < open.size(); ++c) {
        picked.push_back(open[c].of->picked);
        for (const std::size_t i : all_but(problem.choices[c], picked.back())) others.push_back(i);
    }
    const order::Result usual = solved(order::without(problem, others), looks_per_usual, watch);
    if (!usual.order.empty() && usual.seconds < best.seconds)
        best = {picked, numbered_in(problem, others, usual.order), usual.seconds, false};
}

// Those that can be decided on together.
void choose_among(const Job& job, const Planned& planned, const Opened& opened, const Told& told,
                  FoundWays& found) {
    const std::vector<OpenChoice>& open = opened.all;
    const Together together(job, planned, open);
    const order::Problem& problem = together.problem();
    const order::Result result = solved(problem, looks_per_choice, told.of_all());
    if (result.order.empty()) return;
    Best best{result.picked, result.order, result.seconds, is_proved(result)};
    if (!is_proved(result)) keep_the_usual_if_shorter(problem, open, best, told.of_a_part());
    found.reasons = reasons_of(problem, open, best, told.of_a_part());
    found.order = together.names_of(best.order);
    if (opened.shared.empty() && opened.too_many.empty())
        found.lower_bound_seconds = result.lower_bound_seconds;
    for (std::size_t c = 0; c < open.size(); ++c) found.picks[open[c].of->id] = best.picked[c];
}

// The others are looked at one by one, while all else stays as it was found to be best.
void choose_one_by_one(const Job& job, const Planned& planned, const Opened& opened, const Told& told,
                       FoundWays& found) {
    for (const Alternative* one : opened.shared) {
        std::optional<WayReason> reason;
        if (planned.setups.size() <= most_setups_for_reasons && found.reasons.size() < most_reasons)
            reason = compare_alone(job, *one, found.picks, looks_per_reason, told.of_a_part());
        if (reason) found.reasons.push_back(std::move(*reason));
        else found.not_compared.push_back({one->label, one->drawers, one->ways[one->picked], true});
    }
    for (const Alternative* one : opened.too_many)
        found.not_compared.push_back({one->label, one->drawers, one->ways[one->picked], false});
}

// `decided`: what is not to be chosen any more.
FoundWays found_with(const Job& job, const Picks& decided, const Watch& watch) {
    const Told told(watch);
    FoundWays found{decided, {}, {}, {}, {}};
    const auto usual = design(job, decided);
    const auto planned = usual ? planned_of(job, *usual) : std::nullopt;
    if (!planned) return found;
    const Opened opened = open_ones(job, *usual, *planned, decided);
    if (!opened.all.empty()) choose_among(job, *planned, opened, told, found);
    choose_one_by_one(job, *planned, opened, told, found);
    return found;
}

}  // namespace

FoundWays find_ways(const Job& job, const Design& usual, const Watch& watch, const FoundWays* settled) {
    if (usual.alternatives.empty()) return {};
    // As if nothing were done yet, so that what is done changes nothing; unless the job was changed after that.
    FoundWays found = settled ? *settled : found_with(job, {}, watch);
    const Picks begun = all_begun(job, usual);
    const auto stays_as_begun = [&](const Alternative& one) {
        const auto way = begun.find(one.id);
        const auto picked = found.picks.find(one.id);
        return way == begun.end() ||
               way->second == (picked == found.picks.end() ? one.picked : picked->second);
    };
    const bool stays = std::all_of(usual.alternatives.begin(), usual.alternatives.end(), stays_as_begun);
    return stays ? found : found_with(job, begun, watch);
}

}  // namespace kw
