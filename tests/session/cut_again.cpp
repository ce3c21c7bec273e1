// Parts that are too large, or whose joint takes more wood by now, go through once more: that is work left to do like any other.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"

using namespace kw;
using tests::now, tests::opened, tests::passes_of, tests::setup_of;

namespace {

const std::string front = "seeds.1.front", left_one = "seeds.1.side_left";

// As it is written where the part was cut that much too long.
Session cut_too_long(const Session& session, const std::string& part, Length by) {
    Json document = session.document;
    for (Json& entry : document["log"]) {
        if (entry.value("key", "") != "crosscut" || entry.value("part", "") != part) continue;
        const Length size = session.work->plan.part_with_id(part)->size.length + by;
        entry["readings"]["size"] = std::to_string(size.mm()) + " mm";
    }
    return opened(document);
}

// All that the plan has up to and with this setup.
Session done_to(const Session& begun, const std::string& id) {
    Session session = begun;  // not moved: what is asked of it beside is read in any order
    const auto sequence = session.work->plan.sequence;
    for (const std::string& step : sequence) {
        session = tests::ran(std::move(session), step, passes_of(session, step), now);
        if (step == id) break;
    }
    return session;
}

// The setups and ends that are left of a part, in the order of the work.
std::vector<std::string> left_of(const Session& session, const std::string& part) {
    std::vector<std::string> left;
    for (const RestStep& step : session.work->rest.steps)
        for (const std::size_t i : step.open) {
            const Setup& setup = *session.work->plan.setup_with_id(step.setup);
            if (setup.passes[i].part == part)
                left.push_back(setup.work + ", " + std::string(name_of(setup.passes[i].reference)));
        }
    return left;
}

bool is_told_to_cut_again(const Session& session, const std::string& part) {
    return std::any_of(session.work->affected.begin(), session.work->affected.end(),
                       [&](const Affected& a) { return a.part == part && a.fate == Fate::recut; });
}

// The first that is said of it.
std::string why(const Session& session, const std::string& part) {
    for (const Affected& one : session.work->affected)
        if (one.part == part) return one.what.text(session.work->job.locale);
    return {};
}

}  // namespace

TEST_CASE("what is to be cut again, and what is too short now, names the test cut that changed it") {
    Session session = opened(tests::sample_json());
    const std::string dado = setup_of(session, tests::side_dado);
    session = done_to(session, session.work->plan.sequence.back());
    CHECK(why(session, left_one).empty());
    // The blade stands too low: the fit is tight, and all of it is to be cut deeper.
    session = tests::tested(session, dado,
                            {tests::mm("dado_depth", 5.5), tests::mm("fit", -0.35), tests::mm("lip", 5.85),
                             tests::mm("face_step", 0.35), tests::mm("dado_width", 6.35)});
    session = tests::locked(session, dado);
    const Plan& plan = session.work->plan;
    const std::string key = plan.group_with_id(plan.setup_with_id(dado)->group)->key;
    const int tests = session.work->standing.groups.at(key).tests;
    REQUIRE(tests > 0);
    const std::string by = ". Changed by: locking rabbet, test cut ";
    CHECK(why(session, "seeds.1.bottom").find(": take off ") != std::string::npos);
    CHECK(why(session, "seeds.1.bottom").ends_with(by + std::to_string(tests)));
    // Told as lost with the lock.
    for (const std::string& part : {front, left_one}) {
        CHECK(why(session, part).find("lost, and to be made again") == 0);
        CHECK(why(session, part).ends_with(". Changed by: locking rabbet, locked anew"));
    }
    // What the maker keeps all the same is wrong by what the test has changed.
    Json document = session.document;
    std::erase_if(document["log"].get_ref<Json::array_t&>(),
                  [](const Json& entry) { return entry.value("kind", "") == "lost"; });
    const Session kept = opened(document);
    int wrong = 0;
    for (const Affected& one : kept.work->affected) {
        const std::string what = one.what.text(kept.work->job.locale);
        CHECK_MESSAGE(what.ends_with(by + std::to_string(tests)), what);
        wrong += one.part == front || one.part == left_one;
    }
    CHECK(wrong >= 2);
}

TEST_CASE("a front that was cut too long is crosscut again, before its tongues") {
    Session session = opened(tests::sample_json());
    session = done_to(session, setup_of(session, "crosscut to length: fronts"));
    const auto before = left_of(session, front);
    session = cut_too_long(session, front, Length::inches(1, 32));
    const auto left = left_of(session, front);
    REQUIRE(left.size() == before.size() + 1);
    CHECK(left.front() == "crosscut to length: fronts, left end");
    CHECK(is_told_to_cut_again(session, front));
    CHECK(session.work->rest.steps.front().open.size() == 1);

    const Session cut = tests::ran(session, session.work->rest.steps.front().setup,
                                   session.work->rest.steps.front().open, now);
    CHECK(cut.refused.empty());
    CHECK(left_of(cut, front) == before);
    CHECK_FALSE(is_told_to_cut_again(cut, front));
}

TEST_CASE("where the tongues are cut already the one at the end that comes off is cut again") {
    Session session = opened(tests::sample_json());
    session = done_to(session, setup_of(session, "locking rabbet: rabbet"));
    const auto before = left_of(session, front);
    session = cut_too_long(session, front, Length::inches(1, 32));
    const auto left = left_of(session, front);
    REQUIRE(left.size() == before.size() + 2);
    CHECK(left[0] == "crosscut to length: fronts, left end");
    CHECK(std::count(left.begin(), left.end(), "locking rabbet: rabbet, right end") == 1);
    CHECK(std::count(left.begin(), left.end(), "locking rabbet: rabbet, left end") == 0);
    // Once it is to length that end has no tongue: it is still to be cut.
    const RestStep crosscut = session.work->rest.steps.front();
    session = tests::ran(std::move(session), crosscut.setup, crosscut.open, now);
    const auto then = left_of(session, front);
    CHECK(then.size() == before.size() + 1);
    CHECK(std::count(then.begin(), then.end(), "locking rabbet: rabbet, right end") == 1);
}

TEST_CASE("a side that is too long where its dados are cut is told of, and not sawn off at a dado") {
    Session session = opened(tests::sample_json());
    session = done_to(session, session.work->plan.sequence.back());
    session = cut_too_long(session, left_one, Length::inches(1, 32));
    CHECK(left_of(session, left_one).empty());
    const auto told = std::find_if(session.work->affected.begin(), session.work->affected.end(),
                                   [](const Affected& one) { return one.part == left_one; });
    REQUIRE(told != session.work->affected.end());
    CHECK(told->what.text(session.work->job.locale).find("saw nothing off") != std::string::npos);
}

TEST_CASE(
    "sides that ran before the blade was raised are open again once the joint is locked, and then fine") {
    Session session = opened(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    session = tests::ran(std::move(session), dado, passes_of(session, dado), now);
    REQUIRE(left_of(session, left_one).size() > 0);
    const auto without = left_of(session, left_one);
    TestCut lock = tests::test_cut(dado, {});
    lock.moved = std::vector<NamedLength>{tests::mm("height", 0.4)};
    session = apply(session, LockGroup{lock}, now);
    REQUIRE(session.refused.empty());
    CHECK(is_told_to_cut_again(session, left_one));
    CHECK(why(session, left_one) ==
          "front end: run it again, the new cut takes it all. Changed by: locking rabbet, locked anew");
    REQUIRE(left_of(session, left_one).size() == without.size() + 1);

    session = tests::ran(std::move(session), dado, passes_of(session, dado, left_one), now);
    CHECK(session.refused.empty());
    CHECK(left_of(session, left_one) == without);
    CHECK_FALSE(is_told_to_cut_again(session, left_one));
}

// A 1/2 in dado by a 1/4 in stack in two passes: both are too shallow when the blade is raised.
TEST_CASE(
    "of a slot of two passes each is cut again that is too shallow, and the second is not forgotten with the "
    "first") {
    Json job = tests::sample_json();
    job["drawers"][0]["back"]["joint"] = "dado";
    Session session = opened(job);
    const std::string first = setup_of(session, "back dado: side dado, pass 1");
    const std::string group = session.work->plan.setup_with_id(first)->group;
    std::vector<std::string> passes;
    for (const Setup& setup : session.work->plan.setups)
        if (setup.group == group) passes.push_back(setup.id);
    REQUIRE(passes.size() >= 2);
    for (const std::string& pass : passes)
        session = tests::ran(std::move(session), pass, passes_of(session, pass), now);
    const auto before = left_of(session, left_one);
    TestCut lock = tests::test_cut(first, {});
    lock.moved = std::vector<NamedLength>{tests::mm("height", 0.4)};
    session = apply(session, LockGroup{lock}, now);
    REQUIRE(session.refused.empty());
    CHECK(left_of(session, left_one).size() == before.size() + passes.size());
    session = tests::ran(std::move(session), first, passes_of(session, first, left_one), now);
    CHECK(left_of(session, left_one).size() == before.size() + passes.size() - 1);
    for (std::size_t i = 1; i < passes.size(); ++i)
        session = tests::ran(std::move(session), passes[i], passes_of(session, passes[i], left_one), now);
    CHECK(left_of(session, left_one) == before);
}

TEST_CASE(
    "a front that has come out too short goes through nothing more before it is told lost, or its size put "
    "back") {
    Session session = opened(tests::sample_json());
    session = done_to(session, setup_of(session, "crosscut to length: fronts"));
    const Session shrunk = cut_too_long(session, front, -Length::inches(1, 32));
    const std::string rabbet = setup_of(shrunk, "locking rabbet: rabbet");
    const auto passes = passes_of(shrunk, rabbet, front);
    const Session refused = apply(shrunk, MarkRun{rabbet, passes, true}, now);
    CHECK(refused.refused.find("too short by 0.031 in") != std::string::npos);
    CHECK(refused.refused.find("mark it as spoilt, or put the size back") != std::string::npos);
    CHECK(refused.refused_part == front);
    CHECK(refused.document == shrunk.document);
    // Other fronts go on.
    CHECK(apply(shrunk, MarkRun{rabbet, passes_of(shrunk, rabbet, "seeds.2.front"), true}, now)
              .refused.empty());
    const Session lost = apply(refused, MarkLost{front}, now);
    CHECK(lost.refused_part.empty());
    CHECK(left_of(lost, front).front() != left_of(shrunk, front).front());
    CHECK(apply(session, MarkRun{rabbet, passes, true}, now).refused.empty());
}

TEST_CASE(
    "a front whose tongues are cut stays as long as it is, however long the next one's tongues come out") {
    Session session = opened(tests::sample_json());
    const std::string tongues = setup_of(session, "locking rabbet: rabbet");
    session = done_to(session, tongues);
    CHECK(session.work->affected.empty());
    const auto length = [&] { return session.work->plan.part_with_id(front)->size.length; };
    const Length before = length();
    // The saw was used for the groove; then the fence is set again, farther out by 0.15 mm, and one front is made anew.
    session = tests::locked_unmoved(session, setup_of(session, "groove"));
    session = apply(session, MarkLost{"seeds.2.front", false}, now);
    const Group& group = *session.work->plan.group_with_id(session.work->plan.setup_with_id(tongues)->group);
    const double reach_mm = far_at_end(group.designed).mm() + 0.15;
    TestCut cut = tests::test_cut(
        tongues, {tests::mm("tongue_length", reach_mm), tests::mm("lip", group.designed.fence.mm() + 0.15)});
    cut.fresh_end = true;
    session = apply(session, SaveTest{cut}, now);
    REQUIRE(session.refused == "");
    session = tests::locked_unmoved(session, tongues);
    CHECK((length() - before).mm() > 0.2);
    for (const Affected& one : session.work->affected) CHECK(one.part != front);
}
