// How a bit on a router table takes a deep cut. Half of its width at once, and a quarter inch at most, is common practice, no source.
#include "setup/bit_passes.h"

#include <doctest/doctest.h>

#include <random>

#include "inches.h"

using namespace kw;
using tests::in;

namespace {

Machine router() { return usual_machine("router", MachineKind::router_table); }

Cutter bit(Length width) { return {"bit", CutterKind::bit, "router", width}; }

using Heights = std::vector<Length>;

}  // namespace

TEST_CASE("a quarter-inch bit takes 15/64 in of height in two passes: 1/8 in, and the height itself") {
    CHECK(heights_of_passes(router(), bit(in(1, 4)), in(15, 64)) == Heights{in(1, 8), in(15, 64)});
}

TEST_CASE("a bit takes what it can at once in one pass, and a saw takes everything so") {
    CHECK(heights_of_passes(router(), bit(in(1, 2)), in(1, 4)) == Heights{in(1, 4)});
    CHECK(heights_of_passes(usual_machine("saw", MachineKind::table_saw),
                            {"stack", CutterKind::dado_stack, "saw", in(1, 4)},
                            in(3, 4)) == Heights{in(3, 4)});
}

TEST_CASE("a wide bit still takes no more than a quarter inch at once, unless its maker says so") {
    Cutter wide = bit(in(1));
    CHECK(heights_of_passes(router(), wide, in(3, 8)) == Heights{in(1, 4), in(3, 8)});
    wide.depth_per_pass = in(3, 8);
    CHECK(heights_of_passes(router(), wide, in(3, 8)) == Heights{in(3, 8)});
    wide.depth_per_pass = in(1, 8);
    CHECK(heights_of_passes(router(), wide, in(3, 8)) == Heights{in(1, 8), in(1, 4), in(3, 8)});
}

TEST_CASE("where the last pass would only rub, the two last share what is left") {
    // On paper: 1/8, 1/4 and then 1/128 in; half of 1/8 + 1/128 in is 17/256 in, so 1/8, 49/256 and 33/128 in.
    CHECK(heights_of_passes(router(), bit(in(1, 4)), in(33, 128)) ==
          Heights{in(1, 8), in(49, 256), in(33, 128)});
}

TEST_CASE(
    "whatever the height, passes rise to it, none takes more than the bit does, and one less would not do") {
    std::mt19937 random(51);
    for (int i = 0; i < 5000; ++i) {
        Cutter cutter = bit(Length::micrometres(3'000 + std::int64_t(random() % 20'000)));
        if (i % 2 == 0) cutter.depth_per_pass = Length::micrometres(800 + std::int64_t(random() % 6'000));
        const Length most = most_in_one_pass(cutter);
        const Length height = Length::micrometres(300 + std::int64_t(random() % 19'000));
        const Heights heights = heights_of_passes(router(), cutter, height);
        CHECK(heights.back() == height);
        Length below;
        for (const Length one : heights) {
            CHECK(one > below);
            CHECK(one - below <= most);
            if (heights.size() > 1) CHECK(one - below >= least_bit_pass.scaled(1, 2));
            below = one;
        }
        const auto fewest = (height.ticks() + most.ticks() - 1) / most.ticks();
        CHECK(static_cast<std::int64_t>(heights.size()) == fewest);
    }
}
