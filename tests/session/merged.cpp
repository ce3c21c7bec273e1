// A job changed in two places at once: what each has done is kept, or it is said where that can't be.
#include "session/merged.h"

#include <doctest/doctest.h>

#include "sample_job.h"
#include "session/made_ready.h"

using namespace kw;
using tests::now;

namespace {

Json lost(const std::string& part, bool together = false) {
    Json entry{{"kind", "lost"}, {"time", now}, {"part", part}};
    if (together) entry["together"] = true;
    return entry;
}

Json with_log(std::vector<Json> entries) {
    Json job = tests::sample_json();
    job["log"] = Json::array();
    for (Json& entry : entries) job["log"].push_back(std::move(entry));
    return job;
}

Json with_drawers(const std::vector<std::string>& names) {
    Json job = tests::sample_json();
    const Json drawer = job["drawers"][0];
    job["drawers"] = Json::array();
    for (const std::string& name : names) {
        job["drawers"].push_back(drawer);
        job["drawers"].back()["name"] = name;
    }
    return job;
}

std::vector<std::string> names(const Json& job) {
    std::vector<std::string> out;
    for (const Json& drawer : job["drawers"]) out.push_back(drawer["name"]);
    return out;
}

}  // namespace

TEST_CASE("entries that were added to the log in two places are all in it, the file's first") {
    const Json base = with_log({lost("a")}), theirs = with_log({lost("a"), lost("b")}),
               mine = with_log({lost("a"), lost("c"), lost("d", true)});
    CHECK(merged(base, theirs, mine)->at("log") ==
          with_log({lost("a"), lost("b"), lost("c"), lost("d", true)})["log"]);
}

TEST_CASE("an entry that was told late stays behind what it belongs to, whatever else was told meanwhile") {
    const Json base = with_log({lost("a"), lost("b")}), theirs = with_log({lost("a"), lost("b"), lost("c")});
    CHECK(merged(base, theirs, with_log({lost("a"), lost("late"), lost("b")}))->at("log") ==
          with_log({lost("a"), lost("late"), lost("b"), lost("c")})["log"]);
    CHECK(merged(base, theirs, with_log({lost("a"), lost("late"), lost("later"), lost("b"), lost("d")}))
              ->at("log") ==
          with_log({lost("a"), lost("late"), lost("later"), lost("b"), lost("c"), lost("d")})["log"]);
    // Where that was taken back elsewhere, it comes last.
    CHECK(merged(base, with_log({lost("b")}), with_log({lost("a"), lost("late"), lost("b")}))->at("log") ==
          with_log({lost("b"), lost("late")})["log"]);
}

TEST_CASE("a document whose log was spoilt outside is refused, and nothing is told to it") {
    Session session = open_session(tests::sample_json(), {}, now);
    REQUIRE(session.work);
    for (const Json& spoilt : {Json::object(), Json("x"), Json(7)}) {
        session.document["log"] = spoilt;
        const Session after = apply(session, MarkLost{session.work->plan.parts.front().id}, now);
        CHECK_FALSE(after.refused.empty());
        CHECK(after.document == session.document);
    }
    session.document["drawers"] = "x";
    CHECK_FALSE(edited(session, AddDrawer{}, now).refused.empty());
}

TEST_CASE("an entry that was taken back in one place is gone, and what was added in the other stays") {
    const Json base = with_log({lost("a"), lost("b"), lost("c", true)});
    const Json theirs = with_log({lost("a"), lost("b"), lost("c", true), lost("d")});
    CHECK(merged(base, theirs, with_log({lost("a")}))->at("log") == with_log({lost("a"), lost("d")})["log"]);
    // What was told at once with it is now told by itself.
    CHECK(merged(base, theirs, with_log({lost("a"), lost("c")}))->at("log") ==
          with_log({lost("a"), lost("d"), lost("c")})["log"]);
    // Of entries that are alike, one.
    const Json twice = with_log({lost("a"), lost("a")});
    CHECK(merged(twice, with_log({lost("a"), lost("a"), lost("b")}), with_log({lost("a")}))->at("log") ==
          with_log({lost("a"), lost("b")})["log"]);
}

TEST_CASE("fields that were changed in one place each are as they were changed there") {
    const Json base = tests::sample_json();
    Json theirs = base, mine = base;
    theirs["drawers"][0]["count"] = 3;
    theirs["pins"] = Json{{"first", Json::array({"x"})}};
    mine["drawers"][0]["front"]["depth"] = "1/4";
    mine["name"] = "mine";
    mine.erase("reading");
    const auto both = merged(base, theirs, mine);
    REQUIRE(both);
    CHECK(both->at("drawers")[0]["count"] == 3);
    CHECK(both->at("drawers")[0]["front"]["depth"] == "1/4");
    CHECK(both->at("pins") == theirs["pins"]);
    CHECK(both->at("name") == "mine");
    CHECK_FALSE(both->contains("reading"));
}

TEST_CASE("a field that was changed otherwise in both places, or a list that has other items, is named") {
    const Json base = tests::sample_json();
    Json theirs = base, mine = base;
    theirs["drawers"][0]["count"] = 3;
    mine["drawers"][0]["count"] = 4;
    CHECK(merged(base, theirs, mine).error() == "/drawers/0/count");
    mine["drawers"][0]["count"] = 3;
    CHECK(*merged(base, theirs, mine) == mine);
    // Which drawer is which can't be told any more.
    theirs["drawers"].push_back(theirs["drawers"][0]);
    mine["drawers"][0]["count"] = 4;
    CHECK(merged(base, theirs, mine).error() == "/drawers");
    // Nor which length is which.
    Json short_list = base, long_list = base;
    for (Json* job : {&theirs, &mine, &short_list, &long_list}) *job = base;
    short_list["cutters"][0]["spare_shims"] = Json::array({"0.1 mm", "0.2 mm"});
    theirs["cutters"][0]["spare_shims"] = Json::array({"0.1 mm", "0.3 mm"});
    mine["cutters"][0]["spare_shims"] = Json::array({"0.2 mm", "0.2 mm"});
    CHECK(merged(short_list, theirs, mine).error() == "/cutters/0/spare_shims");
}

TEST_CASE(
    "drawers are told apart by their names: changed here and put in another order there, each keeps its "
    "own") {
    const Json base = with_drawers({"a", "b", "c"});
    Json mine = base;
    mine["drawers"][0]["count"] = 7;  // of a
    const auto both = merged(base, with_drawers({"c", "b", "a"}), mine);
    REQUIRE(both);
    CHECK(names(*both) == std::vector<std::string>{"c", "b", "a"});
    CHECK(both->at("drawers")[0]["count"] == 2);
    CHECK(both->at("drawers")[2]["count"] == 7);
    // The same the other way round.
    CHECK(merged(base, mine, with_drawers({"c", "b", "a"})) == both);
    // Two orders at once are nobody's.
    CHECK(merged(base, with_drawers({"c", "b", "a"}), with_drawers({"b", "a", "c"})).error() == "/drawers");
}

TEST_CASE("drawers that were added or removed in one place are so, and what was changed in the other stays") {
    const Json base = with_drawers({"a", "b"});
    Json mine = with_drawers({"a", "b", "mine"});
    mine["drawers"][1]["count"] = 7;
    const auto both = merged(base, with_drawers({"theirs", "b"}), mine);
    REQUIRE(both);
    CHECK(names(*both) == std::vector<std::string>{"theirs", "b", "mine"});
    CHECK(both->at("drawers")[1]["count"] == 7);
    // One that was removed there, or renamed, and changed here.
    mine = base;
    mine["drawers"][0]["count"] = 7;
    CHECK(merged(base, with_drawers({"b"}), mine).error() == "/drawers/0");
    CHECK(merged(base, with_drawers({"renamed", "b"}), mine).error() == "/drawers/0");
}

TEST_CASE("the way back leads to what was here before, with what came into the file meanwhile") {
    Session session = open_session(with_log({}), {}, now);
    const std::string part = session.work->plan.parts[0].id, other = session.work->plan.parts[1].id;
    session = apply(session, SetField{"/name", "second"}, now);
    const Json base = session.document;
    session = apply(session, MarkLost{part}, now);
    Json theirs = base;
    theirs["log"].push_back(lost(other));
    auto taken = taken_up(session, base, theirs);
    REQUIRE(taken);
    CHECK(taken->document["log"].size() == 2);
    Session back = apply(worked_out(*taken), Undo{}, now);
    CHECK(back.document == theirs);
    back = apply(back, Undo{}, now);
    CHECK(back.document["name"] == with_log({})["name"]);
    CHECK(back.document["log"] == theirs["log"]);
}
