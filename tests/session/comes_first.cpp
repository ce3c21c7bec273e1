// What can have gone through, and what can't yet. The orders are the plan's own; the cases are common practice, no source.
#include <doctest/doctest.h>

#include <random>

#include "effort.h"
#include "sample_job.h"
#include "session/made_ready.h"

using namespace kw;

namespace {

const std::string now = "2026-03-01T10:00:00Z";

Session opened(Json job) {
    Session session = open_session(std::move(job), {}, now);
    REQUIRE(session.work);
    REQUIRE(session.problems.empty());
    return session;
}

Json demo() {
    std::ifstream in(KW_ASSET_DIR "/demo.json", std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return parse_json(text.str()).value();
}

std::string setup_of(const Session& session, const std::string& work, const std::string& part) {
    for (const Setup& setup : session.work->plan.setups)
        if (setup.work.rfind(work, 0) == 0 && !tests::passes_of(session, setup.id, part).empty())
            return setup.id;
    FAIL("no setup of ", work, " for ", part);
    return {};
}

Session told(const Session& session, const std::string& id, const std::string& part) {
    return apply(session, MarkRun{id, tests::passes_of(session, id, part), true}, now);
}

Session taken(const Session& session, const std::string& id, const std::string& part) {
    Session after = told(session, id, part);
    REQUIRE(after.refused == "");
    return after;
}

Session locked(const Session& session, const std::string& id) {
    TestCut lock;
    lock.setup = id;
    Session after = apply(session, LockGroup{lock}, now);
    REQUIRE(after.refused == "");
    return after;
}

void refused(const Session& before, const Session& after, const std::string& why) {
    CHECK(after.refused == why);
    CHECK(after.refused_field == "setup");
    CHECK(after.document == before.document);
}

const std::string left = "seeds.1.side_left", front = "seeds.1.front";

}  // namespace

TEST_CASE("no part has gone through a joint's setup that is not locked, tested or not") {
    Session session = opened(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado", left);
    session = taken(session, setup_of(session, "rip", left), left);
    session = taken(session, setup_of(session, "crosscut", left), left);
    const std::string why =
        "`" + left + "` can't have gone through " + dado +
        " (locking rabbet: side dado) yet: it is not locked; cut the joint in scrap, test "
        "and lock " +
        dado + " first";
    refused(session, told(session, dado, left), why);
    TestCut cut;
    cut.setup = dado;
    cut.felt = "hand tight";
    const Session tested = apply(session, SaveTest{cut}, now);
    REQUIRE(tested.refused == "");
    refused(tested, told(tested, dado, left), why);
    CHECK(told(locked(session, dado), dado, left).refused == "");
}

TEST_CASE("a part is ripped, then crosscut, then jointed; what other parts have done is no matter") {
    Session session = opened(tests::sample_json());
    const std::string rip = setup_of(session, "rip", left), crosscut = setup_of(session, "crosscut", left),
                      dado = setup_of(session, "locking rabbet: side dado", left);
    session = locked(session, dado);
    const auto why = [&](const std::string& setup, const std::string& work, const std::string& first,
                         const std::string& words) {
        return "`" + left + "` can't have gone through " + setup + " (" + work + ") yet: first comes " +
               first + " (" + words + "); run it through " + first + " first";
    };
    const std::string rips = session.work->plan.setup_with_id(rip)->work;
    refused(session, told(session, crosscut, left), why(crosscut, "crosscut to length: sides", rip, rips));
    refused(session, told(session, dado, left), why(dado, "locking rabbet: side dado", rip, rips));
    session = taken(session, rip, left);
    refused(session, told(session, dado, left),
            why(dado, "locking rabbet: side dado", crosscut, "crosscut to length: sides"));
    session = taken(session, crosscut, left);
    session = taken(locked(session, dado), dado, left);  // on the saw that has ripped since
    // All of the setup can't have gone through: the other sides have no size.
    CHECK(apply(session, MarkRun{dado, tests::passes_of(session, dado), true}, now).refused != "");
}

TEST_CASE("a front is cut to length when the joint that sets its length is locked") {
    Session session = opened(tests::sample_json());
    const std::string crosscut = setup_of(session, "crosscut", front),
                      dado = setup_of(session, "locking rabbet: side dado", left);
    session = taken(session, setup_of(session, "rip", front), front);
    refused(session, told(session, crosscut, front),
            "`" + front + "` can't have gone through " + crosscut +
                " (crosscut to length: fronts) yet: its size follows from " + dado +
                " (locking rabbet: side dado), which is not locked; test and lock " + dado + " first");
    CHECK(told(locked(session, dado), crosscut, front).refused == "");
}

TEST_CASE("a bottom is cut when the joints of its own drawer are, whatever the other drawer has done") {
    Session session = opened(tests::sample_json());
    const std::string bottom = "seeds.1.bottom", rip = setup_of(session, "rip", bottom);
    CHECK(told(session, rip, bottom).refused.find("a bottom is cut after the dry fit") != std::string::npos);
    session = tests::made_ready(session, rip, tests::passes_of(session, rip, bottom), now);
    session = taken(session, rip, bottom);
    for (const Ran& ran : session.work->standing.ran) CHECK(ran.part.rfind("seeds.1.", 0) == 0);
    const Session other = told(session, rip, "seeds.2.bottom");
    CHECK(other.refused.find("`seeds.2.bottom` can't have gone through") == 0);
}

TEST_CASE("a part that was lost is ripped again before it goes through anything else") {
    Session session = opened(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado", left);
    session = tests::ran(session, dado, tests::passes_of(session, dado), now);
    session = apply(session, MarkLost{left}, now);
    CHECK(told(session, setup_of(session, "crosscut", left), left).refused.find("first comes") !=
          std::string::npos);
    CHECK(told(session, dado, left).refused.find("first comes") != std::string::npos);
    session = tests::made_ready(session, dado, tests::passes_of(session, dado, left), now);
    CHECK(told(session, dado, left).refused == "");
}

TEST_CASE("what was ticked by mistake is unticked, whatever comes before it") {
    Session session = opened(tests::sample_json());
    const std::string rip = setup_of(session, "rip", left), crosscut = setup_of(session, "crosscut", left);
    session = taken(taken(session, rip, left), crosscut, left);
    session = apply(session, MarkRun{rip, tests::passes_of(session, rip, left), false}, now);
    CHECK(session.refused == "");
    CHECK(apply(session, MarkRun{crosscut, tests::passes_of(session, crosscut, left), false}, now).refused ==
          "");
}

TEST_CASE("whatever is lost and pinned on the way, the next step of what is left can always be told") {
    for (const unsigned seed : {1U, 2U, 3U, 4U}) {
        std::mt19937 dice(seed);
        const auto upto = [&](std::size_t most) { return std::size_t(dice()) % (most + 1); };
        Session session = opened(tests::sample_json());
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
    Json job = demo();
    for (Json& cutter : job["cutters"]) {
        cutter.erase("spare_chippers");
        cutter.erase("spare_shims");
    }
    Session session = opened(job);
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
