// A joint that can be cut in more than one way is cut in the way with which all of the work takes the least time.
#include <doctest/doctest.h>

#include <algorithm>
#include <tuple>

#include "effort.h"
#include "session/made_ready.h"
#include "session/ways_job.h"

using namespace kw;
using namespace ways_job;

namespace {

// Locked where it is tested, and all its parts run; before it what must be.
Session through(Session session, const Setup& setup) {
    if (setup.test_cut) {
        TestCut lock;
        lock.setup = setup.id;
        session = apply(session, LockGroup{lock}, now);
    }
    const auto all = tests::passes_of(session, setup.id);
    return tests::ran(std::move(session), setup.id, all, now);
}

// The groove's, of all drawers.
const WayReason& reason_for_both(const Work& work) {
    const auto found = std::find_if(work.reasons.begin(), work.reasons.end(),
                                    [](const WayReason& one) { return one.label == "groove"; });
    REQUIRE(found != work.reasons.end());
    return *found;
}

}  // namespace

TEST_CASE("two drawers keep the stack for the back's dado and take three passes; twelve change it") {
    const Session two = opened(demo(2)), twelve = opened(demo(12));
    const ChosenJoint& for_two = drawer_named(*two.work, "hand tools").back;
    const ChosenJoint& for_twelve = drawer_named(*twelve.work, "hand tools").back;
    CHECK_FALSE(is_made_up(for_two));
    CHECK(say_way(two.work->job, for_two) == "3 passes with quarter stack");
    CHECK(is_made_up(for_twelve));
    CHECK(say_way(twelve.work->job, for_twelve).rfind("1 pass with quarter stack made up to 0.512 in", 0) ==
          0);
    // The setups follow: three, and one.
    const auto passes = [](const Work& work) {
        const DrawerDesign& drawer = drawer_named(work, "hand tools");
        const std::string group = work.design.group_with_key(drawer.back_keys.slot)->id;
        return std::count_if(work.plan.setups.begin(), work.plan.setups.end(),
                             [&](const Setup& setup) { return setup.group == group; });
    };
    CHECK(passes(*two.work) == 3);
    CHECK(passes(*twelve.work) == 1);
}

TEST_CASE("who owns shims and no chipper has a slot a little wider than the stack cut in one pass") {
    const Session session = opened(without_chippers(demo(6)));
    const ChosenJoint& groove = drawer_named(*session.work, "twine").bottom;
    CHECK(say_way(session.work->job, groove) ==
          "1 pass with quarter stack made up to 0.258 in (shims 0.008 in)");
    for (const Setup& setup : session.work->plan.setups) CHECK_FALSE(setup.work.rfind("groove pass", 0) == 0);
    // A dado of half an inch is more than shims are put on for.
    CHECK(say_way(session.work->job, drawer_named(*session.work, "hand tools").back) ==
          "3 passes with quarter stack");
}

TEST_CASE("with more ways to choose from, the work never takes longer") {
    const std::vector<int> counts{2, 1, 5, 12, 20};
    for (int i = 0; i < tests::cases(5); ++i) {
        const int count = counts[static_cast<std::size_t>(i)];
        CAPTURE(count);
        const Session free = opened(demo(count)), bound = opened(without_pieces(demo(count)));
        const Session shims = opened(without_chippers(demo(count)));
        CHECK(free.work->plan.seconds <= shims.work->plan.seconds);
        CHECK(shims.work->plan.seconds <= bound.work->plan.seconds);
        CHECK(free.work->plan.lower_bound_seconds <= free.work->plan.seconds);
    }
}

TEST_CASE(
    "why a joint is cut as it is: what each way adds, the one that is taken first, and none adds less") {
    const Session session = opened(demo(2));
    REQUIRE(session.work->reasons.size() == session.work->design.alternatives.size());
    for (const WayReason& reason : session.work->reasons) {
        CAPTURE(say_reason(session.work->job, reason));
        REQUIRE(reason.ways.size() == 2);
        CHECK(reason.ways[0].picked);
        CHECK_FALSE(reason.ways[1].picked);
        CHECK(reason.ways[0].seconds <= reason.ways[1].seconds);
        CHECK(reason.ways[0].seconds > 0);
    }
    const WayReason& back = reason_for(*session.work, "back dado", "hand tools");
    CHECK(say_reason(session.work->job, back)
              .rfind("back dado (hand tools): 3 passes with quarter stack: ", 0) == 0);
    // A stack that is changed for nothing else costs at least that change.
    CHECK(back.ways[1].seconds >= session.work->job.times.cutter_s);
}

TEST_CASE("a joint that was begun stays with its way, whatever the batch grows to") {
    Session session = opened(demo(2));
    const Group* dado =
        session.work->design.group_with_key(drawer_named(*session.work, "hand tools").back_keys.slot);
    TestCut lock;
    for (const Setup& setup : session.work->plan.setups)
        if (setup.group == dado->id && lock.setup.empty()) lock.setup = setup.id;
    session = apply(session, LockGroup{lock}, now);
    REQUIRE(session.refused.empty());
    Json grown = session.document;
    for (Json& drawer : grown["drawers"]) drawer["count"] = 12;
    const Session after = opened(grown);
    CHECK_FALSE(is_made_up(drawer_named(*after.work, "hand tools").back));
    CHECK(after.work->standing.groups.size() == 1);
}

TEST_CASE("work that is done does not change how the rest is cut") {
    Session session = opened(demo(2));
    const auto cutters = [](const Work& work) {
        std::vector<std::string> all;
        for (const Alternative& one : work.design.alternatives)
            all.push_back(one.id + " " + std::to_string(one.picked));
        return all;
    };
    const auto before = cutters(*session.work);
    for (int step = 0; step < tests::cases(12); ++step) {
        const Setup setup = *session.work->plan.setup_with_id(session.work->rest.steps.front().setup);
        session = through(std::move(session), setup);
        CHECK(cutters(*session.work) == before);
    }
}

TEST_CASE("a cutter that the maker names is taken, and there is nothing to choose") {
    Json job = demo(12);
    for (Json& drawer : job["drawers"])
        for (const char* place : {"front", "back", "bottom"}) drawer[place]["cutter"] = "quarter stack";
    const Session session = opened(job);
    CHECK(session.work->design.alternatives.empty());
    CHECK_FALSE(is_made_up(drawer_named(*session.work, "hand tools").back));
}

TEST_CASE("a back cut in the least time: a dado, or a tongue in a narrower one, whichever takes less") {
    // Where a pass takes long and a test cut nothing, a second pass over many sides costs more than rabbeting the backs.
    const auto job_with = [](int pass_s, int test_s, int count) {
        Json job = without_pieces(demo(count));
        job["drawers"] = Json::array({job["drawers"][1]});
        job["drawers"][0]["back"]["joint"] = "least time";
        job["times"] = {{"pass", pass_s}, {"test_cut", test_s}};
        return job;
    };
    const Session few = opened(job_with(20, 300, 1)), many = opened(job_with(60, 0, 30));
    CHECK(drawer_named(*few.work, "hand tools").back.joint.kind == "dado");
    CHECK(drawer_named(*many.work, "hand tools").back.joint.kind == "tongue and dado");
    // No part is of another size for it, and the work takes no longer than with either joint named.
    for (const char* joint : {"dado", "tongue and dado"}) {
        Json named = job_with(60, 0, 30);
        named["drawers"][0]["back"]["joint"] = joint;
        const Session other = opened(named);
        CHECK(many.work->plan.seconds <= other.work->plan.seconds);
        REQUIRE(many.work->plan.parts.size() == other.work->plan.parts.size());
        for (std::size_t i = 0; i < other.work->plan.parts.size(); ++i)
            CHECK(many.work->plan.parts[i].size == other.work->plan.parts[i].size);
    }
}

namespace {

// Two kinds of drawer whose grooves are alike, though their sides are not equally thick.
Json two_thicknesses(int first, int second) {
    Json job = demo(1);
    job["stock"].push_back(Json{{"name", "maple 9/16"}, {"thickness", "0.5625"}, {"kind", "plywood"}});
    Json drawer = job["drawers"][1];
    job["drawers"] = Json::array();
    for (const auto& [name, sides, count] :
         {std::tuple{"A", "maple 1/2", first}, std::tuple{"B", "maple 9/16", second}}) {
        drawer["name"] = name;
        drawer["sides"]["stock"] = sides;
        drawer["back"]["depth"] = "1/4";
        drawer["count"] = count;
        job["drawers"].push_back(drawer);
    }
    return job;
}

Session locked_and_run(Session session, const std::string& work) {
    for (const Setup& setup : std::vector<Setup>(session.work->plan.setups)) {
        if (setup.work.rfind(work, 0) != 0) continue;
        session = through(std::move(session), setup);
    }
    return session;
}

std::vector<std::string> bottom_keys(const Work& work) {
    std::vector<std::string> keys;
    for (const DrawerDesign& drawer : work.design.drawers) keys.push_back(drawer.bottom_keys.slot);
    return keys;
}

}  // namespace

TEST_CASE("grooves that are one setup are one choice, though the sides are not equally thick") {
    const Session session = opened(two_thicknesses(6, 6));
    const auto keys = bottom_keys(*session.work);
    CHECK(keys[0] == keys[1]);
    CHECK(reason_for_both(*session.work).drawers == std::vector<std::string>{"A", "B"});
}

TEST_CASE("parts that were cut in one way are not planned to be cut in another when the batch changes") {
    const std::vector<std::pair<int, int>> counts{{1, 20}, {12, 1}};
    for (int which = 0; which < tests::cases(2); ++which) {
        const auto [few, many] = counts[static_cast<std::size_t>(which)];
        Session session = locked_and_run(opened(two_thicknesses(few, few)), "groove");
        const auto before = bottom_keys(*session.work);
        Json changed = session.document;
        for (Json& drawer : changed["drawers"]) drawer["count"] = many;
        // And other drawers before them, which have choices of their own.
        Json other = changed["drawers"][0];
        for (int i = 0; i < 13; ++i) {
            other["name"] = "other " + std::to_string(i);
            other["bottom"]["offset"] = std::to_string(10 + i) + " mm";
            changed["drawers"].insert(changed["drawers"].begin(), other);
        }
        const auto after = bottom_keys(*opened(changed).work);
        CHECK(std::vector<std::string>(after.end() - 2, after.end()) == before);
    }
}

TEST_CASE("a choice that was begun stays, too, when another was begun in a way that is no longer best") {
    // One drawer takes two passes, twenty a stack made up for one; and then there is one again.
    const auto job_with = [](Json job, int first, int second) {
        job["drawers"][0]["count"] = first;
        job["drawers"][1]["count"] = second;
        return job;
    };
    Json job = two_thicknesses(1, 1);
    job["drawers"][1]["bottom"]["offset"] = "1";
    Session session = opened(job);
    const auto of_one = bottom_keys(*session.work);
    TestCut lock;
    for (const Setup& setup : session.work->plan.setups)
        if (session.work->plan.group_with_id(setup.group) &&
            session.work->plan.group_with_id(setup.group)->key == of_one[1] && lock.setup.empty())
            lock.setup = setup.id;
    session = apply(session, LockGroup{lock}, now);
    for (const int count : {20, 1}) {
        session = opened(job_with(session.document, count, count));
        CHECK(bottom_keys(*session.work)[1] == of_one[1]);
    }
}

TEST_CASE("what is left takes as long as its steps, also where shims are changed on the way") {
    Session session = opened(demo(2));
    for (int step = 0; step < tests::cases(20); ++step) {
        std::int64_t sum = 0;
        for (const RestStep& one : session.work->rest.steps) {
            sum += one.walk_s + one.test_s + one.cuts_s;
            for (const RestChange& change : one.changes) sum += change.seconds;
        }
        CHECK(session.work->rest.seconds == sum);
        CHECK(session.work->rest.lower_bound_seconds <= sum);
        if (session.work->rest.steps.empty()) break;
        session = locked_and_run(
            session, session.work->plan.setup_with_id(session.work->rest.steps.front().setup)->work);
    }
}

TEST_CASE("with a stack that could be made up the work takes no longer than without its chippers") {
    // A stack and a bit: of all ways the bit's are the quickest here.
    Json job = demo(1);
    job["machines"].push_back(Json{{"name", "table"}, {"kind", "router table"}});
    job["cutters"].push_back(
        Json{{"name", "quarter bit"}, {"kind", "bit"}, {"machine", "table"}, {"kerf", "1/4"}});
    for (std::size_t d = 0; d < 3; ++d) {
        Json one = job;
        one["drawers"] = Json::array({job["drawers"][d]});
        const Session with = opened(one), bare = opened(without_pieces(one));
        CHECK(with.work->plan.seconds <= bare.work->plan.seconds);
        CHECK(with.work->plan.lower_bound_seconds <= bare.work->plan.seconds);
    }
}
