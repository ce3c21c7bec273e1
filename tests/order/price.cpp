// What an order costs, and why.

#include "order/cost.h"

#include <doctest/doctest.h>

#include "brute/brute.h"
#include "random_work.h"

using namespace kw::order;

namespace {

// Height and fence stand; which cutter is on it, nobody knows.
Machine set_saw() { return {10, {{100, {40}, {1}}, {20, {}, {}}, {30, {}, {}}}, {unknown, 1, 1}}; }

}  // namespace

TEST_CASE("each change has its cause: nobody knew, it stood elsewhere, another change took it along") {
    Problem problem{{set_saw(), set_saw()}, {}, {}, {}, {}};
    problem.operations = {{0, {0, 1, 1}, 5}, {0, {1, any, 2}, 5}, {1, {any, 1, 1}, 5}, {0, {1, 1, 2}, 5}};
    const Price price = kw::order::price(problem, {0, 1, 2, 3});
    REQUIRE(price.steps.size() == 4);

    REQUIRE(price.steps[0].changes.size() == 2);  // the cutter, and so the height, though it stood right
    CHECK(price.steps[0].changes[0].cause == Cause::not_known);
    CHECK(price.steps[0].changes[0].seconds == 40);  // this cutter is quicker to put in
    CHECK(price.steps[0].changes[1].cause == Cause::invalidated);
    CHECK(price.steps[0].changes[1].from == 1);

    REQUIRE(price.steps[1].changes.size() == 2);
    CHECK(price.steps[1].changes[0].cause == Cause::differs);
    CHECK(price.steps[1].changes[0].from == 0);
    CHECK(price.steps[1].changes[0].to == 1);
    CHECK(price.steps[1].changes[0].seconds == 100);
    CHECK(price.steps[1].changes[1].attribute == 2);

    CHECK(price.steps[2].changes.empty());
    CHECK(price.steps[2].walk_s == 10);

    REQUIRE(price.steps[3].changes.size() == 1);  // the height, lost with the cutter a while ago
    CHECK(price.steps[3].changes[0].attribute == 1);
    CHECK(price.steps[3].changes[0].cause == Cause::invalidated);
    CHECK(price.steps[3].walk_s == 10);

    CHECK(price.seconds == 4 * 5 + 2 * 10 + 40 + 20 + 100 + 30 + 20);
    CHECK(price.left == std::vector<std::vector<int>>{{1, 1, 2}, {unknown, 1, 1}});
}

TEST_CASE("what hangs on an invalidated attribute is invalidated with it") {
    Machine machine{0, {{1, {}, {1}}, {10, {}, {2}}, {100, {}, {}}}, {0, 0, 0}};
    const Problem problem{{machine}, {{0, {1, any, any}, 0}, {0, {any, any, 0}, 0}}, {}, {}, {}};
    const Price price = kw::order::price(problem, {0, 1});
    CHECK(price.steps[1].setting_s() == 100);
    CHECK(price.left == std::vector<std::vector<int>>{{1, unknown, 0}});
}

TEST_CASE("the breakdown adds up, and in any order comes to what brute.h counts") {
    ord::Random random(31);
    int kept = 0;
    for (int i = 0; i < 2000; ++i) {
        CAPTURE(i);
        ord::Kind kind{4 + random.below(3), 2, 3, 3, 25, 10, random.below(3), i % 2 == 1, true};
        const Problem problem = ord::random_problem(kind, random);
        const std::vector<std::size_t> order = ord::shuffled(kind.operations, random);
        const Price price = kw::order::price(problem, order);
        std::int64_t sum = 0;
        for (const Step& step : price.steps) {
            std::int64_t seconds = step.walk_s + step.duration_s;
            for (const Change& change : step.changes) seconds += change.seconds;
            CHECK(seconds == step.seconds());
            sum += seconds;
        }
        CHECK(sum == price.seconds);
        const std::optional<std::int64_t> counted = ord::Brute(problem).seconds_of(order);
        CHECK(counted.has_value() == !first_breach(problem, order));
        if (counted) CHECK(*counted == price.seconds);
        kept += counted ? 1 : 0;
    }
    CHECK(kept > 100);
    CHECK(kept < 1900);
}

TEST_CASE("a part of an order and the rest of it, from the machines as they were left, come to the whole") {
    ord::Random random(32);
    for (int i = 0; i < 200; ++i) {
        CAPTURE(i);
        const Problem problem = ord::random_problem({10, 3, 3, 3, 25, 0, 0, i % 2 == 1, true}, random);
        const std::vector<std::size_t> order = ord::shuffled(10, random);
        const auto middle = order.begin() + static_cast<std::ptrdiff_t>(1 + random.below(9));
        const Price first = price(problem, {order.begin(), middle});
        Problem later = problem;
        for (std::size_t m = 0; m < later.machines.size(); ++m) later.machines[m].start = first.left[m];
        later.start_machine = problem.operations[*(middle - 1)].machine;
        CHECK(first.seconds + price(later, {middle, order.end()}).seconds == price(problem, order).seconds);
    }
}

TEST_CASE("a breach is named by its rule, its place and what it breaks") {
    Problem problem{{set_saw()}, std::vector<Operation>(3, {0, {0, 1, 1}, 5}), {{2, 1}}, {}, {}};
    problem.operations[1].needs = {1, 1, 1};
    CHECK_FALSE(first_breach(problem, {0, 2, 1}));

    const auto twice = first_breach(problem, {0, 0, 1});
    REQUIRE(twice);
    CHECK(twice->rule == Rule::each_once);
    CHECK(twice->position == 1);
    CHECK(twice->index == 0);
    const auto missing = first_breach(problem, {0, 2});
    REQUIRE(missing);
    CHECK(missing->position == 2);
    CHECK(missing->index == 1);
    const auto strange = first_breach(problem, {0, 7, 1});
    REQUIRE(strange);
    CHECK(strange->index == 7);

    const auto too_early = first_breach(problem, {1, 2, 0});
    REQUIRE(too_early);
    CHECK(too_early->rule == Rule::precedence);
    CHECK(too_early->position == 0);
    CHECK(too_early->index == 0);

    problem.precedences.clear();
    problem.groups = {{{1}, {0}, false}, {{0, 2}, {0}, false}};
    const auto disturbed = first_breach(problem, {0, 1, 2});
    REQUIRE(disturbed);
    CHECK(disturbed->rule == Rule::group);
    CHECK(disturbed->position == 1);
    CHECK(disturbed->index == 1);
}
