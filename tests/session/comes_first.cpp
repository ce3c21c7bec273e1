// What can have gone through, and what can't yet. The orders are the plan's own; the cases are common practice, no source.
#include <doctest/doctest.h>

#include <random>

#include "effort.h"
#include "sample_job.h"
#include "session/made_ready.h"

using namespace kw;
using tests::locked, tests::now, tests::setup_of;

namespace {

Session opened_faultless(const Json& job) {
    Session session = tests::opened(job);
    REQUIRE(session.problems.empty());
    return session;
}

Session told(const Session& session, const std::string& id, const std::string& part) {
    return apply(session, MarkRun{id, tests::passes_of(session, id, part), true}, now);
}

Session taken(const Session& session, const std::string& id, const std::string& part) {
    Session after = told(session, id, part);
    REQUIRE(after.refused == "");
    return after;
}

void refused(const Session& before, const Session& after, const std::string& why) {
    CHECK(after.refused == why);
    CHECK(after.refused_field == "setup");
    CHECK(after.document == before.document);
}

const std::string left_side = "seeds.1.side_left", first_front = "seeds.1.front";

}  // namespace

TEST_CASE("no part has gone through a joint's setup that is not locked, tested or not") {
    Session session = opened_faultless(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado", left_side);
    session = taken(session, setup_of(session, "rip", left_side), left_side);
    session = taken(session, setup_of(session, "crosscut", left_side), left_side);
    const std::string why =
        "`" + left_side + "` can't have gone through " + dado +
        " (locking rabbet: side dado) yet: it is not locked; cut the joint in scrap, test "
        "and lock " +
        dado + " first";
    refused(session, told(session, dado, left_side), why);
    TestCut cut;
    cut.setup = dado;
    cut.felt = "hand tight";
    const Session tested = apply(session, SaveTest{cut}, now);
    REQUIRE(tested.refused == "");
    refused(tested, told(tested, dado, left_side), why);
    CHECK(told(locked(session, dado), dado, left_side).refused == "");
}

TEST_CASE("a part is ripped, then crosscut, then jointed; what other parts have done is no matter") {
    Session session = opened_faultless(tests::sample_json());
    const std::string rip = setup_of(session, "rip", left_side),
                      crosscut = setup_of(session, "crosscut", left_side),
                      dado = setup_of(session, "locking rabbet: side dado", left_side);
    session = locked(session, dado);
    const auto why = [&](const std::string& setup, const std::string& work, const std::string& first,
                         const std::string& words) {
        return "`" + left_side + "` can't have gone through " + setup + " (" + work + ") yet: first comes " +
               first + " (" + words + "); run it through " + first + " first";
    };
    const std::string rips = session.work->plan.setup_with_id(rip)->work;
    refused(session, told(session, crosscut, left_side),
            why(crosscut, "crosscut to length: sides", rip, rips));
    refused(session, told(session, dado, left_side), why(dado, "locking rabbet: side dado", rip, rips));
    session = taken(session, rip, left_side);
    refused(session, told(session, dado, left_side),
            why(dado, "locking rabbet: side dado", crosscut, "crosscut to length: sides"));
    session = taken(session, crosscut, left_side);
    session = taken(locked(session, dado), dado, left_side);  // on the saw that has ripped since
    // All of the setup can't have gone through: the other sides have no size.
    CHECK(apply(session, MarkRun{dado, tests::passes_of(session, dado), true}, now).refused != "");
}

TEST_CASE("a front is cut to length when the joint that sets its length is locked") {
    Session session = opened_faultless(tests::sample_json());
    const std::string crosscut = setup_of(session, "crosscut", first_front),
                      dado = setup_of(session, "locking rabbet: side dado", left_side);
    session = taken(session, setup_of(session, "rip", first_front), first_front);
    refused(session, told(session, crosscut, first_front),
            "`" + first_front + "` can't have gone through " + crosscut +
                " (crosscut to length: fronts) yet: its size follows from " + dado +
                " (locking rabbet: side dado), which is not locked; test and lock " + dado + " first");
    CHECK(told(locked(session, dado), crosscut, first_front).refused == "");
}

TEST_CASE("a bottom is cut when the joints of its own drawer are, whatever the other drawer has done") {
    Session session = opened_faultless(tests::sample_json());
    const std::string bottom = "seeds.1.bottom", rip = setup_of(session, "rip", bottom);
    CHECK(told(session, rip, bottom).refused.find("a bottom is cut after the dry fit") != std::string::npos);
    session = tests::made_ready(session, rip, tests::passes_of(session, rip, bottom), now);
    session = taken(session, rip, bottom);
    for (const Ran& ran : session.work->standing.ran) CHECK(ran.part.rfind("seeds.1.", 0) == 0);
    const Session other = told(session, rip, "seeds.2.bottom");
    CHECK(other.refused.find("`seeds.2.bottom` can't have gone through") == 0);
}

TEST_CASE("a part that was lost is ripped again before it goes through anything else") {
    Session session = opened_faultless(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado", left_side);
    session = tests::ran(session, dado, tests::passes_of(session, dado), now);
    session = apply(session, MarkLost{left_side}, now);
    CHECK(told(session, setup_of(session, "crosscut", left_side), left_side).refused.find("first comes") !=
          std::string::npos);
    CHECK(told(session, dado, left_side).refused.find("first comes") != std::string::npos);
    session = tests::made_ready(session, dado, tests::passes_of(session, dado, left_side), now);
    CHECK(told(session, dado, left_side).refused == "");
}

TEST_CASE("what was ticked by mistake is unticked, whatever comes before it") {
    Session session = opened_faultless(tests::sample_json());
    const std::string rip = setup_of(session, "rip", left_side),
                      crosscut = setup_of(session, "crosscut", left_side);
    session = taken(taken(session, rip, left_side), crosscut, left_side);
    session = apply(session, MarkRun{rip, tests::passes_of(session, rip, left_side), false}, now);
    CHECK(session.refused == "");
    CHECK(apply(session, MarkRun{crosscut, tests::passes_of(session, crosscut, left_side), false}, now)
              .refused == "");
}

TEST_CASE("whatever is lost and pinned on the way, the next step of what is left can always be told") {
    for (const unsigned seed : {1U, 2U, 3U, 4U}) {
        std::mt19937 dice(seed);
        const auto upto = [&](std::size_t most) { return std::size_t(dice()) % (most + 1); };
        Session session = opened_faultless(tests::sample_json());
        int steps = 0, lost = 0;
        while (!session.work->rest.steps.empty()) {
            const RestStep step = session.work->rest.steps.front();
            const Setup& setup = *session.work->plan.setup_with_id(step.setup);
            CAPTURE(seed);
            CAPTURE(step.step);
            const bool is_ready = is_locked(*session.work, setup) && !is_torn_down(*session.work, setup);
            if (!setup.group.empty() && !is_ready) session = locked(session, step.setup);
            session = apply(session, MarkRun{step.setup, step.open, true}, now);
            REQUIRE(session.refused == "");
            REQUIRE(++steps < 100);
            const auto& parts = session.work->plan.parts;
            if (lost < 4 && upto(4) == 0) {
                ++lost;
                session = apply(session, MarkLost{parts[upto(parts.size() - 1)].id}, now);
            }
            const auto& left_over = session.work->rest.steps;
            if (!left_over.empty() && upto(3) == 0)
                session = apply(session,
                                PinSetup{left_over[upto(left_over.size() - 1)].setup,
                                         upto(1) == 0 ? Pinned::first : Pinned::last},
                                now);
        }
    }
}

TEST_CASE("the demo's plan can be told from its first step to its last") {
    // Without spare chippers and shims it is planned sooner.
    Json job = tests::demo_json();
    for (Json& cutter : job["cutters"]) {
        cutter.erase("spare_chippers");
        cutter.erase("spare_shims");
    }
    Session session = opened_faultless(job);
    // Under sanitizers only its beginning.
    auto sequence = session.work->plan.sequence;
    if (tests::is_sanitized) sequence.resize(4);
    for (const std::string& id : sequence) {
        const Setup& setup = *session.work->plan.setup_with_id(id);
        if (!setup.group.empty() && !is_locked(*session.work, setup)) session = locked(session, id);
        const auto all = tests::passes_of(session, id);
        CHECK_FALSE(what_comes_first(*session.work, *session.work->plan.setup_with_id(id), all));
        session = apply(session, MarkRun{id, all, true}, now);
    }
    CHECK(session.work->rest.steps.empty() == !tests::is_sanitized);
}
