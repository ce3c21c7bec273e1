// A job changed in two places at once: what each has done is kept, or it is said where that can't be.
#include "session/merged.h"

#include <doctest/doctest.h>

#include "sample_job.h"

using namespace kw;

namespace {

const std::string now = "2026-03-01T09:00:00Z";

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
