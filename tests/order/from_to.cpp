// Changes whose time hangs on what stands, against every order there is (tests/brute/brute.h).

#include "order/from_to.h"

#include <doctest/doctest.h>

#include "bench/sop.h"
#include "brute/brute.h"
#include "effort.h"
#include "order/cost.h"
#include "order/model.h"
#include "order/path.h"
#include "order/precedence.h"
#include "order/solve.h"
#include "random_work.h"

#include <sstream>

using namespace kw::order;

namespace {

Model model(const Problem& problem) {
    return model_of(problem, std::get<std::vector<Bits>>(all_before(problem)));
}

void check_least(const Problem& problem, const Result& result, std::optional<std::int64_t> least) {
    if (!least) {
        CHECK(result.status == Status::impossible);
        return;
    }
    REQUIRE(result.status == Status::proved);
    CHECK(result.seconds == *least);
    CHECK(result.lower_bound_seconds == *least);
    CHECK(result.gap_s() == 0);
    CHECK(result.gap() == 0);
    CHECK(ord::Brute(problem).seconds_of(result.order) == *least);
    CHECK(price(problem, result.order).seconds == *least);
}

ord::Kind mixed_kind(ord::Random& random, bool is_wild) {
    ord::Kind kind;
    kind.operations = 1 + random.below(8);
    kind.machines = 1 + random.below(2);
    kind.attributes = 1 + random.below(3);
    kind.values = 2 + static_cast<int>(random.below(3));
    kind.groups = random.below(2);
    kind.any_percent = random.between(0, 40);
    kind.precedence_percent = random.between(0, 30);
    kind.is_wild = is_wild;
    kind.from_to_percent = 70;
    kind.is_triangular = random.chance(50);
    return kind;
}

// One machine, no "any", no groups.
ord::Kind path_kind(ord::Random& random) {
    ord::Kind kind;
    kind.operations = 2 + random.below(7);
    kind.machines = 1;
    kind.attributes = 1 + random.below(2);
    kind.values = random.chance(50) ? 12 : 3;
    kind.groups = 0;
    kind.any_percent = 0;
    kind.precedence_percent = random.between(0, 30);
    kind.from_to_percent = 80;
    kind.is_triangular = random.chance(50);
    return kind;
}

}  // namespace

TEST_CASE(
    "a change takes what the table says from where it stands; what is unknown or lost is set from anywhere") {
    Machine machine{0, {{100, {}, {1}}, {7, {8}, {}, {{0, 3}, {4, 0}}}}, {0, 0}};
    Problem problem{{machine}, {}, {}, {}, {}};
    problem.operations = {{0, {0, 1}, 0}, {0, {0, 0}, 0}, {0, {1, 1}, 0}, {0, {1, 2}, 0}, {0, {1, 1}, 0}};
    const Price all = price(problem, {0, 1, 2, 3, 4});
    CHECK(all.steps[0].setting_s() == 3);
    CHECK(all.steps[1].setting_s() == 4);
    CHECK(all.steps[2].setting_s() == 107);  // the other change invalidates it: not 3
    CHECK(all.steps[2].changes[1].cause == Cause::differs);
    CHECK(all.steps[3].setting_s() == 7);  // beyond the table
    CHECK(all.steps[4].setting_s() == 7);  // the row is short
    problem.machines[0].start = {0, unknown};
    CHECK(price(problem, {1}).seconds == 8);
    CHECK(price(problem, {0}).seconds == 7);
}

TEST_CASE(
    "with from-to tables, on several machines and among other attributes, the proved order takes the least "
    "time") {
    for (const bool is_wild : {false, true}) {
        ord::Random random(is_wild ? 42 : 41);
        const int problems = kw::tests::cases(500);
        int possible = 0;
        for (int i = 0; i < problems; ++i) {
            CAPTURE(i);
            const Problem problem = ord::random_problem(mixed_kind(random, is_wild), random);
            REQUIRE_FALSE(validate(problem));
            const auto least = ord::Brute(problem).least_seconds();
            possible += least ? 1 : 0;
            check_least(problem, solve(problem), least);
            Options narrow;
            narrow.beam_width = 1;
            check_least(problem, solve(problem, narrow), least);
        }
        CHECK(possible > problems / 2);
    }
}

TEST_CASE("where all time hangs on what follows what, the proved order takes the least time") {
    ord::Random random(43);
    const int problems = kw::tests::cases(500);
    int paths = 0, orderly = 0, alike = 0;
    for (int i = 0; i < problems; ++i) {
        CAPTURE(i);
        const Problem problem = ord::random_problem(path_kind(random), random);
        if (const auto path = path_of(model(problem))) {
            ++paths;
            orderly += path->is_orderly ? 1 : 0;
            for (std::size_t k = 0; k < path->count; ++k) alike += path->twin[k] != k ? 1 : 0;
        }
        check_least(problem, solve(problem), ord::Brute(problem).least_seconds());
    }
    CHECK(paths > problems * 2 / 5);
    CHECK(orderly > problems / 10);
    CHECK(orderly < paths - problems / 10);
    CHECK(alike > problems / 5);
}

TEST_CASE("a path of twelve is proved at its least time; cut short, bound <= least <= found") {
    ord::Random random(44);
    const int problems = kw::tests::cases(60);
    int cut_short = 0;
    for (int i = 0; i < problems; ++i) {
        CAPTURE(i);
        ord::Kind kind = path_kind(random);
        kind.operations = 12;
        kind.precedence_percent = random.between(10, 30);
        kind.from_to_percent = 100;
        const Problem problem = ord::random_problem(kind, random);
        const auto least = ord::Brute(problem).least_seconds_remembering();
        check_least(problem, solve(problem), least);
        Options few;
        few.node_limit = random.between(0, 600);
        const Result result = solve(problem, few);
        CHECK(ord::Brute(problem).seconds_of(result.order) == result.seconds);
        CHECK(result.lower_bound_seconds <= *least);
        CHECK(result.seconds >= *least);
        CHECK(result.gap_s() == result.seconds - result.lower_bound_seconds);
        CHECK((result.gap_s() == 0) == (result.status == Status::proved));
        cut_short += result.status == Status::limited ? 1 : 0;
    }
    CHECK(cut_short > problems / 12);
}

TEST_CASE(
    "a way round that is cheaper is taken where other work leads that way, and the machine is not orderly") {
    // From 0 to 2 directly takes 50, by way of 1 it takes 2.
    Machine machine{0, {{50, {}, {}, {{0, 1, 50}, {1, 0, 1}, {50, 1, 0}}}}, {0}};
    Problem problem{{machine}, {{0, {2}, 0}, {0, {1}, 0}, {0, {2}, 0}, {0, {0}, 0}}, {}, {}, {}};
    CHECK(solve(problem).seconds == 2);
    CHECK_FALSE(model(problem).shops[0].orderly);
    problem.machines[0].attributes[0].change_from_to_s = {{0, 1, 2}, {1, 0, 1}, {2, 1, 0}};
    CHECK(model(problem).shops[0].orderly);
    CHECK(solve(problem).seconds == 2);
}

TEST_CASE("a time limit ends the search with an order and a gap that is stated") {
    ord::Random random(45);
    ord::Kind kind{40, 1, 1, 60, 0, 0, 0, false, false, 100, false};
    const Problem problem = ord::random_problem(kind, random);
    Options options;
    options.node_limit = std::numeric_limits<std::int64_t>::max();
    options.time_limit = std::chrono::milliseconds(0);
    const Result result = solve(problem, options);
    CHECK(result.status == Status::limited);
    CHECK_FALSE(first_breach(problem, result.order));
    CHECK(result.gap_s() > 0);
    CHECK(result.gap() ==
          doctest::Approx(static_cast<double>(result.gap_s()) / static_cast<double>(result.seconds)));
}

TEST_CASE("a path's answer is the same, asked twice") {
    ord::Random random(46);
    const Problem problem = ord::random_problem({30, 1, 1, 40, 0, 5, 0, false, false, 100, false}, random);
    Options options;
    options.node_limit = 20'000;
    const Result first = solve(problem, options), second = solve(problem, options);
    CHECK(first.order == second.order);
    CHECK(first.nodes == second.nodes);
    CHECK(first.lower_bound_seconds == second.lower_bound_seconds);
}

TEST_CASE(
    "a sequential ordering instance is read: -1 is a precedence, the first and the last node are fixed") {
    std::istringstream in(
        "NAME: tiny\nTYPE: SOP\nDIMENSION: 4\nEDGE_WEIGHT_SECTION\n4\n"
        "0 5 9 1000\n-1 0 3 8\n-1 -1 0 2\n-1 -1 -1 0\nEOF\n");
    const Problem problem = sop::problem_of(sop::read_matrix(in));
    REQUIRE_FALSE(validate(problem));
    const Result result = solve(problem);
    CHECK(result.status == Status::proved);
    CHECK(result.order ==
          std::vector<std::size_t>{0, 1, 2});  // node 2 would cost more if it were free to go last
    CHECK(result.seconds == 5 + 3 + 2);
    std::istringstream shortened("EDGE_WEIGHT_SECTION\n3\n0 1 2\n-1 0 1\n-1 -1\n");
    CHECK_THROWS_AS(sop::read_matrix(shortened), sop::Refused);
    std::istringstream nothing("NAME: tiny\n");
    CHECK_THROWS_AS(sop::read_matrix(nothing), sop::Refused);
    std::istringstream table("instance,nodes,best_known\ntiny,4,10\n");
    CHECK(sop::read_known(table) == std::map<std::string, std::int64_t>{{"tiny", 10}});
}

TEST_CASE("the longest times there may be do not run over") {
    ord::Random random(47);
    Problem problem = ord::random_problem({9, 1, 1, 12, 0, 10, 0, false, false, 100, false}, random);
    for (auto& row : problem.machines[0].attributes[0].change_from_to_s)
        for (std::int64_t& seconds : row) seconds *= most_seconds / 20;
    REQUIRE_FALSE(validate(problem));
    check_least(problem, solve(problem), ord::Brute(problem).least_seconds_remembering());
}
