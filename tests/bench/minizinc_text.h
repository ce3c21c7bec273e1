#pragma once
// A problem for constraint solvers: a MiniZinc model, the same for all problems, and one problem's data. Written from the words of
// problem.h. Attributes are counted through over all machines, everything from 1; 0 stands for `any`, for a value that nobody
// knows or needs, and for nowhere.

#include <map>
#include <string>

#include "cells.h"
#include "order/milp.h"

namespace bench {

inline constexpr const char* minizinc_model = R"mzn(
include "alldifferent.mzn";
include "inverse.mzn";

int: operations;
int: machines;
int: attributes;
int: values;
int: groups;
int: precedences;
int: cells;
set of int: PLACE = 1..operations;
set of int: OPERATION = 1..operations;
set of int: ATTRIBUTE = 1..attributes;

array[OPERATION] of 1..machines: machine;
array[OPERATION, ATTRIBUTE] of 0..values: need;
array[OPERATION, ATTRIBUTE] of int: setting_s;
array[ATTRIBUTE] of 0..values: start;
array[ATTRIBUTE] of set of ATTRIBUTE: touched_with;  % what touches it when it is set, itself included
array[1..machines] of int: walk_s;
0..machines: start_machine;
array[1..precedences] of OPERATION: first;
array[1..precedences] of OPERATION: second;
array[1..groups] of set of OPERATION: members;
array[1..groups] of set of ATTRIBUTE: held;
array[1..groups] of bool: begun;
int: always_s;

% Operations that set an attribute to the same value; together they do so at least so often.
array[1..cells] of set of OPERATION: cell;
array[1..cells] of ATTRIBUTE: cell_attribute;
array[1..cells] of int: cell_s;
array[1..cells] of 0..1: at_least;

array[PLACE] of var OPERATION: at;
array[OPERATION] of var PLACE: place;
constraint inverse(at, place);
constraint alldifferent(at);
constraint alldifferent(place);
constraint forall(p in 1..precedences)(place[first[p]] < place[second[p]]);

array[0..operations, ATTRIBUTE] of var 0..values: stands;
array[PLACE, ATTRIBUTE] of var 0..values: asks;
array[PLACE, ATTRIBUTE] of var bool: differs;
array[PLACE, ATTRIBUTE] of var bool: touched;
constraint forall(a in ATTRIBUTE)(stands[0, a] = start[a]);
constraint forall(p in PLACE, a in ATTRIBUTE)(
    asks[p, a] = [need[i, a] | i in OPERATION][at[p]] /\
    (differs[p, a] <-> (asks[p, a] > 0 /\ asks[p, a] != stands[p - 1, a])) /\
    (touched[p, a] <-> exists(b in touched_with[a])(differs[p, b])) /\
    (touched[p, a] -> stands[p, a] = asks[p, a]) /\
    (not touched[p, a] -> stands[p, a] = stands[p - 1, a]));

array[1..groups] of var 0..operations: opened = [
    if begun[g] then 0 else min([place[i] | i in members[g]]) endif | g in 1..groups];
array[1..groups] of var 0..operations: closed = [max([place[i] | i in members[g]]) | g in 1..groups];
constraint forall(g in 1..groups, p in PLACE, a in held[g])(
    touched[p, a] -> (p < opened[g] \/ p > closed[g] \/ [i in members[g] | i in OPERATION][at[p]]));

array[PLACE] of var 1..machines: here = [machine[at[p]] | p in PLACE];
array[PLACE] of var 0..max(walk_s): walking_s;
constraint forall(p in PLACE)(
    if p > 1 then
        (here[p] = here[p - 1] -> walking_s[p] = 0) /\ (here[p] != here[p - 1] -> walking_s[p] = walk_s[here[p]])
    elseif start_machine = 0 then walking_s[p] = 0
    else
        (here[p] = start_machine -> walking_s[p] = 0) /\ (here[p] != start_machine -> walking_s[p] = walk_s[here[p]])
    endif);

array[PLACE] of var int: step_s = [walking_s[p] + sum(a in ATTRIBUTE)(
    bool2int(touched[p, a]) * [setting_s[i, a] | i in OPERATION][at[p]]) | p in PLACE];
var int: total_s = always_s + sum(step_s);

% The same sum by what is set, which gives a bound from the start.
array[1..cells] of var 0..operations: times;
constraint forall(c in 1..cells)(times[c] >= at_least[c] /\
    times[c] = sum(i in cell[c])(bool2int([touched[p, cell_attribute[c]] | p in PLACE][place[i]])));
constraint total_s = always_s + sum(walking_s) + sum(c in 1..cells)(times[c] * cell_s[c]);

% Of the searches that were tried (places in order, fewest choices left, most conflicts, quickest step first), the quickest.
solve :: int_search(place, smallest, indomain_min, complete) minimize total_s;
output ["\(at)"];
)mzn";

class Dzn {
public:
    explicit Dzn(const kw::order::Problem& problem) : problem_(problem) {
        for (const auto& machine : problem.machines) {
            first_attribute_.push_back(attributes_);
            attributes_ += machine.attributes.size();
        }
        put_operations();
        put_machines();
        put_rules();
        put_cells();
        put("values", std::to_string(values_));
    }

    const std::string& text() const { return text_; }

private:
    using Items = std::vector<std::string>;

    static std::string joined(const Items& items) {
        std::string all;
        for (const std::string& item : items) all += (all.empty() ? "" : ", ") + item;
        return all;
    }
    template <class Index>
    static std::string set_of(const std::vector<Index>& indices, std::size_t first = 1) {
        Items items;
        for (const std::size_t index : indices) items.push_back(std::to_string(first + index));
        return "{" + joined(items) + "}";
    }
    void put(const std::string& name, const std::string& value) { text_ += name + " = " + value + ";\n"; }
    void put_list(const std::string& name, const Items& items) { put(name, "[" + joined(items) + "]"); }
    void put_table(const std::string& name, const Items& items) {
        put(name, "array2d(1.." + std::to_string(problem_.operations.size()) + ", 1.." +
                      std::to_string(attributes_) + ", [" + joined(items) + "])");
    }

    // Of the values of one attribute that are needed, counted from 1 as they are met.
    int code(std::size_t attribute, int value) {
        if (value == kw::order::any) return 0;
        auto& known = codes_[attribute];
        const int coded = known.insert({value, static_cast<int>(known.size()) + 1}).first->second;
        values_ = std::max(values_, coded);
        return coded;
    }

    void put_operations() {
        Items machines, needs, settings;
        for (const auto& operation : problem_.operations) {
            machines.push_back(std::to_string(operation.machine + 1));
            for (std::size_t m = 0; m < problem_.machines.size(); ++m)
                for (std::size_t a = 0; a < problem_.machines[m].attributes.size(); ++a) {
                    const int need = m == operation.machine ? operation.needs[a] : kw::order::any;
                    needs.push_back(std::to_string(code(first_attribute_[m] + a, need)));
                    settings.push_back(
                        std::to_string(ord::milp::setting_s(problem_.machines[m].attributes[a], need)));
                }
            always_s_ += operation.duration_s;
        }
        put("operations", std::to_string(problem_.operations.size()));
        put("attributes", std::to_string(attributes_));
        put("always_s", std::to_string(always_s_));
        put_list("machine", machines);
        put_table("need", needs);
        put_table("setting_s", settings);
    }

    void put_machines() {
        Items walks, starts, touched_with;
        for (std::size_t m = 0; m < problem_.machines.size(); ++m) {
            const auto& machine = problem_.machines[m];
            walks.push_back(std::to_string(machine.walk_s));
            const auto reaches = ord::milp::reach(machine);
            for (std::size_t a = 0; a < machine.attributes.size(); ++a) {
                const auto& known = codes_[first_attribute_[m] + a];
                const auto start = known.find(machine.start[a]);
                starts.push_back(std::to_string(start == known.end() ? 0 : start->second));
                std::vector<std::size_t> with;
                for (std::size_t b = 0; b < machine.attributes.size(); ++b)
                    if (b == a || reaches[b][a]) with.push_back(b);
                touched_with.push_back(set_of(with, first_attribute_[m] + 1));
            }
        }
        put("machines", std::to_string(problem_.machines.size()));
        put("start_machine", std::to_string(problem_.start_machine ? *problem_.start_machine + 1 : 0));
        put_list("walk_s", walks);
        put_list("start", starts);
        put_list("touched_with", touched_with);
    }

    void put_rules() {
        Items firsts, seconds, members, held, begun;
        for (const auto& [first, then] : problem_.precedences) {
            firsts.push_back(std::to_string(first + 1));
            seconds.push_back(std::to_string(then + 1));
        }
        for (const auto& group : problem_.groups) {
            const std::size_t m = problem_.operations[group.operations.front()].machine;
            members.push_back(set_of(group.operations));
            held.push_back(set_of(group.held, first_attribute_[m] + 1));
            begun.push_back(group.begun ? "true" : "false");
        }
        put("precedences", std::to_string(firsts.size()));
        put_list("first", firsts);
        put_list("second", seconds);
        put("groups", std::to_string(members.size()));
        put_list("members", members);
        put_list("held", held);
        put_list("begun", begun);
    }

    void put_cells() {
        Items cells, attributes, seconds, at_least;
        for (const Cell& cell : cells_of(problem_)) {
            cells.push_back(set_of(cell.operations));
            attributes.push_back(std::to_string(first_attribute_[cell.machine] + cell.attribute + 1));
            seconds.push_back(std::to_string(cell.seconds));
            at_least.push_back(cell.is_set_once ? "1" : "0");
        }
        put("cells", std::to_string(cells.size()));
        put_list("cell", cells);
        put_list("cell_attribute", attributes);
        put_list("cell_s", seconds);
        put_list("at_least", at_least);
    }

    const kw::order::Problem& problem_;
    std::string text_;
    std::vector<std::size_t> first_attribute_;  // by machine
    std::size_t attributes_ = 0;
    std::map<std::size_t, std::map<int, int>> codes_;  // by attribute
    int values_ = 0;
    std::int64_t always_s_ = 0;
};

inline std::string minizinc_data(const kw::order::Problem& problem) { return Dzn(problem).text(); }

}  // namespace bench
