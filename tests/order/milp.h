#pragma once
// A problem as a mixed-integer linear program, for general solvers to find its least time. Written from the words of problem.h
// and nothing else; it shares no idea with the solver.
//
// Which operation comes at which place is decided by 0/1 columns ("at"). For each place, operation and attribute of its machine
// "sets" says whether the operation sets the attribute there or loses it, and "keeps" whether a value that stood before still
// stands. With whole "at"s the least of the rest is whole by itself: to set more than must be set costs time, spoils more, and
// keeps less. All columns are declared whole nevertheless, since solvers may then round their bounds up.

#include <algorithm>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "order/problem.h"

namespace ord {

struct Milp {
    struct Column {  // 0 or 1
        std::string name;
        std::int64_t seconds = 0;  // what it adds to the time that is to be least
        std::size_t rank = 0;      // to be decided after those of lower rank, by solvers that take advice
    };
    enum class Sense { at_most, equal, at_least };
    struct Row {
        std::vector<std::pair<std::size_t, int>> terms;  // column and factor, each column once
        Sense sense = Sense::at_most;
        int bound = 0;
    };
    std::vector<Column> columns;
    std::vector<Row> rows;
    std::int64_t always_s = 0;  // what every order takes: the durations
};

namespace milp {

using kw::order::any;
using kw::order::Group;
using kw::order::Machine;
using kw::order::Operation;
using kw::order::Problem;
using Terms = std::vector<std::pair<std::size_t, int>>;

// Values beyond those that cost more than others cost change_s; what needs none, nothing.
inline std::int64_t setting_s(const kw::order::Attribute& attribute, int value) {
    if (value == any) return 0;
    const auto index = static_cast<std::size_t>(value);
    return index < attribute.change_to_s.size() ? attribute.change_to_s[index] : attribute.change_s;
}

// Over any number of links: [a][b] says whether a change of `a` invalidates `b`.
inline std::vector<std::vector<bool>> reach(const Machine& machine) {
    const std::size_t count = machine.attributes.size();
    std::vector<std::vector<bool>> reaches(count, std::vector<bool>(count, false));
    for (std::size_t a = 0; a < count; ++a)
        for (const std::size_t b : machine.attributes[a].invalidates) reaches[a][b] = true;
    for (std::size_t via = 0; via < count; ++via)
        for (std::size_t a = 0; a < count; ++a)
            for (std::size_t b = 0; b < count; ++b)
                if (reaches[a][via] && reaches[via][b]) reaches[a][b] = true;
    return reaches;
}

// Who may have set what operation `i` needs of attribute `b`: one of these must. When `i` runs, its value was set last by an operation
// that needs that value too; and since, nothing that `b` hangs on was set, so that operation ran with the values that `i` needs there.
// Empty where it may stand so from the start.
inline std::vector<std::size_t> setters_of(const Problem& problem, std::size_t i, std::size_t b) {
    const Operation& own = problem.operations[i];
    const Machine& machine = problem.machines[own.machine];
    const auto reaches = reach(machine);
    std::vector<std::size_t> counts;  // attributes whose value is the same when `b` is set and when `i` runs
    for (std::size_t a = 0; a < own.needs.size(); ++a)
        if (a == b || (reaches[a][b] && own.needs[a] != any)) counts.push_back(a);
    const auto all_stand = [&](const std::vector<int>& values, bool any_will_do) {
        return std::all_of(counts.begin(), counts.end(), [&](std::size_t a) {
            return values[a] == own.needs[a] || (any_will_do && a != b && values[a] == any);
        });
    };
    std::vector<std::size_t> setters;
    if (all_stand(machine.start, false)) return setters;
    for (std::size_t j = 0; j < problem.operations.size(); ++j)
        if (problem.operations[j].machine == own.machine && all_stand(problem.operations[j].needs, true))
            setters.push_back(j);
    return setters;
}

class Formulation {
public:
    explicit Formulation(const Problem& problem) : problem_(problem), places_(problem.operations.size()) {
        add_orders();
        add_precedences();
        for (std::size_t m = 0; m < problem.machines.size(); ++m) {
            for (std::size_t i = 0; i < places_; ++i)
                if (problem.operations[i].machine == m) on_[m].push_back(i);
            add_sets(m);
            for (std::size_t a = 0; a < problem.machines[m].attributes.size(); ++a) add_attribute(m, a);
            add_walks(m);
        }
        for (const Group& group : problem.groups) add_group(group);
    }

    Milp take() { return std::move(milp_); }

private:
    std::size_t column(std::string name, std::int64_t seconds) {
        milp_.columns.push_back({std::move(name), seconds, places_});
        return milp_.columns.size() - 1;
    }
    void at_most(Terms terms, int bound) {
        milp_.rows.push_back({std::move(terms), Milp::Sense::at_most, bound});
    }
    void at_least(Terms terms, int bound) {
        milp_.rows.push_back({std::move(terms), Milp::Sense::at_least, bound});
    }
    void equal(Terms terms, int bound) {
        milp_.rows.push_back({std::move(terms), Milp::Sense::equal, bound});
    }

    int need(std::size_t i, std::size_t a) const { return problem_.operations[i].needs[a]; }
    std::size_t sets(std::size_t i, std::size_t a, std::size_t place) const { return sets_[i][a][place]; }

    // Every operation has one place, every place one operation.
    void add_orders() {
        at_.resize(places_);
        std::vector<Terms> once(places_);
        for (std::size_t place = 0; place < places_; ++place) {
            Terms one;
            for (std::size_t i = 0; i < places_; ++i) {
                at_[i].push_back(column("at_" + std::to_string(i) + "_" + std::to_string(place), 0));
                milp_.columns.back().rank = place;
                one.push_back({at_[i][place], 1});
                once[i].push_back({at_[i][place], 1});
            }
            equal(std::move(one), 1);
        }
        for (Terms& places : once) equal(std::move(places), 1);
        for (const Operation& operation : problem_.operations) milp_.always_s += operation.duration_s;
        on_.resize(problem_.machines.size());
        sets_.resize(places_);
    }

    // What is done by a place, its predecessor is done by the place before.
    void add_precedences() {
        for (const auto& [first, then] : problem_.precedences) {
            Terms done;
            for (std::size_t place = 0; place < places_; ++place) {
                done.push_back({at_[then][place], 1});
                at_most(done, 0);
                if (first == then) done.clear();
                else done.push_back({at_[first][place], -1});
            }
        }
    }

    // Only the operation that is at a place sets anything there; and what it sets takes along what hangs on it.
    void add_sets(std::size_t m) {
        const Machine& machine = problem_.machines[m];
        for (const std::size_t i : on_[m]) {
            sets_[i].resize(machine.attributes.size());
            for (std::size_t a = 0; a < machine.attributes.size(); ++a) {
                const std::int64_t seconds = setting_s(machine.attributes[a], need(i, a));
                for (std::size_t place = 0; place < places_; ++place) {
                    sets_[i][a].push_back(column(
                        "sets_" + std::to_string(i) + "_" + std::to_string(a) + "_" + std::to_string(place),
                        seconds));
                    at_most({{sets_[i][a][place], 1}, {at_[i][place], -1}}, 0);
                }
            }
            for (std::size_t a = 0; a < machine.attributes.size(); ++a)
                for (const std::size_t b : machine.attributes[a].invalidates)
                    for (std::size_t place = 0; a != b && place < places_; ++place)
                        at_most({{sets(i, a, place), 1}, {sets(i, b, place), -1}}, 0);
        }
    }

    std::vector<int> needed_values(std::size_t m, std::size_t a) const {
        std::vector<int> values;
        for (const std::size_t i : on_[m])
            if (need(i, a) != any) values.push_back(need(i, a));
        std::sort(values.begin(), values.end());
        values.erase(std::unique(values.begin(), values.end()), values.end());
        return values;
    }

    void add_attribute(std::size_t m, std::size_t a) {
        std::vector<Terms> taken(places_);  // by place: all values kept, and all setting
        for (const std::size_t i : on_[m])
            for (std::size_t place = 0; place < places_; ++place)
                taken[place].push_back({sets(i, a, place), 1});
        for (const int value : needed_values(m, a)) add_value(m, a, value, taken);
        for (Terms& terms : taken) at_most(std::move(terms), 1);
        for (const std::size_t i : on_[m])
            if (need(i, a) != any) add_set_at_least_once(i, a);
    }

    // A value is kept at a place only if it was kept or set at the place before. Who needs it has it kept, or sets it.
    void add_value(std::size_t m, std::size_t a, int value, std::vector<Terms>& taken) {
        Terms before;
        for (std::size_t place = 0; place < places_; ++place) {
            const std::size_t keeps = column("keeps_" + std::to_string(m) + "_" + std::to_string(a) + "_" +
                                                 std::to_string(value) + "_" + std::to_string(place),
                                             0);
            taken[place].push_back({keeps, 1});
            Terms kept = before;
            kept.push_back({keeps, 1});
            at_most(std::move(kept), place == 0 && problem_.machines[m].start[a] == value ? 1 : 0);
            before = {{keeps, -1}};
            Terms has{{keeps, -1}};
            for (const std::size_t i : on_[m]) {
                if (need(i, a) != value) continue;
                before.push_back({sets(i, a, place), -1});
                has.push_back({at_[i][place], 1});
                has.push_back({sets(i, a, place), -1});
            }
            at_most(std::move(has), 0);
        }
    }

    // Follows from the rest, but makes the relaxation tighter.
    void add_set_at_least_once(std::size_t i, std::size_t a) {
        Terms once;
        for (const std::size_t j : setters_of(problem_, i, a))
            for (std::size_t place = 0; place < places_; ++place) once.push_back({sets(j, a, place), 1});
        if (!once.empty()) at_least(std::move(once), 1);
    }

    // Who is at a machine was there before, or walked. A machine that is used is walked to, or is the first.
    void add_walks(std::size_t m) {
        if (on_[m].empty() || problem_.machines[m].walk_s == 0) return;
        Terms ever;
        Terms before;
        for (std::size_t place = 0; place < places_; ++place) {
            Terms here = before;
            before.clear();
            for (const std::size_t i : on_[m]) {
                here.push_back({at_[i][place], 1});
                before.push_back({at_[i][place], -1});
            }
            if (place == 0 && !problem_.start_machine) ever = here;
            if (place == 0 && (!problem_.start_machine || problem_.start_machine == m)) continue;
            const std::size_t walks = column("walks_" + std::to_string(m) + "_" + std::to_string(place),
                                             problem_.machines[m].walk_s);
            here.push_back({walks, -1});
            at_most(std::move(here), 0);
            ever.push_back({walks, 1});
        }
        if (problem_.start_machine != m) at_least(std::move(ever), 1);
    }

    // No outsider sets or loses what is held at a place after one of the group's operations and before another.
    void add_group(const Group& group) {
        const std::size_t m = problem_.operations[group.operations.front()].machine;
        for (std::size_t place = 0; place < places_; ++place)
            for (const std::size_t a : group.held) {
                Terms disturbs;
                for (const std::size_t i : on_[m])
                    if (std::find(group.operations.begin(), group.operations.end(), i) ==
                        group.operations.end())
                        disturbs.push_back({sets(i, a, place), 1});
                if (!disturbs.empty()) add_window(group, place, disturbs);
            }
    }

    void add_window(const Group& group, std::size_t place, const Terms& disturbs) {
        for (const std::size_t later : group.operations) {
            Terms left = disturbs;
            for (std::size_t p = place + 1; p < places_; ++p) left.push_back({at_[later][p], 1});
            if (group.begun) at_most(left, 1);
            for (const std::size_t earlier : group.operations) {
                if (group.begun || earlier == later) continue;
                Terms open = left;
                for (std::size_t p = 0; p < place; ++p) open.push_back({at_[earlier][p], 1});
                at_most(std::move(open), 2);
            }
        }
    }

    const Problem& problem_;
    std::size_t places_ = 0;
    Milp milp_;
    std::vector<std::vector<std::size_t>> at_;                 // by operation and place
    std::vector<std::vector<std::size_t>> on_;                 // by machine: its operations
    std::vector<std::vector<std::vector<std::size_t>>> sets_;  // by operation, attribute and place
};

}  // namespace milp

// The least of the columns' seconds and always_s is the least time; no solution, no order.
inline Milp milp_of(const kw::order::Problem& problem) { return milp::Formulation(problem).take(); }

}  // namespace ord
