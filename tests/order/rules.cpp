// Rules are kept, what can't be is named, and the answer hangs on nothing but the question.

#include <doctest/doctest.h>

#include "batch_work.h"
#include "brute/brute.h"
#include "order/cost.h"
#include "order/solve.h"

using namespace kw::order;

namespace {

// A machine with a cutter that takes its height with it, and a fence.
Machine saw() { return {10, {{100, {}, {1}}, {20, {}, {}}, {30, {}, {}}}, {unknown, unknown, unknown}}; }

Operation cut(int cutter, int height, int fence, std::size_t machine = 0) {
    return {machine, {cutter, height, fence}, 60};
}

std::size_t place_of(const Result& result, std::size_t operation) {
    return static_cast<std::size_t>(std::find(result.order.begin(), result.order.end(), operation) -
                                    result.order.begin());
}

bool names(const std::vector<std::size_t>& list, std::size_t item) {
    return std::find(list.begin(), list.end(), item) != list.end();
}

void check_sound(const Problem& problem, const Result& result) {
    REQUIRE(result.order.size() == problem.operations.size());
    CHECK_FALSE(first_breach(problem, result.order));
    CHECK(ord::Brute(problem).seconds_of(result.order) == result.seconds);
    CHECK(result.lower_bound_seconds <= result.seconds);
    CHECK((result.status == Status::proved) == (result.lower_bound_seconds == result.seconds));
}

}  // namespace

TEST_CASE("cuts with the same cutter are made together, and a setup is made once") {
    const Problem problem{{saw()}, {cut(0, 1, 1), cut(1, 1, 1), cut(0, 1, 2), cut(1, 1, 1)}, {}, {}, {}};
    const Result result = solve(problem);
    CHECK(result.status == Status::proved);
    // Two cutters, the height after each, the fence at 1, at 2 and at 1 once more unless 2 comes first or last.
    CHECK(result.seconds == 4 * 60 + 2 * 100 + 2 * 20 + 2 * 30);
    CHECK((result.order.front() == 2 || result.order.back() == 2));
    check_sound(problem, result);
}

TEST_CASE("a locked setup is held from its first cut to its last, though tearing it down is quicker") {
    // 0 and 1 share a setup; 1 waits for 2, which another machine makes, and that waits for 0. Meanwhile the
    // saw could cut 3.
    Problem problem{{saw(), saw()}, {cut(0, 1, 1), cut(0, 1, 1), cut(0, 1, 1, 1), cut(0, 1, 2)}, {}, {}, {}};
    problem.precedences = {{0, 2}, {2, 1}, {2, 3}};
    problem.machines[0].walk_s = 500;
    problem.precedences.push_back({3, 1});
    const Result free = solve(problem);
    check_sound(problem, free);
    problem.groups = {{{0, 1}, {0, 1, 2}, false}};
    const Result held = solve(problem);
    CHECK(held.status == Status::impossible);
    CHECK(held.culprit_groups == std::vector<std::size_t>{0});
    problem.precedences.pop_back();
    const Result waits = solve(problem);
    check_sound(problem, waits);
    CHECK(place_of(waits, 3) > place_of(waits, 1));
}

TEST_CASE("what a group does not hold may be changed in between") {
    // The fronts' ends are cut with a spacer at the same fence: the spacer is not held.
    Problem problem{{saw()}, {cut(0, 1, 1), cut(0, 1, 2), cut(0, 1, 1)}, {{0, 1}, {1, 2}}, {}, {}};
    problem.groups = {{{0, 2}, {0, 1}, false}};
    check_sound(problem, solve(problem));
    problem.groups = {{{0, 2}, {0, 1, 2}, false}};
    CHECK(solve(problem).status == Status::impossible);
}

TEST_CASE("a group that is begun is held from the start") {
    Problem problem{{saw()}, {cut(1, 1, 1), cut(0, 1, 1)}, {}, {{{1}, {0, 1, 2}, true}}, {}};
    problem.machines[0].start = {0, 1, 1};
    CHECK(solve(problem).order == std::vector<std::size_t>{1, 0});
    problem.precedences = {{0, 1}};
    const Result result = solve(problem);
    CHECK(result.status == Status::impossible);
    CHECK(names(result.culprits, 0));
    CHECK(names(result.culprits, 1));
    CHECK(result.culprit_groups == std::vector<std::size_t>{0});
}

TEST_CASE("a cycle is named by its operations, and by no group") {
    Problem problem{{saw()}, std::vector<Operation>(6, cut(0, 1, 1)), {}, {}, {}};
    problem.precedences = {{0, 1}, {1, 2}, {2, 3}, {3, 1}, {3, 5}};
    const Result result = solve(problem);
    CHECK(result.status == Status::impossible);
    CHECK(result.culprits == std::vector<std::size_t>{1, 2, 3});
    CHECK(result.culprit_groups.empty());
    CHECK(result.order.empty());
    problem.precedences = {{4, 4}};
    CHECK(solve(problem).culprits == std::vector<std::size_t>{4});
}

TEST_CASE("a cut that must come into a locked group that it would disturb is named with the group") {
    Problem problem{
        {saw()}, {cut(0, 1, 1), cut(1, 1, 1), cut(0, 1, 1), cut(0, 1, 1)}, {{0, 1}, {1, 2}}, {}, {}};
    problem.groups = {{{3}, {0}, false}, {{0, 2}, {0, 1, 2}, false}};
    const Result result = solve(problem);
    CHECK(result.status == Status::impossible);
    CHECK(names(result.culprits, 0));
    CHECK(names(result.culprits, 1));
    CHECK(names(result.culprits, 2));
    CHECK_FALSE(names(result.culprits, 3));
    CHECK(result.culprit_groups == std::vector<std::size_t>{1});
}

TEST_CASE("groups that would each have to come first are named") {
    Problem problem{
        {saw()}, {cut(0, 1, 1), cut(0, 1, 1), cut(1, 1, 1), cut(1, 1, 1)}, {{0, 2}, {3, 1}}, {}, {}};
    problem.groups = {{{0, 1}, {0}, false}, {{2, 3}, {0}, false}};
    const Result result = solve(problem);
    CHECK(result.status == Status::impossible);
    CHECK(result.culprits.size() >= 2);
    CHECK_FALSE(result.culprit_groups.empty());
    problem.precedences.pop_back();
    check_sound(problem, solve(problem));
}

TEST_CASE("what only trying shows to be impossible is named by where it stuck") {
    // The last cut of the group runs at any fence, so that it takes the search to see that 1 disturbs.
    Problem problem{{saw()}, {cut(0, 1, 1), cut(0, 1, 2), cut(0, 1, any)}, {{0, 1}, {1, 2}}, {}, {}};
    problem.groups = {{{0, 2}, {2}, false}};
    const Result result = solve(problem);
    CHECK(result.status == Status::impossible);
    CHECK(result.culprits == std::vector<std::size_t>{1, 2});
    CHECK(result.culprit_groups == std::vector<std::size_t>{0});
}

TEST_CASE("large random work keeps all rules, whatever the limits") {
    ord::Random random(21);
    int possible = 0;
    for (int i = 0; i < 30; ++i) {
        CAPTURE(i);
        ord::Kind kind{40, 3, 3, 3, 25, 4, 2, i % 3 == 0, true};
        const Problem problem = ord::random_problem(kind, random);
        Options limits;
        limits.node_limit = random.between(0, 4000);
        limits.beam_width = 1 + random.below(30);
        const Result result = solve(problem, limits);
        if (result.order.empty()) continue;
        ++possible;
        check_sound(problem, result);
    }
    CHECK(possible > 10);
}

TEST_CASE("batches of all sizes get an order that keeps all rules") {
    for (const std::size_t drawers : {1U, 3U, 12U, 40U, 120U}) {
        CAPTURE(drawers);
        ord::Random random(22);
        const Problem problem = ord::batch_problem({drawers, 11, 20, 4}, random);
        Options limits;
        limits.node_limit = 20'000;
        check_sound(problem, solve(problem, limits));
    }
}

TEST_CASE("a job of three drawers is proved at the usual limits") {
    for (std::uint32_t seed = 1; seed <= 10; ++seed) {
        CAPTURE(seed);
        ord::Random random(seed);
        const Problem problem = ord::batch_problem({3, 11, 8, 2}, random);
        const Result result = solve(problem);
        CHECK(result.status == Status::proved);
        check_sound(problem, result);
    }
}

TEST_CASE(
    "a large batch is planned within 15 % of what must be changed and walked at least a third less than cut "
    "as it comes") {
    // Drawer after drawer, every operation in the order in which it is listed, is what happens without a plan.
    ord::Random random(23);
    Problem problem = ord::batch_problem({60, 8, 30, 4}, random);
    std::vector<std::size_t> as_listed(problem.operations.size());
    std::iota(as_listed.begin(), as_listed.end(), std::size_t{0});
    const Result result = solve(problem);
    check_sound(problem, result);
    std::int64_t durations = 0;
    for (const Operation& operation : problem.operations) durations += operation.duration_s;
    CHECK((result.seconds - durations) * 3 < (price(problem, as_listed).seconds - durations) * 2);
    CHECK(result.lower_bound_seconds > durations);
}

TEST_CASE("the same question gets the same answer, asked twice or after others") {
    ord::Random random(24);
    const Problem problem = ord::batch_problem({6, 10, 12, 3}, random);
    Options limits;
    limits.node_limit = 3000;
    const Result first = solve(problem, limits);
    solve(ord::random_problem({}, random));
    const Result second = solve(problem, limits);
    CHECK(first.order == second.order);
    CHECK(first.nodes == second.nodes);
    CHECK(first.lower_bound_seconds == second.lower_bound_seconds);
    CHECK(first.status == Status::limited);
}

TEST_CASE("the callback ends the search, and sees the gap close") {
    ord::Random random(25);
    const Problem problem = ord::batch_problem({6, 10, 12, 3}, random);
    std::vector<Progress> seen;
    Options options;
    options.stop = [&seen](const Progress& progress) {
        seen.push_back(progress);
        return seen.size() == 20;
    };
    const Result result = solve(problem, options);
    CHECK(result.status == Status::limited);
    check_sound(problem, result);
    REQUIRE(seen.size() == 20);
    for (std::size_t i = 1; i < seen.size(); ++i) {
        CHECK(seen[i].best_seconds <= seen[i - 1].best_seconds);
        CHECK(seen[i].bound_seconds >= seen[i - 1].bound_seconds);
        CHECK(seen[i].nodes > seen[i - 1].nodes);
    }
    CHECK(result.seconds <= seen.back().best_seconds);
    CHECK(result.lower_bound_seconds >= seen.back().bound_seconds);
}

TEST_CASE("nothing to do takes no time, and one thing takes its own") {
    CHECK(solve(Problem{}).status == Status::proved);
    CHECK(solve(Problem{}).seconds == 0);
    Problem one{{saw()}, {cut(0, 1, any)}, {}, {}, {}};
    CHECK(solve(one).seconds == 60 + 100 + 20);
    one.machines[0].start = {0, 1, unknown};
    CHECK(solve(one).seconds == 60);
    one.start_machine = 0;
    CHECK(solve(one).seconds == 60);
    CHECK(solve(one).order == std::vector<std::size_t>{0});
}
