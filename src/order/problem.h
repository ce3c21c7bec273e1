#pragma once
// Work to be put in order: operations done one after another by one person on several machines. Every machine keeps its own
// settings while another is used. Nothing here knows what an operation makes.
//
// Indices count from 0 in the order of the vectors. Times are whole seconds, so that every machine finds the same order.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace kw::order {

inline constexpr int any = -1;  // as a need: the operation runs with the attribute as it is, and leaves it so
inline constexpr int unknown = -1;  // as a machine's start: must be set, whatever is needed

// One thing that can be set on a machine. Its values are small numbers from 0 that mean nothing here.
struct Attribute {
    std::int64_t change_s = 0;  // setting it
    std::vector<std::int64_t>
        change_to_s;  // by value, where one costs more than another; values beyond it cost change_s
    std::vector<std::size_t>
        invalidates;  // attributes of this machine that must be set again once this one was changed;
                      // what hangs on those is invalidated with them
    // By the value where it stands, then by the value to set: for changes that hang on where it stands. What it stands at must be
    // known and not be invalidated, not even by this change; else, and beyond the table, setting_s(value) holds. A row may be short;
    // from a value to itself nothing is changed.
    std::vector<std::vector<std::int64_t>> change_from_to_s{};

    std::int64_t setting_s(int value) const;            // from anywhere
    std::int64_t setting_s(int from, int value) const;  // from where it stands, or from `unknown`
};

struct Machine {
    std::int64_t walk_s = 0;  // going there from another machine
    std::vector<Attribute> attributes;
    std::vector<int> start;  // a value or `unknown`, one per attribute
};

struct Operation {
    std::size_t machine = 0;
    std::vector<int> needs;  // a value or `any`, one per attribute of its machine
    std::int64_t duration_s = 0;
};

struct Precedence {
    std::size_t first = 0;
    std::size_t then = 0;
};

// Operations of one machine that share settings which must not be disturbed: from its first operation to its last, no operation
// from outside may change or invalidate an attribute that is held. Its own operations may.
struct Group {
    std::vector<std::size_t> operations;
    std::vector<std::size_t> held;  // attributes of that machine
    bool begun = false;             // its first operation is behind us: held from the start
};

// Work that can be done in one of several ways: the operations of exactly one option are done, those of the others are left out, and
// with them what they would have asked of any other operation. An operation is in one option of one choice, or in none: then it is
// done in any case.
struct Choice {
    std::vector<std::vector<std::size_t>> options;  // two or more, none empty
};

struct Problem {
    std::vector<Machine> machines;
    std::vector<Operation> operations;
    std::vector<Precedence> precedences;
    std::vector<Group> groups;  // each within one option, or with no operation that is in one
    std::optional<std::size_t>
        start_machine;  // where the person stands; nowhere: the first machine costs no walk
    std::vector<Choice> choices{};
};

inline constexpr std::size_t most_operations = 8'000;
inline constexpr std::size_t most_attributes = 32;           // of a machine
inline constexpr std::size_t most_options = 250;             // of a choice
inline constexpr std::int64_t most_seconds = 1'000'000'000;  // of any one time: sums stay far from overflow

enum class Where { machine, operation, precedence, group, choice, start_machine };

struct Fault {
    Where where = Where::machine;
    std::size_t index = 0;  // of the machine, operation and so on
    std::string why;
};

// The first thing that makes no sense; nothing when the problem can be asked. Cycles and groups that contradict each other make
// sense, and are found by solve().
std::optional<Fault> validate(const Problem& problem);

}  // namespace kw::order
