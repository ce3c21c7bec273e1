// Work that can be done in one of several ways.
#include <doctest/doctest.h>

#include <algorithm>

#include "brute/brute.h"
#include "order/cost.h"
#include "order/sets_of_options.h"
#include "order/without.h"
#include "random_work.h"

using namespace kw::order;

namespace {

// One machine with one thing to set; each operation asks for a value.
Problem on_one_machine(const std::vector<int>& values, std::int64_t change_s) {
    Problem problem;
    problem.machines = {{0, {{change_s, {}, {}}}, {unknown}}};
    for (const int value : values) problem.operations.push_back({0, {value}, 1});
    return problem;
}

std::optional<Fault> fault_with(std::vector<Choice> choices, std::vector<Group> groups = {}) {
    Problem problem = on_one_machine({0, 0, 1, 1}, 10);
    problem.choices = std::move(choices);
    problem.groups = std::move(groups);
    return validate(problem);
}

}  // namespace

TEST_CASE(
    "two passes as it stands, or one after a change: what takes less is done, and the other is left out") {
    // The work before needs value 0. Two passes more with it, or one with value 1.
    Problem problem = on_one_machine({0, 0, 0, 1}, 10);
    problem.choices = {{{{1, 2}, {3}}}};
    CHECK(solve(problem).picked == std::vector<std::size_t>{0});
    CHECK(solve(problem).seconds == 10 + 3);
    problem.operations[1].duration_s = 20;
    const Result changed = solve(problem);
    CHECK(changed.picked == std::vector<std::size_t>{1});
    CHECK(changed.order == std::vector<std::size_t>{0, 3});
    CHECK(changed.seconds == 10 + 1 + 10 + 1);
}

TEST_CASE("what waits for work that is left out waits no longer") {
    // Operation 2 must come after 0, which is one way; the other way, 1, has nothing to do with it.
    Problem problem = on_one_machine({0, 1, 1}, 10);
    problem.precedences = {{0, 2}};
    problem.choices = {{{{0}, {1}}}};
    const Result result = solve(problem);
    CHECK(result.status == Status::proved);
    CHECK(result.picked == std::vector<std::size_t>{1});
    CHECK(result.seconds == 10 + 2);
}

TEST_CASE("a choice that makes no sense is named") {
    CHECK_FALSE(fault_with({{{{0}, {1}}}}));
    for (const Choice& choice : {Choice{{{0}}}, Choice{{{0}, {}}}, Choice{{{0}, {7}}}, Choice{{{0}, {0}}}}) {
        const auto fault = fault_with({choice});
        REQUIRE(fault);
        CHECK(fault->where == Where::choice);
    }
    const auto overlap = fault_with({{{{0}, {1}}}, {{{1}, {2}}}});
    REQUIRE(overlap);
    CHECK(overlap->index == 1);
    // A group is held together: all of it is done, or nothing.
    const auto across = fault_with({{{{0}, {2}}}}, {{{0, 1}, {0}, false}});
    REQUIRE(across);
    CHECK(across->where == Where::group);
    CHECK(fault_with({{{{0, 1}, {2}}}}, {{{0, 1}, {0}, true}}));
}

TEST_CASE("an order with two options of a choice, half of one or none breaks the rules") {
    Problem problem = on_one_machine({0, 0, 1, 1}, 10);
    problem.choices = {{{{1, 2}, {3}}}};
    CHECK_FALSE(first_breach(problem, {0, 1, 2}));
    CHECK_FALSE(first_breach(problem, {3, 0}));
    for (const std::vector<std::size_t>& order :
         {std::vector<std::size_t>{0}, {0, 1}, {0, 1, 2, 3}, {0, 1, 3}}) {
        const auto breach = first_breach(problem, order);
        REQUIRE(breach);
        CHECK(breach->rule == Rule::choice);
    }
    CHECK(first_breach(problem, {1, 2})->rule == Rule::each_once);
}

TEST_CASE("with many choices one search finds what all sets of options, each by itself, come to") {
    ord::Random random(91);
    int proved = 0;
    for (int i = 0; i < 60; ++i) {
        CAPTURE(i);
        ord::Kind kind{18, 2, 3, 3, 25, 12, 1, false, true, 4};
        const Problem problem = ord::random_problem(kind, random);
        if (problem.choices.empty()) continue;
        const Result one = solve_below(problem, {}, whatever_it_takes), each = solve_each_set(problem, {});
        REQUIRE(one.status != Status::limited);
        REQUIRE(each.status == one.status);
        if (one.status != Status::proved) continue;
        ++proved;
        CHECK(one.seconds == each.seconds);
        CHECK_FALSE(first_breach(problem, one.order));
        CHECK_FALSE(first_breach(problem, each.order));
        CHECK(price(problem, each.order).seconds == each.seconds);
        for (std::size_t c = 0; c < problem.choices.size(); ++c)
            CHECK(std::find(each.order.begin(), each.order.end(),
                            problem.choices[c].options[each.picked[c]].front()) != each.order.end());
    }
    CHECK(proved > 30);
}

TEST_CASE("when it is stopped, the best of the sets that were looked at stands, with a bound for all") {
    ord::Random random(92);
    const Problem problem = ord::random_problem({24, 3, 3, 4, 25, 8, 0, false, true, 5}, random);
    REQUIRE(problem.choices.size() > 2);
    const Result all = solve(problem);
    REQUIRE(all.status == Status::proved);
    Options options;
    options.stop = [](const Progress&) { return true; };
    const Result stopped = solve(problem, options);
    CHECK_FALSE(first_breach(problem, stopped.order));
    CHECK(stopped.seconds >= all.seconds);
    CHECK(stopped.lower_bound_seconds <= all.seconds);
    options.stop = {};
    options.node_limit = 1;
    const Result limited = solve(problem, options);
    CHECK(limited.lower_bound_seconds <= all.seconds);
    if (!limited.order.empty()) CHECK(limited.seconds >= all.seconds);
}

TEST_CASE("a problem without some of its work is what brute force makes of the rest") {
    ord::Random random(93);
    for (int i = 0; i < 200; ++i) {
        CAPTURE(i);
        ord::Kind kind{7, 2, 2, 3, 25, 20, 1, false, true, 1};
        const Problem problem = ord::random_problem(kind, random);
        std::vector<std::size_t> gone;
        for (std::size_t o = 0; o < problem.operations.size(); ++o)
            if (random.chance(30)) gone.push_back(o);
        const Problem left = without(problem, gone);
        REQUIRE_FALSE(validate(left));
        CHECK(left.operations.size() == problem.operations.size() - gone.size());
        const auto least = ord::Brute(left).least_seconds();
        const Result result = solve(left);
        CHECK((result.status == Status::proved) == least.has_value());
        if (least) CHECK(result.seconds == *least);
    }
}
