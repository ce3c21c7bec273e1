// Parts that ran before their joint was torn down, and are told only then.
#include <doctest/doctest.h>

#include "job/work_order.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/say_log.h"
#include "session/session.h"

using namespace kw;
using tests::now, tests::setup_of, tests::side_dado;

namespace {

// The side dado is locked and torn down by the back's; then an end of it is told late.
struct Late {
    Session torn, told;
    std::string id;
    Late() {
        torn = open_session(tests::sample_json(), {}, now);
        id = setup_of(torn, side_dado);
        torn = tests::made_ready(torn, id, tests::passes_of(torn, id), now);
        torn = tests::locked(torn, setup_of(torn, "back dado"));
        REQUIRE(is_torn_down(*torn.work, *torn.work->plan.setup_with_id(id)));
        told = apply(torn, MarkRun{id, {0, 1}, true, true}, now);
        REQUIRE(told.refused.empty());
    }
};

LogEntry entry(LogKind kind, const std::string& key, const std::string& late = {}, bool together = false) {
    LogEntry out;
    out.kind = kind;
    out.key = key;
    out.late = late;
    out.together = together;
    return out;
}

std::vector<std::size_t> places(const std::vector<LogEntry>& log) {
    std::vector<std::size_t> out;
    for (const LogEntry* one : in_order_of_work(log)) out.push_back(std::size_t(one - log.data()));
    return out;
}

}  // namespace

TEST_CASE("what was told late is what is taken back first, and leaves the rest as it was") {
    const Late late;
    CHECK(late.told.work->standing.ran.size() == late.torn.work->standing.ran.size() + 2);
    // It ran as the joint stood locked: that is torn down still, by what was done after it.
    CHECK(is_torn_down(*late.told.work, *late.told.work->plan.setup_with_id(late.id)));
    CHECK(say_last(*late.told.work, last_told(late.told.work->job.log)).rfind("ran through " + late.id, 0) ==
          0);
    const Session back = apply(late.told, TakeBack{}, now);
    CHECK(back.refused.empty());
    CHECK(back.document == late.torn.document);
}

TEST_CASE("told late, a part was cut by the joint as it was locked, and needs no other setting") {
    const Late late;
    const std::string key =
        late.told.work->plan.group_with_id(late.told.work->plan.setup_with_id(late.id)->group)->key;
    int seen = 0;
    for (const Ran& ran : late.told.work->standing.ran)
        if (ran.group_key == key) {
            ++seen;
            CHECK_FALSE(ran.set_again_since);
        }
    CHECK(seen == 2);
    // All told, nothing of it is left, and nothing has to be set again.
    std::vector<std::size_t> all = tests::passes_of(late.told, late.id);
    all.erase(all.begin(), all.begin() + 2);
    const Session done = apply(late.told, MarkRun{late.id, all, true, true}, now);
    REQUIRE(done.refused.empty());
    CHECK_FALSE(step_named(done.work->rest, late.id));
}

TEST_CASE(
    "in the order of work a late entry stands behind the last lock of its setup, whatever was told since") {
    using K = LogKind;
    const std::string a = "a | slot", b = "b | slot";
    CHECK(places({entry(K::lock, a), entry(K::lock, b), entry(K::ran, a, "?"), entry(K::ran, a, "?", true),
                  entry(K::ran, b)}) == std::vector<std::size_t>{0, 2, 3, 1, 4});
    // Also of another cut of the same setup; behind what was lost by the lock, and behind what was told late before.
    CHECK(places({entry(K::lock, "a | end"), entry(K::lost, "", "", true), entry(K::lock, b),
                  entry(K::ran, a, "?"), entry(K::test, b), entry(K::ran, a, "?")}) ==
          std::vector<std::size_t>{0, 1, 3, 5, 2, 4});
    // Behind the later of two locks that were told before it, not behind one that was told after it.
    CHECK(places({entry(K::lock, a), entry(K::lock, b), entry(K::lock, a), entry(K::lock, b),
                  entry(K::ran, a, "?"), entry(K::lock, a)}) == std::vector<std::size_t>{0, 1, 2, 4, 3, 5});
    // Behind the very lock by which it ran, where another was told meanwhile.
    std::vector<LogEntry> log{entry(K::lock, a), entry(K::lock, b), entry(K::lock, a),
                              entry(K::ran, a, "first")};
    log[0].time = "first";
    CHECK(places(log) == std::vector<std::size_t>{0, 3, 1, 2});
    // Where no lock is left it stands where it was told.
    CHECK(places({entry(K::test, a), entry(K::lock, b), entry(K::ran, a, "?")}) ==
          std::vector<std::size_t>{0, 1, 2});
}
