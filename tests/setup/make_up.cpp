// What a dado stack is put on as, with chippers and shims.
#include <doctest/doctest.h>

#include <random>

#include "inches.h"
#include "setup/make_up.h"

using namespace kw;
using tests::in;

namespace {

// Two outer cutters of an eighth; beside them what such a set has.
Cutter eighth_set() {
    Cutter stack{"stack", CutterKind::dado_stack, "saw", in(1, 4)};
    stack.spare_chippers = {in(1, 8), in(1, 8), in(1, 8), in(1, 8), in(3, 32), in(1, 16)};
    return stack;
}

}  // namespace

TEST_CASE("an eighth-inch set is put on with an eighth more for each step of an eighth") {
    // As such sets' charts have it (common practice, no source): 3/8 with one chipper, up to 3/4 with four.
    for (int chippers = 1; chippers <= 4; ++chippers) {
        const auto made = made_up_for(eighth_set(), in(2 + chippers, 8));
        REQUIRE(made);
        CHECK(made->kerf == in(2 + chippers, 8));
        CHECK(made->chippers == std::vector<Length>(std::size_t(chippers), in(1, 8)));
    }
    const auto odd = made_up_for(eighth_set(), in(13, 32));
    REQUIRE(odd);
    CHECK(odd->chippers == std::vector<Length>{in(3, 32), in(1, 16)});
}

TEST_CASE("with shims it comes to plywood that is thinner than its name") {
    Cutter stack = eighth_set();
    CHECK_FALSE(made_up_for(stack, in(472, 1000)));  // 15/32 and 0.003
    stack.spares = {in(4, 1000), in(8, 1000)};
    const auto made = made_up_for(stack, in(473, 1000));
    REQUIRE(made);
    CHECK(abs(made->kerf - in(473, 1000)) <= in(1, 1000));
    CHECK(made->shims == std::vector<Length>{in(4, 1000)});
    CHECK(made->spares == std::vector<Length>{in(8, 1000)});
}

TEST_CASE("shims alone are enough, where the slot is little wider than the stack as it stands") {
    Cutter stack{"stack", CutterKind::dado_stack, "saw", in(1, 4)};
    stack.spares = {in(4, 1000), in(8, 1000), in(12, 1000)};
    const auto made = made_up_for(stack, in(266, 1000));
    REQUIRE(made);
    CHECK(made->kerf == in(266, 1000));
    CHECK(made->chippers.empty());
    CHECK(made->shims == std::vector<Length>{in(12, 1000), in(4, 1000)});
    CHECK(made->spares == std::vector<Length>{in(8, 1000)});
    // No two shims of one kind where one is owned, and no chippers that nobody has.
    CHECK_FALSE(made_up_for(stack, in(258 + 24, 1000)));
    CHECK_FALSE(made_up_for(stack, in(3, 8)));
    // What is in it counts as owned, and goes on being in it.
    stack.shims = {in(4, 1000)};
    const auto more = made_up_for(stack, in(258, 1000));
    REQUIRE(more);
    CHECK(more->kerf == in(258, 1000));
    CHECK(sum_of(more->shims) == in(12, 1000));
}

TEST_CASE("a stack is not made up to what it is, or where nobody said what there is to put on") {
    CHECK_FALSE(made_up_for(eighth_set(), in(1, 4)));
    Cutter bare = eighth_set();
    bare.spare_chippers.clear();
    CHECK_FALSE(made_up_for(bare, in(1, 2)));
    Cutter bit = eighth_set();
    bit.kind = CutterKind::bit;
    CHECK_FALSE(made_up_for(bit, in(1, 2)));
}

TEST_CASE("random sets: nothing that could be put on is nearer, and every piece is there once") {
    std::mt19937 dice(5);
    const auto some = [&](std::size_t count, Length least, int steps) {
        std::vector<Length> pieces;
        for (std::size_t i = 0; i < count; ++i)
            pieces.push_back(least + std::int64_t(dice() % std::uint32_t(steps)) * Length::micrometres(100));
        return pieces;
    };
    int made_up = 0;
    for (int i = 0; i < 400; ++i) {
        Cutter stack{"stack", CutterKind::dado_stack, "saw", Length::micrometres(6400)};
        stack.spare_chippers = some(dice() % 5, Length::micrometres(1500), 20);
        stack.spares = some(dice() % 4, Length::micrometres(100), 5);
        const Length width = Length::micrometres(6500 + std::int64_t(dice() % 8000));
        std::vector<Length> all = stack.spare_chippers;
        all.insert(all.end(), stack.spares.begin(), stack.spares.end());
        // Every choice of the pieces, one by one. A sum of shims beyond a chipper's width is none.
        Length nearest = Length::millimetres(1000);
        for (unsigned choice = 0; choice < (1U << all.size()); ++choice) {
            Length sum = stack.kerf;
            for (std::size_t p = 0; p < all.size(); ++p)
                if ((choice >> p) & 1U) sum += all[p];
            if (abs(sum - width) < abs(nearest - width)) nearest = sum;
        }
        const auto made = made_up_for(stack, width);
        if (!made) {
            CHECK((abs(nearest - width) > make_up_tolerance || nearest == stack.kerf));
            continue;
        }
        ++made_up;
        // Of two that are alike within a hundredth the one with fewer pieces is taken.
        CHECK(abs(made->kerf - width) <= abs(nearest - width) + Length::micrometres(20));
        CHECK(made->kerf == stack.kerf + sum_of(made->chippers) + sum_of(made->shims));
        CHECK(sum_of(made->chippers) + sum_of(made->spare_chippers) == sum_of(stack.spare_chippers));
        CHECK(sum_of(made->shims) + sum_of(made->spares) == sum_of(stack.spares));
    }
    CHECK(made_up > 50);
}
