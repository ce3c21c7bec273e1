// A search for the order that is ended early: what was found stands, and is honest about what it is.
#include <algorithm>

#include "job/precedence.h"
#include "made_ready.h"
#include "ways_job.h"

namespace kw {
namespace {

using tests::now;

struct Stopped {
    Session session;
    int asked = 0;
    std::int64_t best_s = 0, bound_s = 0;  // as told when it was stopped
};

// Says no from the n-th time on.
Stopped stopped_at(const Json& job, int n) {
    Stopped stopped;
    stopped.session =
        worked_out(unworked_session(job, {}, now), [&](std::int64_t best_s, std::int64_t bound_s) {
            if (++stopped.asked < n) return SearchMore::yes;
            if (stopped.asked == n) {
                stopped.best_s = best_s;
                stopped.bound_s = bound_s;
            }
            return SearchMore::no;
        });
    REQUIRE(stopped.session.work);
    return stopped;
}

void is_a_plan(const Work& work) {
    const Plan& plan = work.plan;
    std::vector<std::string> ids;
    for (const Setup& setup : plan.setups) ids.push_back(setup.id);
    CHECK(std::is_permutation(ids.begin(), ids.end(), plan.sequence.begin(), plan.sequence.end()));
    for (const auto& [first, then] : precedence_of(work.design, plan.setups).before) CHECK(first < then);
    CHECK(plan.lower_bound_seconds <= plan.seconds);
    CHECK(plan.proved == (plan.lower_bound_seconds == plan.seconds));
    CHECK(work.rest.lower_bound_seconds <= work.rest.seconds);
}

}  // namespace

TEST_CASE(
    "a search that is stopped leaves a plan no worse than the best that was told, with a bound that holds") {
    const Json job = ways_job::demo(2);
    const Plan best = ways_job::opened(job).work->plan;
    int not_proved = 0;
    for (const int n : {1, 2, 5, 20}) {
        CAPTURE(n);
        const Stopped stopped = stopped_at(job, n);
        const Plan& plan = stopped.session.work->plan;
        REQUIRE(stopped.asked >= n);
        is_a_plan(*stopped.session.work);
        CHECK(plan.seconds <= stopped.best_s);
        CHECK(plan.lower_bound_seconds >= stopped.bound_s);
        CHECK(plan.lower_bound_seconds <= best.seconds);
        not_proved += plan.proved ? 0 : 1;
    }
    CHECK(not_proved > 0);
}

TEST_CASE("a search that is stopped at once asks far less often than one that goes to its end") {
    const Json job = ways_job::demo(2);
    const int to_the_end = stopped_at(job, std::numeric_limits<int>::max()).asked;
    const int at_once = stopped_at(job, 1).asked;
    CAPTURE(to_the_end);
    CAPTURE(at_once);
    CHECK(at_once * 4 < to_the_end);
}

TEST_CASE("what is stopped is worked out to its end when something is changed again") {
    const Json job = ways_job::demo(2);
    const Session stopped = stopped_at(job, 1).session;
    const Session changed = apply(stopped, SetField{"/name", "Shed"}, now),
                  fresh = apply(ways_job::opened(job), SetField{"/name", "Shed"}, now);
    CHECK(changed.work->plan.sequence == fresh.work->plan.sequence);
    CHECK(changed.work->plan.seconds == fresh.work->plan.seconds);
    CHECK(changed.work->plan.lower_bound_seconds == fresh.work->plan.lower_bound_seconds);
}

TEST_CASE("a search for what is left is stopped likewise, and what stands stays standing") {
    Session session = ways_job::opened(ways_job::without_pieces(ways_job::demo(1)));
    const std::string first = session.work->plan.sequence.front();
    session = tests::ran(session, first, tests::passes_of(session, first), now);
    const std::string last = session.work->plan.sequence.back();
    const Session after = apply(session, PinSetup{last.substr(0, last.find('#')), Pinned::first}, now,
                                [](std::int64_t, std::int64_t) { return SearchMore::no; });
    CHECK(after.refused == "");
    is_a_plan(*after.work);
    CHECK(after.work->rest.done.size() == session.work->rest.done.size());
}

}  // namespace kw
