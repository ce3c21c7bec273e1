// A search for the order that is ended early: what was found stands, and is honest about what it is.
#include <algorithm>

#include "job/precedence.h"
#include "made_ready.h"
#include "session/settled.h"
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

TEST_CASE("what a search was ended with is another document's when its work is taken over") {
    const Json job = ways_job::demo(2);
    Json wider = job;
    wider["drawers"][0]["opening"]["width"] = "12 3/8";
    Session first = stopped_at(job, 1).session;
    const Session second = stopped_at(wider, 1).session;
    REQUIRE(settled_in(first));
    REQUIRE(settled_in(second));
    // What is typed next can't be made, and what is shown is the last that could.
    Session shown = first;
    shown.document["drawers"][0]["opening"]["width"] = "2 in";
    take_work_of(shown, second);
    CHECK(settled_in(shown) == nullptr);
    shown.document = first.document;  // undone twice
    CHECK(settled_in(shown) == nullptr);
    shown.document = second.document;  // undone once
    CHECK(settled_in(shown) != nullptr);
}

TEST_CASE("what is stopped is worked out to its end when what it depends on is changed") {
    const Json job = ways_job::demo(2);
    const Session stopped = stopped_at(job, 1).session;
    const SetField wider{"/drawers/0/opening/width", "12 3/8"};
    const Session changed = apply(stopped, wider, now), fresh = apply(ways_job::opened(job), wider, now);
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

TEST_CASE("what was found when a search was stopped stands until something changes on which it depends") {
    const Json job = ways_job::demo(2);
    const Stopped stopped = stopped_at(job, 3);
    const Session& start = stopped.session;
    REQUIRE_FALSE(start.work->plan.proved);
    int asked = 0;
    const Watch counts = [&](std::int64_t, std::int64_t) {
        ++asked;
        return SearchMore::yes;
    };
    // Work that is told, and a drawer that is measured, change nothing in it.
    const std::string first = start.work->plan.sequence.front();
    Session told = apply(start, MarkRun{first, {0}, true}, now, counts);
    REQUIRE(told.refused.empty());
    told = apply(told, SetField{"/drawers/0/assembled/1/from_front_left", "20"}, now, counts);
    told = apply(told, SetField{"/name", "Shed"}, now, counts);
    REQUIRE(told.problems.empty());
    CHECK(asked == 0);
    CHECK(told.work->plan.sequence == start.work->plan.sequence);
    CHECK(told.work->plan.seconds == start.work->plan.seconds);
    CHECK(told.work->plan.lower_bound_seconds == start.work->plan.lower_bound_seconds);
    CHECK(told.work->design.groups.size() == start.work->design.groups.size());
    CHECK(told.work->reasons.size() == start.work->reasons.size());
    is_a_plan(*told.work);
    // A drawer that is another is searched to the end, and so is everything after it.
    const Session wider = apply(told, SetField{"/drawers/0/opening/width", "12 3/8"}, now, counts);
    REQUIRE(wider.problems.empty());
    CHECK(asked > 0);
    Json same = job;
    same["drawers"][0]["opening"]["width"] = "12 3/8";
    CHECK(wider.work->plan.seconds == ways_job::opened(same).work->plan.seconds);
    asked = 0;
    apply(wider, MarkRun{wider.work->plan.sequence.back(), {0}, false}, now, counts);
    apply(wider, SetField{"/name", "Barn"}, now, counts);
    CHECK(asked > 0);
}

}  // namespace kw
