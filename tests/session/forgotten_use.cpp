// What a machine was used for counts as a use of it, also where it is no longer planned: the joint that was set there is torn down.
#include <doctest/doctest.h>

#include <algorithm>

#include "job/work_order.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"

using namespace kw;
using tests::now, tests::setup_of, tests::side_dado;

namespace {

const std::string back_dado = "back dado";

// The side dado is locked, and one of its ends has run.
Session begun(Json job = tests::sample_json()) {
    Session session = open_session(std::move(job), {}, now);
    REQUIRE(session.problems.empty());
    const std::string id = setup_of(session, side_dado);
    session = tests::made_ready(session, id, {0}, now);
    if (!session.work->standing.groups.contains(
            session.work->plan.group_with_id(session.work->plan.setup_with_id(id)->group)->key))
        session = tests::locked_unmoved(session, setup_of(session, side_dado));
    return tests::ran(session, id, {0}, now);
}

Session changed(const Session& before, const std::string& pointer, const Json& value) {
    Session session = apply(before, SetField{pointer, value}, now);
    INFO(session.refused);
    REQUIRE(session.refused.empty());
    REQUIRE(session.problems.empty());
    return session;
}

bool is_torn_down(const Session& session, const std::string& work) {
    return is_torn_down(*session.work, *session.work->plan.setup_with_id(setup_of(session, work)));
}

Json without_machines(Json document) {
    for (Json& entry : document["log"]) entry.erase("machine");
    return document;
}

}  // namespace

TEST_CASE(
    "what was done on a machine in between is no longer planned: the joint before it is torn down all the "
    "same") {
    Session session = begun();
    REQUIRE_FALSE(is_torn_down(session, side_dado));
    session = tests::locked_unmoved(session, setup_of(session, back_dado));
    REQUIRE(is_torn_down(session, side_dado));
    // The saw stands set for a back that was thought of otherwise.
    session = changed(session, "/drawers/0/back/setback", "1 1/2");
    CHECK(session.work->standing.forgotten > 0);
    CHECK(is_torn_down(session, side_dado));
    CHECK_FALSE(session.work->rest.stands.contains("saw"));
    // Nor is it known to stand where the log does not say what it was done on.
    const Session untold = open_session(without_machines(session.document), {}, now);
    CHECK(is_torn_down(untold, side_dado));
    CHECK_FALSE(untold.work->rest.stands.contains("saw"));
}

TEST_CASE("what was done elsewhere and is no longer planned leaves a joint as it stands") {
    Session session = begun();
    session.document["log"].push_back(Json{
        {"kind", "ran"}, {"time", now}, {"key", "crosscut"}, {"machine", "chop"}, {"part", "gone.1.back"}});
    session = open_session(session.document, {}, now);
    REQUIRE(session.work->standing.forgotten == 1);
    CHECK_FALSE(is_torn_down(session, side_dado));
    CHECK(session.work->rest.stands.at("saw") == setup_of(session, side_dado));
}

TEST_CASE("a part that is gone from the job was cut by the joint as it stood: it stands so still") {
    Session session = begun();
    const std::string id = setup_of(session, side_dado);
    const auto its = tests::passes_of(session, id, "seeds.2.side_left");
    session = tests::ran(session, id, its, now);
    session = changed(session, "/drawers/0/count", 1);
    CHECK(session.work->standing.forgotten > 0);
    CHECK_FALSE(is_torn_down(session, side_dado));
    CHECK(session.work->rest.stands.at("saw") == setup_of(session, side_dado));
}

TEST_CASE("a part that is gone, cut after the saw did something else, leaves that torn down") {
    Session session = begun();
    session = tests::locked_unmoved(session, setup_of(session, back_dado));
    const std::string id = setup_of(session, back_dado);
    const auto its = tests::passes_of(session, id, "seeds.2.side_left");
    session = tests::ran(session, id, its, now);
    session = changed(session, "/drawers/0/count", 1);
    CHECK(is_torn_down(session, side_dado));
    CHECK_FALSE(is_torn_down(session, back_dado));
}

TEST_CASE(
    "crosscut on the saw while the stop saw was lent out: the joint that stood on it is torn down for good") {
    Session session = begun();
    Json lent = session.document;
    for (Json& machine : lent["machines"])
        if (machine["name"] == "chop") machine["away"] = true;
    session = open_session(lent, {}, now);
    const std::string crosscut = setup_of(session, "crosscut to length: backs");
    REQUIRE(session.work->plan.setup_with_id(crosscut)->machine == "saw");
    session = tests::ran(session, crosscut, tests::passes_of(session, crosscut, "seeds.1.back"), now);
    REQUIRE(is_torn_down(session, side_dado));
    Json back_again = session.document;
    for (Json& machine : back_again["machines"]) machine.erase("away");
    session = open_session(back_again, {}, now);
    REQUIRE(session.work->plan.setup_with_id(setup_of(session, "crosscut to length: backs"))->machine ==
            "chop");
    CHECK(is_torn_down(session, side_dado));
    CHECK_FALSE(session.work->rest.stands.contains("saw"));
}

TEST_CASE("sizes that were cut on a machine that is lent out since are cut, and stay steps of the work") {
    Session session = open_session(tests::sample_json(), {}, now);
    const std::string work = "crosscut to length: backs", id = setup_of(session, work);
    session = tests::ran(session, id, tests::passes_of(session, id), now);
    Json lent = session.document;
    for (Json& machine : lent["machines"])
        if (machine["name"] == "chop") machine["away"] = true;
    session = open_session(lent, {}, now);
    const auto& rest = session.work->rest;
    const std::string there = setup_of(session, work);
    REQUIRE(session.work->plan.setup_with_id(there)->machine == "saw");
    CHECK(rest.begun);
    CHECK(std::find(rest.done.begin(), rest.done.end(), there) != rest.done.end());
    CHECK(step_of(session.work->plan, there) < session.work->plan.sequence.size());
    CHECK_FALSE(rest.stands.contains("chop"));
}

TEST_CASE(
    "a last pass of a part that is gone leaves the fence where it is: the saw stands as for that pass") {
    Session session = open_session(tests::sample_json(), {}, now);
    const std::string last = "back dado: side dado, pass 2";
    const std::string first_id = setup_of(session, "back dado: side dado, pass 1"),
                      last_id = setup_of(session, last);
    session = tests::ran(session, first_id, tests::passes_of(session, first_id), now);
    session = tests::ran(session, last_id, tests::passes_of(session, last_id, "seeds.2.side_left"), now);
    session = changed(session, "/drawers/0/count", 1);
    CHECK(session.work->rest.stands.at("saw") == setup_of(session, last));
}

TEST_CASE("a log that does not say its machines is taken by what its keys name") {
    LogEntry entry;
    Shop shop;
    for (const char* name : {"saw", "router", "chop"}) {
        shop.machines.emplace_back();
        shop.machines.back().name = name;
    }
    entry.key = "groove; router, bit 6.35; fence 10, height 5 | groove";
    CHECK(may_have_been_done_on(entry, shop) == std::vector<std::string>{"router"});
    entry.key = "crosscut";
    CHECK(may_have_been_done_on(entry, shop).size() == 3);
    entry.machine = "chop";
    CHECK(may_have_been_done_on(entry, shop) == std::vector<std::string>{"chop"});
}

TEST_CASE("the log says on which machine each thing was done") {
    Session session = begun();
    session = tests::locked_unmoved(session, setup_of(session, back_dado));
    TestCut cut;
    cut.setup = setup_of(session, "groove");
    cut.felt = "slides";
    session = tests::made_ready(session, cut.setup, {}, now);
    session = apply(session, SaveTest{cut}, now);
    INFO(session.refused);
    REQUIRE(session.refused.empty());
    for (const LogEntry& entry : session.work->job.log) {
        const bool at_the_stop = entry.key == "crosscut";
        CHECK(entry.machine == (at_the_stop ? "chop" : "saw"));
    }
}
