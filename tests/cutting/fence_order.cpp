// How seldom the fence can be set: facts, and small sets of cuts against every order that there is of them.
#include "cutting/fence_order.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "effort.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::mm;

namespace {

CutToOrder rip(int fence, int after = -1) { return {CutDirection::rip, mm(fence), after}; }
CutToOrder crosscut(int stop, int after = -1) { return {CutDirection::crosscut, mm(stop), after}; }

bool same_setting(const CutToOrder& a, const CutToOrder& b) {
    return a.direction == b.direction && a.fence == b.fence;
}

// Every order in which a cut comes after its own, one cut at a time.
std::size_t fewest_by_trying(const std::vector<CutToOrder>& cuts, std::vector<bool>& done, int last,
                             std::size_t left) {
    if (left == 0) return 0;
    std::size_t fewest = cuts.size() + 1;
    for (std::size_t c = 0; c < cuts.size(); ++c) {
        if (done[c] || (cuts[c].after >= 0 && !done[static_cast<std::size_t>(cuts[c].after)])) continue;
        const bool is_set = last >= 0 && same_setting(cuts[static_cast<std::size_t>(last)], cuts[c]);
        done[c] = true;
        fewest =
            std::min(fewest, (is_set ? 0 : 1) + fewest_by_trying(cuts, done, static_cast<int>(c), left - 1));
        done[c] = false;
    }
    return fewest;
}

void check_order(const std::vector<CutToOrder>& cuts, const FenceOrder& order) {
    std::vector<bool> done(cuts.size(), false);
    for (const FenceSetting& setting : order.settings) {
        REQUIRE_FALSE(setting.cuts.empty());
        for (const std::size_t cut : setting.cuts) {
            CHECK(cuts[cut].fence == setting.fence);
            CHECK(cuts[cut].direction == setting.direction);
            CHECK_FALSE(done[cut]);
            const int after = cuts[cut].after;
            CHECK((after < 0 || done[static_cast<std::size_t>(after)]));
            done[cut] = true;
        }
    }
    CHECK(std::find(done.begin(), done.end(), false) == done.end());
}

}  // namespace

TEST_CASE("two sheets that are ripped alike and crosscut alike take two settings, not four") {
    const std::vector<CutToOrder> cuts{rip(100), crosscut(400, 0), rip(100), crosscut(400, 2)};
    const FenceOrder order = order_by_fence(cuts);
    check_order(cuts, order);
    CHECK(order.settings.size() == 2);
    CHECK(order.proved);
}

TEST_CASE("a stop and a fence at one distance are two settings") {
    CHECK(order_by_fence({rip(100), crosscut(100)}).settings.size() == 2);
}

TEST_CASE("a rip that comes again behind a crosscut has the fence set twice") {
    const FenceOrder order = order_by_fence({rip(100), crosscut(400, 0), rip(100, 1)});
    CHECK(order.settings.size() == 3);
    CHECK(order.least == 3);
}

TEST_CASE("nothing to cut takes no setting") {
    CHECK(order_by_fence({}).settings.empty());
    CHECK(order_by_fence({}).proved);
}

TEST_CASE("no order of a few cuts sets the fence less often: every order was tried") {
    laid::Random random(71);
    const int cases = tests::cases(400);
    int beyond_once_each = 0;
    for (int i = 0; i < cases; ++i) {
        CAPTURE(i);
        std::vector<CutToOrder> cuts;
        const int count = random.between(2, 8);
        for (int c = 0; c < count; ++c) {
            const int after = random.chance(30) ? -1 : random.between(0, c) - 1;
            const int fence = random.between(1, 3);
            cuts.push_back(random.chance(50) ? rip(fence, after) : crosscut(fence, after));
        }
        const FenceOrder order = order_by_fence(cuts);
        check_order(cuts, order);
        std::vector<bool> done(cuts.size(), false);
        CHECK(order.settings.size() == fewest_by_trying(cuts, done, -1, cuts.size()));
        CHECK(order.proved);
        // Stopped at once there is an order all the same, and what is said of it holds.
        const FenceOrder quick = order_by_fence(cuts, {0, {}});
        check_order(cuts, quick);
        CHECK(quick.least <= order.settings.size());
        CHECK((!quick.proved || quick.settings.size() == order.settings.size()));
        std::vector<std::pair<bool, Length>> all;
        for (const CutToOrder& cut : cuts) all.push_back({cut.direction == CutDirection::rip, cut.fence});
        std::sort(all.begin(), all.end());
        all.erase(std::unique(all.begin(), all.end()), all.end());
        beyond_once_each += order.settings.size() > all.size() ? 1 : 0;
    }
    CHECK(beyond_once_each >= cases / 20);
}
