// What makes no sense is named before anything is solved.

#include <doctest/doctest.h>

#include "order/problem.h"

using namespace kw::order;

namespace {

Problem sound() {
    Problem problem;
    problem.machines = {{5, {{10, {}, {1}}, {20, {}, {}}}, {unknown, 0}}, {5, {}, {}}};
    problem.operations = {{0, {0, any}, 5}, {0, {1, 2}, 5}, {1, {}, 5}};
    problem.precedences = {{0, 2}};
    problem.groups = {{{0, 1}, {0}, false}};
    problem.start_machine = 1;
    return problem;
}

template <class Spoil>
void check_named(Where where, std::size_t index, Spoil spoil) {
    Problem problem = sound();
    spoil(problem);
    const std::optional<Fault> fault = validate(problem);
    REQUIRE(fault);
    CHECK(fault->where == where);
    CHECK(fault->index == index);
    CHECK_FALSE(fault->why.empty());
}

}  // namespace

TEST_CASE("a sound problem has no fault") { CHECK_FALSE(validate(sound())); }

TEST_CASE("each fault is named by where it is") {
    check_named(Where::machine, 0, [](Problem& p) { p.machines[0].start.pop_back(); });
    check_named(Where::machine, 0, [](Problem& p) { p.machines[0].start[1] = -2; });
    check_named(Where::machine, 1, [](Problem& p) { p.machines[1].walk_s = -1; });
    check_named(Where::machine, 0, [](Problem& p) { p.machines[0].attributes[1].invalidates = {2}; });
    check_named(Where::machine, 0,
                [](Problem& p) { p.machines[0].attributes[0].change_s = most_seconds + 1; });
    check_named(Where::machine, 0, [](Problem& p) { p.machines[0].attributes[0].change_to_s = {1, -1}; });
    check_named(Where::machine, 0, [](Problem& p) {
        p.machines[0].attributes[1].change_from_to_s = {{}, {0, -1}};
    });
    check_named(Where::machine, 0,
                [](Problem& p) { p.machines[0].attributes[0].change_from_to_s = {{most_seconds + 1}}; });
    check_named(Where::machine, 1, [](Problem& p) {
        p.machines[1].attributes.resize(most_attributes + 1);
        p.machines[1].start.resize(most_attributes + 1);
    });
    check_named(Where::operation, 1, [](Problem& p) { p.operations[1].machine = 2; });
    check_named(Where::operation, 2, [](Problem& p) { p.operations[2].needs = {0}; });
    check_named(Where::operation, 1, [](Problem& p) { p.operations[1].needs[0] = -2; });
    check_named(Where::operation, 0, [](Problem& p) { p.operations[0].duration_s = -5; });
    check_named(Where::operation, most_operations,
                [](Problem& p) { p.operations.resize(most_operations + 1, p.operations[0]); });
    check_named(Where::precedence, 0, [](Problem& p) { p.precedences[0].then = 3; });
    check_named(Where::group, 0, [](Problem& p) { p.groups[0].operations.clear(); });
    check_named(Where::group, 0, [](Problem& p) { p.groups[0].operations = {0, 0}; });
    check_named(Where::group, 0, [](Problem& p) { p.groups[0].operations = {0, 2}; });
    check_named(Where::group, 0, [](Problem& p) { p.groups[0].operations = {0, 9}; });
    check_named(Where::group, 0, [](Problem& p) { p.groups[0].held = {2}; });
    check_named(Where::start_machine, 2, [](Problem& p) { p.start_machine = 2; });
}
