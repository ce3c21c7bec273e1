// What a stack can be brought to with the shims that are owned.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <set>

#include "setup/shims.h"

using namespace kw;

namespace {

Length mm(double value) { return Length::nearest_mm(value); }

Cutter stack(std::vector<Length> in_it, std::vector<Length> spare) {
    Cutter cutter{"stack", CutterKind::dado_stack, "saw", mm(12.2)};
    cutter.shims = std::move(in_it);
    cutter.spares = std::move(spare);
    return cutter;
}

// Every choice of the shims, one by one.
std::set<Length> sums_by_hand(const Cutter& cutter) {
    std::vector<Length> owned = cutter.shims;
    owned.insert(owned.end(), cutter.spares.begin(), cutter.spares.end());
    std::set<Length> sums;
    for (unsigned choice = 0; choice < (1U << owned.size()); ++choice) {
        Length sum;
        for (std::size_t i = 0; i < owned.size(); ++i)
            if ((choice >> i) & 1U) sum += owned[i];
        sums.insert(sum);
    }
    return sums;
}

}  // namespace

TEST_CASE("a stack with nothing listed is not known to have shims, and a blade never takes any") {
    CHECK_FALSE(lists_shims(stack({}, {})));
    CHECK(lists_shims(stack({mm(0.1)}, {})));
    CHECK(lists_shims(stack({}, {mm(0.1)})));
    Cutter blade = stack({}, {mm(0.1)});
    blade.kind = CutterKind::blade;
    CHECK_FALSE(lists_shims(blade));
}

TEST_CASE("the shims that are in and those that are spare can be put together anew") {
    const Cutter cutter = stack({mm(0.2)}, {mm(0.1), mm(0.5)});
    CHECK(shims_in(cutter) == mm(0.2));
    const std::vector<Length> wanted = {mm(0.0), mm(0.1), mm(0.2), mm(0.3),
                                        mm(0.5), mm(0.6), mm(0.7), mm(0.8)};
    CHECK(shim_sums(cutter) == wanted);
    CHECK(shims_for(cutter, mm(0.6)) == std::vector<Length>{mm(0.5), mm(0.1)});
    CHECK(shims_for(cutter, mm(0.0)).empty());
    CHECK(shims_for(cutter, mm(0.4)).empty());
}

TEST_CASE("random sets of shims: the same sums as trying every choice, and no fewer shims would do") {
    std::mt19937 dice(7);
    for (int job = 0; job < 200; ++job) {
        std::vector<Length> in_it, spare;
        const int count = 1 + int(dice() % 9);
        // Whole twentieths of a millimetre, so that no two sums are nearly alike.
        for (int i = 0; i < count; ++i)
            (dice() % 2 ? in_it : spare).push_back(Length::micrometres(50 * (1 + int(dice() % 8))));
        const Cutter cutter = stack(in_it, spare);
        const std::set<Length> by_hand = sums_by_hand(cutter);
        const Length most = max(Length::inches(1, 8), shims_in(cutter));
        std::vector<Length> wanted;
        std::copy_if(by_hand.begin(), by_hand.end(), std::back_inserter(wanted),
                     [&](Length sum) { return sum <= most; });
        CHECK(shim_sums(cutter) == wanted);

        std::vector<Length> owned = in_it;
        owned.insert(owned.end(), spare.begin(), spare.end());
        for (const Length sum : wanted) {
            const std::vector<Length> made = shims_for(cutter, sum);
            Length total;
            std::vector<Length> left = owned;
            for (const Length shim : made) {
                total += shim;
                const auto used = std::find(left.begin(), left.end(), shim);
                REQUIRE(used != left.end());
                left.erase(used);
            }
            CHECK(total == sum);
            for (unsigned choice = 0; choice < (1U << owned.size()); ++choice) {
                Length other;
                for (std::size_t i = 0; i < owned.size(); ++i)
                    if ((choice >> i) & 1U) other += owned[i];
                if (other == sum) CHECK(made.size() <= std::size_t(__builtin_popcount(choice)));
            }
        }
    }
}

TEST_CASE("forty shims, every one another, are as quick as a few: sums a hair apart are one") {
    std::vector<Length> spare;
    for (int i = 0; i < 40; ++i) spare.push_back(Length::micrometres(101 + 7 * i));
    const auto sums = shim_sums(stack({}, spare));
    CHECK(sums.size() < 400);
    CHECK(sums.back() <= Length::inches(1, 8));
    CHECK(std::is_sorted(sums.begin(), sums.end()));
}
