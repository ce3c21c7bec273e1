// The least time, against every order there is (tests/brute/brute.h).

#include <doctest/doctest.h>

#include "brute/brute.h"
#include "effort.h"
#include "order/cost.h"
#include "order/sets_of_options.h"
#include "order/solve.h"
#include "random_work.h"

using namespace kw::order;

namespace {

void check_proved(const Problem& problem, const Result& result, std::optional<std::int64_t> least) {
    if (!least) {
        CHECK(result.status == Status::impossible);
        CHECK(result.order.empty());
        CHECK_FALSE(result.culprits.empty());
        return;
    }
    REQUIRE(result.status == Status::proved);
    CHECK(result.seconds == *least);
    CHECK(result.lower_bound_seconds == *least);
    CHECK(ord::Brute(problem).seconds_of(result.order) == *least);
}

void compare_with_brute(bool is_wild, std::uint32_t seed, int problems, bool has_choices = false) {
    ord::Random random(seed);
    if (has_choices) problems = kw::tests::cases(problems);  // those take longest
    int possible = 0;
    for (int i = 0; i < problems; ++i) {
        CAPTURE(i);
        ord::Kind kind = ord::random_kind(random, is_wild, has_choices ? 10 : 8);
        if (has_choices) kind.choices = 1 + random.below(3);
        if (has_choices && random.chance(30)) kind.from_to_percent = 50;
        const Problem problem = ord::random_problem(kind, random);
        REQUIRE_FALSE(validate(problem));
        const std::optional<std::int64_t> least = ord::Brute(problem).least_seconds();
        possible += least ? 1 : 0;
        check_proved(problem, solve(problem), least);
        Options narrow;
        narrow.beam_width = 1;
        check_proved(problem, solve(problem, narrow), least);
        // However many sets of options there are.
        if (has_choices) check_proved(problem, solve_below(problem, {}, whatever_it_takes), least);
    }
    CHECK(possible > problems / 2);
    CHECK(possible < problems);
}

}  // namespace

TEST_CASE("with alternatives the proved order takes the least time of all orders of all options") {
    compare_with_brute(false, 71, 1500, true);
}

TEST_CASE("alternatives on machines and in groups that make no sense") {
    compare_with_brute(true, 72, 1500, true);
}

TEST_CASE("the proved order takes the least time of all orders: machines and groups as a shop has them") {
    compare_with_brute(false, 11, 400);
}

TEST_CASE("the proved order takes the least time of all orders: whatever hangs on whatever") {
    compare_with_brute(true, 12, 400);
}

TEST_CASE("the proved order takes the least time at a size where orders must be remembered") {
    ord::Random random(13);
    for (int i = 0; i < 40; ++i) {
        CAPTURE(i);
        ord::Kind kind = ord::random_kind(random, i % 2 == 1, 1);
        kind.operations = 12;
        kind.precedence_percent = random.between(15, 35);
        const Problem problem = ord::random_problem(kind, random);
        check_proved(problem, solve(problem), ord::Brute(problem).least_seconds_remembering());
    }
}

TEST_CASE("a search that was cut short never claims too much: bound <= least <= found") {
    ord::Random random(14);
    int cut_short = 0;
    for (int i = 0; i < 400; ++i) {
        CAPTURE(i);
        const Problem problem = ord::random_problem(ord::random_kind(random, i % 2 == 1, 8), random);
        const std::optional<std::int64_t> least = ord::Brute(problem).least_seconds();
        Options short_search;
        short_search.beam_width = 1;
        short_search.node_limit = random.between(0, 20);
        const Result result = solve(problem, short_search);
        if (!least) CHECK(result.status != Status::proved);
        if (!least) continue;
        CHECK(result.status != Status::impossible);
        CHECK(result.lower_bound_seconds <= *least);
        if (result.status == Status::proved) CHECK(result.seconds == *least);
        else ++cut_short;
        if (result.order.empty()) continue;
        CHECK(result.seconds >= *least);
        CHECK(ord::Brute(problem).seconds_of(result.order) == result.seconds);
    }
    CHECK(cut_short > 20);
}

TEST_CASE("planned again halfway, from the machines as they stand, the rest takes what it was to take") {
    // A part of a best order is a best order of that part: else the whole could be bettered there.
    ord::Random random(15);
    for (int i = 0; i < 150; ++i) {
        CAPTURE(i);
        ord::Kind kind = ord::random_kind(random, i % 2 == 1, 1);
        kind.operations = 10;
        const Problem problem = ord::random_problem(kind, random);
        const Result whole = solve(problem);
        if (whole.status == Status::impossible) continue;
        const std::size_t done = 1 + random.below(9);
        const std::vector<std::size_t> first(whole.order.begin(),
                                             whole.order.begin() + static_cast<std::ptrdiff_t>(done));
        const Price so_far = price(problem, first);
        const Result rest = solve(ord::rest_of(problem, first, so_far.left));
        REQUIRE(rest.status == Status::proved);
        CHECK(so_far.seconds + rest.seconds == whole.seconds);
    }
}
