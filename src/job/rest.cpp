#include "job/rest.h"

#include <algorithm>
#include <set>

#include "job/pins.h"
#include "job/precedence.h"
#include "job/scheduling.h"
#include "job/spacer_left.h"
#include "job/work_order.h"
#include "order/cost.h"

namespace kw {
namespace {

// As for the whole plan.
constexpr std::int64_t looks_per_rest = 25'000;

// No stop is set as finely (common practice, no source).
constexpr Length same_stop = Length::micrometres(10);

// One setup with the ends that have still to go through it; or with those that can only do so when it is set again.
struct Open {
    std::size_t of = 0;  // index in Plan::setups
    bool later = false;
    Setup setup;
};

class Remaining {
public:
    Remaining(const Job& job, const Design& design, const Plan& plan, const Standing& standing,
              const Watch& watch)
        : job_(job), plan_(plan), standing_(standing), watch_(watch) {
        for (const Ran& ran : standing.ran)
            ran_.insert(ran.work_key + "\n" + ran.part + "\n" + ran.reference);
        for (const Setup& setup : plan.setups) keys_.push_back(work_key(setup, design));
        before_ = precedence_of(design, plan.setups).before;
        pinned_ = pinned_pairs(job.pins, design, plan.setups, before_);
        note_used();
    }

    Rest run() {
        Rest rest;
        rest.begun = !used_.empty();
        rest.stands = stands_;
        rest.sized_to = sized_to_;
        const std::vector<std::size_t> done = done_in_order();
        for (const std::size_t i : done) rest.done.push_back(plan_.setups[i].id);
        for (const order::Step& step : order::price(order_problem(job_, plan_.setups, {}), done).steps)
            rest.done_steps.push_back(done_step(step));
        gather_open();
        order::Problem problem = rest_problem();
        std::vector<std::size_t> planned = as_planned();
        std::vector<std::size_t> order = planned;
        rest.proved = plan_.proved;
        bool may_stay = later_.empty() && !order::first_breach(problem, planned);
        if (!may_stay || !goes_as_planned()) {
            order::Result found =
                order::solve(problem, {.node_limit = looks_per_rest, .stop = watched(watch_)});
            if (found.order.empty() && !pinned_.empty()) {
                // What stands weighs more than what is pinned.
                pinned_.clear();
                problem = rest_problem();
                may_stay = later_.empty() && !order::first_breach(problem, planned);
                found = order::solve(problem, {.node_limit = looks_per_rest, .stop = watched(watch_)});
            }
            if (found.order.empty()) {
                // Not all that stands can be kept standing: then all of it is set again, and tested.
                keeps_standing_ = false;
                gather_open();
                problem = rest_problem();
                order = planned = as_planned();
                may_stay = !order::first_breach(problem, planned);
                found = order::solve(problem, {.node_limit = looks_per_rest, .stop = watched(watch_)});
            }
            rest.proved = found.status == order::Status::proved;
            rest.lower_bound_seconds = found.lower_bound_seconds;
            // No order at all: what is known is that nothing goes through in no time.
            if (found.order.empty())
                for (const order::Operation& operation : problem.operations)
                    rest.lower_bound_seconds += operation.duration_s;
            // Of two orders of one length the maker keeps the known one.
            const bool better = !may_stay || found.seconds < order::price(problem, planned).seconds;
            if (!found.order.empty() && better) order = found.order;
        }
        const order::Price price = order::price(problem, order);
        rest.seconds = price.seconds;
        if (rest.proved || rest.lower_bound_seconds == 0)
            rest.lower_bound_seconds =
                rest.proved
                    ? price.seconds
                    : std::max<std::int64_t>(0, price.seconds - (plan_.seconds - plan_.lower_bound_seconds));
        for (const order::Step& step : price.steps) rest.steps.push_back(step_of(step));
        note_spacers_left(rest.steps, plan_, stands_, tested_last_);
        return rest;
    }

private:
    // Which setups were used, in turn.
    void note_used() {
        std::map<std::string, std::vector<std::size_t>> by_key;
        for (std::size_t i = 0; i < keys_.size(); ++i) by_key[keys_[i]].push_back(i);
        for (const LogEntry* entry : in_order_of_work(job_.log)) {
            if (entry->kind == LogKind::lost || entry->kind == LogKind::broken_down) continue;
            const auto setup = setup_of(*entry, by_key[without_pass_count(entry->key)]);
            if (setup && (used_.empty() || used_.back() != *setup)) used_.push_back(*setup);
            // A lock leaves it as the test before has.
            if (setup && entry->kind != LogKind::lock)
                tested_last_[plan_.setups[*setup].machine] = entry->kind == LogKind::test;
            const bool is_where_planned =
                setup && (entry->machine.empty() || entry->machine == plan_.setups[*setup].machine);
            if (is_where_planned) note_standing(*setup, *entry);
            else note_unknown(*entry);
        }
    }

    void note_standing(std::size_t i, const LogEntry& entry) {
        const Setup& used = plan_.setups[i];
        sized_to_.erase(used.machine);
        for (const NamedLength& reading : entry.readings)
            if (used.group.empty() && reading.name == "size" && abs(reading.value - used.fence) > same_stop)
                sized_to_[used.machine] = reading.value;
        stands_[plan_.setups[i].machine] = plan_.setups[i].id;
        unknown_.erase(plan_.setups[i].machine);
    }

    // Something that is no longer planned, or not there: how it has left its machine is not known.
    void note_unknown(const LogEntry& entry) {
        for (const std::string& machine : may_have_been_done_on(entry, job_.shop)) {
            stands_.erase(machine);
            unknown_.insert(machine);
        }
    }

    // The setup that cut what it tells. A part that is gone from the job went through the setup of that cut all the same; but a size
    // goes by its part alone.
    std::optional<std::size_t> setup_of(const LogEntry& entry, const std::vector<std::size_t>& setups) const {
        if (entry.kind == LogKind::ran)
            for (const std::size_t i : setups)
                if (passes_through(plan_.setups[i], entry)) return i;
        const bool of_joint = !setups.empty() && !plan_.setups[setups.front()].group.empty();
        return of_joint ? std::optional(setups.front()) : std::nullopt;
    }

    static bool passes_through(const Setup& setup, const LogEntry& entry) {
        return std::any_of(setup.passes.begin(), setup.passes.end(), [&](const Pass& pass) {
            return pass.part == entry.part && name_of(pass.reference) == entry.reference;
        });
    }

    bool is_open(std::size_t i, const Pass& pass) const {
        return !ran_.contains(keys_[i] + "\n" + pass.part + "\n" + std::string(name_of(pass.reference)));
    }
    bool is_done(std::size_t i) const {
        const auto& passes = plan_.setups[i].passes;
        return std::none_of(passes.begin(), passes.end(), [&](const Pass& pass) { return is_open(i, pass); });
    }

    std::vector<std::size_t> done_in_order() const {
        std::vector<std::size_t> done;
        for (auto used = used_.rbegin(); used != used_.rend(); ++used)
            if (is_done(*used) && std::find(done.begin(), done.end(), *used) == done.end())
                done.push_back(*used);
        std::reverse(done.begin(), done.end());
        return done;
    }

    const GroupStanding* standing_of(const Setup& setup) const {
        const Group* group = plan_.group_with_id(setup.group);
        const auto found = group ? standing_.groups.find(group->key) : standing_.groups.end();
        return found == standing_.groups.end() ? nullptr : &found->second;
    }
    bool is_locked(const Setup& setup) const {
        const GroupStanding* standing = standing_of(setup);
        return standing && standing->locked;
    }
    // Tested or locked, and nothing else was done on its machine since.
    bool still_stands(const Setup& setup) const {
        if (!keeps_standing_) return false;
        const GroupStanding* standing = standing_of(setup);
        return standing && !standing->torn_down;
    }

    // Machines to which a part must still come before it can be cut along an edge, or at an end.
    struct Sizing {
        std::set<std::string> before_edges, before_ends;
    };
    std::map<std::string, Sizing> sizing_left() const {
        std::map<std::string, Sizing> of_part;
        for (std::size_t i = 0; i < plan_.setups.size(); ++i) {
            const Setup& setup = plan_.setups[i];
            for (const Pass& pass : setup.passes) {
                if (!setup.group.empty() || !is_open(i, pass)) continue;
                Sizing& sizing = of_part[pass.part];
                sizing.before_ends.insert(setup.machine);
                if (setup.stage == Stage::rip) sizing.before_edges.insert(setup.machine);
            }
        }
        return of_part;
    }

    void gather_open() {
        open_.clear();
        now_.clear();
        later_.clear();
        const auto sizing = sizing_left();
        std::set<std::string> tested;  // groups, as they are told apart here
        const auto add = [&](std::size_t i, bool later, std::vector<Pass> passes) {
            if (passes.empty()) return;
            Open open{i, later, plan_.setups[i]};
            open.setup.passes = std::move(passes);
            const bool set_now = !later && is_locked(open.setup) && still_stands(open.setup);
            if (later) open.setup.group += ", again";
            open.setup.test_cut =
                !open.setup.group.empty() && tested.insert(open.setup.group).second && !set_now;
            (later ? later_ : now_)[i] = open_.size();
            open_.push_back(std::move(open));
        };
        for (std::size_t i = 0; i < plan_.setups.size(); ++i) {
            const Setup& setup = plan_.setups[i];
            const bool stands = !setup.group.empty() && still_stands(setup);
            std::vector<Pass> now, later;
            for (const Pass& pass : setup.passes) {
                if (!is_open(i, pass)) continue;
                const auto left = sizing.find(pass.part);
                const bool edge =
                    pass.reference == Reference::bottom_edge || pass.reference == Reference::top_edge;
                const bool away =
                    stands && left != sizing.end() &&
                    (edge ? left->second.before_edges : left->second.before_ends).contains(setup.machine);
                (away ? later : now).push_back(pass);
            }
            add(i, false, std::move(now));
            add(i, true, std::move(later));
        }
    }

    static bool share_a_part(const Setup& a, const Setup& b) {
        std::set<std::string> parts;
        for (const Pass& pass : a.passes) parts.insert(pass.part);
        return std::any_of(b.passes.begin(), b.passes.end(),
                           [&](const Pass& pass) { return parts.contains(pass.part); });
    }

    // What was to be known before is known where the joint is locked; but a bottom is still cut last, after the dry fit.
    bool still_waits(const Open& first, const Open& then) const {
        const Setup &a = plan_.setups[first.of], &b = plan_.setups[then.of];
        switch (waits_of(plan_, a, b, b.passes.front().part)) {
            case Waits::group: return first.later == then.later || then.later;
            case Waits::part: return share_a_part(first.setup, then.setup);
            case Waits::drawer: return true;
            case Waits::lock: return !is_locked(a) && !is_locked(b);
        }
        return true;
    }

    std::vector<std::pair<int, int>> precedences(std::size_t shift) const {
        std::vector<std::pair<int, int>> out;
        const auto opens = [&](int i) {
            std::vector<std::size_t> all;
            for (const auto* of : {&now_, &later_})
                if (const auto found = of->find(std::size_t(i)); found != of->end())
                    all.push_back(found->second);
            return all;
        };
        for (const auto& [a, b] : before_)
            for (const std::size_t first : opens(a))
                for (const std::size_t then : opens(b))
                    if (still_waits(open_[first], open_[then]))
                        out.emplace_back(int(shift + first), int(shift + then));
        for (const auto& [a, b] : pinned_)
            for (const std::size_t first : opens(a))
                for (const std::size_t then : opens(b))
                    out.emplace_back(int(shift + first), int(shift + then));
        for (const auto& [i, later] : later_)
            if (const auto now = now_.find(i); now != now_.end())
                out.emplace_back(int(shift + now->second), int(shift + later));
        return out;
    }

    // The open work alone, with the machines as the work done has left them.
    order::Problem rest_problem() const {
        const std::size_t planned = plan_.setups.size();
        std::vector<Setup> all = plan_.setups;
        for (const Open& open : open_) all.push_back(open.setup);
        order::Problem problem = order_problem(job_, all, precedences(planned));
        const order::Price so_far = order::price(problem, used_);
        for (std::size_t i = 0; i < planned; ++i) {
            const std::size_t m = problem.operations[i].machine;
            if (!unknown_.contains(plan_.setups[i].machine)) problem.machines[m].start = so_far.left[m];
            if (!sized_to_.contains(plan_.setups[i].machine)) continue;
            for (std::size_t a = 0; a < problem.machines[m].start.size(); ++a)
                if (name_of_attribute(a) == "fence") problem.machines[m].start[a] = order::unknown;
        }
        if (!used_.empty()) problem.start_machine = problem.operations[used_.back()].machine;
        std::vector<order::Group> groups;
        for (order::Group& group : problem.groups) {
            const bool begun =
                std::any_of(group.operations.begin(), group.operations.end(),
                            [&](std::size_t o) { return o < planned && still_stands(plan_.setups[o]); });
            std::erase_if(group.operations, [&](std::size_t o) { return o < planned; });
            for (std::size_t& operation : group.operations) operation -= planned;
            group.begun = begun;
            if (!group.operations.empty()) groups.push_back(std::move(group));
        }
        problem.groups = std::move(groups);
        problem.operations.erase(problem.operations.begin(),
                                 problem.operations.begin() + std::ptrdiff_t(planned));
        for (order::Precedence& pair : problem.precedences) {
            pair.first -= planned;
            pair.then -= planned;
        }
        return problem;
    }

    std::vector<std::size_t> as_planned() const {
        std::vector<std::size_t> order(open_.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        return order;
    }

    // Nothing was lost, and nothing is open that stands before what was last used.
    bool goes_as_planned() const {
        if (!standing_.lost.empty()) return false;
        const std::size_t last = used_.empty() ? 0 : *std::max_element(used_.begin(), used_.end());
        return std::all_of(open_.begin(), open_.end(), [&](const Open& open) { return open.of >= last; });
    }

    RestStep step_of(const order::Step& step) const {
        const Open& open = open_[step.operation];
        const Setup& setup = plan_.setups[open.of];
        RestStep out;
        out.setup = out.step = setup.id;
        if (open.later && now_.contains(open.of)) out.step += "#2";
        out.ends = int(open.setup.passes.size());
        for (std::size_t i = 0; i < setup.passes.size(); ++i)
            if (std::find(open.setup.passes.begin(), open.setup.passes.end(), setup.passes[i]) !=
                open.setup.passes.end())
                out.open.push_back(i);
        for (const Pass& pass : open.setup.passes)
            if (std::find(out.parts.begin(), out.parts.end(), pass.part) == out.parts.end())
                out.parts.push_back(pass.part);
        out.still_set = is_locked(setup) && !open.later && still_stands(setup);
        out.set_again = is_locked(setup) && !out.still_set;
        note_times(step, open.setup.test_cut, out);
        return out;
    }

    RestStep done_step(const order::Step& step) const {
        const Setup& setup = plan_.setups[step.operation];
        RestStep out;
        out.setup = out.step = setup.id;
        note_times(step, setup.test_cut, out);
        return out;
    }

    void note_times(const order::Step& step, bool test_cut, RestStep& out) const {
        for (const order::Change& change : step.changes) {
            const auto name = name_of_attribute(change.attribute);
            // Whoever changes a stack sets its shims with it.
            if (name == "shims" && !out.changes.empty() && out.changes.back().what == "cutter")
                out.changes.back().seconds += change.seconds;
            else if (!name.empty()) out.changes.push_back({std::string(name), change.seconds});
        }
        out.walk_s = step.walk_s;
        out.test_s = test_cut ? job_.times.test_cut_s : 0;
        out.cuts_s = step.duration_s - out.test_s;
    }

    const Job& job_;
    const Plan& plan_;
    const Standing& standing_;
    const Watch& watch_;
    std::set<std::string> ran_;
    std::vector<std::string> keys_;                     // of each setup
    std::vector<std::pair<int, int>> before_, pinned_;  // of planned setups
    std::vector<std::size_t> used_;                     // setups, as they were used
    std::map<std::string, std::string> stands_;
    std::map<std::string, Length> sized_to_;
    std::map<std::string, bool> tested_last_;  // by machine: what was cut on it last was a test
    std::set<std::string> unknown_;            // machines that were used since for what is no longer planned
    bool keeps_standing_ = true;
    std::vector<Open> open_;
    std::map<std::size_t, std::size_t> now_, later_;  // by setup: index in open_
};

}  // namespace

const RestStep* step_named(const Rest& rest, std::string_view step) {
    const auto found = std::find_if(rest.steps.begin(), rest.steps.end(),
                                    [&](const RestStep& one) { return one.step == step; });
    return found == rest.steps.end() ? nullptr : &*found;
}

Rest rest_of_work(const Job& job, const Design& standing_design, const Plan& plan, const Standing& standing,
                  const Watch& watch) {
    return Remaining(job, standing_design, plan, standing, watch).run();
}

}  // namespace kw
