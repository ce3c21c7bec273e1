// Editing the open job, field by field.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"

using namespace kw;
using tests::now;

TEST_CASE("a new opening gives a new box at once") {
    const Session session = open_session(tests::sample_json());
    const Session after = apply(session, SetField{"/drawers/0/opening/width", "15 3/8"}, now);
    CHECK(after.work->plan.boxes[0].size.width - session.work->plan.boxes[0].size.width == Length::inches(1));
}

TEST_CASE("a job that can't be made keeps the last plan, and marks the field") {
    const Session session = open_session(tests::sample_json());
    const Session after = apply(session, SetField{"/drawers/0/front/depth", "7/16"}, now);
    CHECK(after.work == session.work);
    REQUIRE(problems_at(after, "/drawers/0/front").size() == 1);
    CHECK(problems_at(after, "/drawers/0/front")[0].pointer == "/drawers/0/front/depth");
    CHECK(problems_at(after, "/drawers/0/back").empty());
    const Session mended = apply(after, SetField{"/drawers/0/front/depth", nullptr}, now);
    CHECK(mended.problems.empty());
}

TEST_CASE("unknown fields stay in the document through any edit") {
    Json document = tests::sample_json();
    document["shelf"] = "north wall";
    document["drawers"][0]["colour"] = "green";
    Session session = open_session(document);
    session = apply(session, SetField{"/drawers/0/count", 3}, now);
    session = apply(session, AddDrawer{0}, now);
    CHECK(session.document["shelf"] == "north wall");
    CHECK(session.document["drawers"][0]["colour"] == "green");
    CHECK(session.document["drawers"][1]["name"] == "seeds 2");
}

TEST_CASE("a job keeps at least one drawer") {
    const Session session = open_session(tests::sample_json());
    CHECK(apply(session, RemoveDrawer{0}, now).refused == "a job keeps at least one drawer");
    const Session two = apply(session, AddDrawer{0}, now);
    CHECK(apply(two, RemoveDrawer{0}, now).document["drawers"].size() == 1);
}

TEST_CASE("an item of a list is put in at its end, and taken out from between the others") {
    Session session = open_session(tests::sample_json());
    const std::string list = "/drawers/0/slide/lengths";
    for (const char* length : {"12", "14", "16"}) {
        const bool first = !session.document["drawers"][0]["slide"].contains("lengths");
        session = apply(session, SetField{list + (first ? "/0" : "/-"), length}, now);
        REQUIRE(session.refused.empty());
    }
    CHECK(session.work->plan.boxes[0].size.depth == Length::inches(16));
    session = apply(session, SetField{list + "/1", nullptr}, now);
    CHECK(session.document["drawers"][0]["slide"]["lengths"] == Json::array({"12", "16"}));
    session = apply(session, SetField{list + "/1", nullptr}, now);
    CHECK(session.work->plan.boxes[0].size.depth == Length::inches(12));
}

TEST_CASE("a name that is a number makes an object on the way, and no list") {
    const Session session = open_session(tests::sample_json());
    const Session after = apply(session, SetField{"/drawers/0/assembled/2/from_front_left", "22 1/4"}, now);
    CHECK(after.problems.empty());
    CHECK(after.document["drawers"][0]["assembled"] == Json{{"2", {{"from_front_left", "22 1/4"}}}});
}

TEST_CASE("a drawer that is renamed keeps what was told of its parts") {
    Session session = open_session(tests::sample_json());
    const Setup& rip = *std::find_if(session.work->plan.setups.begin(), session.work->plan.setups.end(),
                                     [](const Setup& setup) { return setup.stage == Stage::rip; });
    std::vector<std::size_t> all(rip.passes.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
    session = apply(session, MarkRun{rip.id, all}, now);
    REQUIRE(session.refused.empty());
    const std::size_t left = session.work->rest.steps.size();
    const Session renamed = apply(session, SetField{"/drawers/0/name", "seed packets"}, now);
    CHECK(renamed.document["log"][0]["part"].get<std::string>().rfind("seed packets.", 0) == 0);
    CHECK(renamed.work->rest.steps.size() == left);
    CHECK(apply(renamed, Undo{}, now).document == session.document);
}

TEST_CASE("another drawer begins like one that is there, without what was read of that") {
    Session session = open_session(tests::sample_json());
    session = apply(session, SetField{"/drawers/0/opening/survey/width_top", "14 1/4"}, now);
    session = apply(session, SetField{"/drawers/0/opening/width", nullptr}, now);
    session = apply(session, SetField{"/drawers/0/assembled/1/from_front_left", "22"}, now);
    REQUIRE(session.problems.empty());
    const Session after = apply(session, AddDrawer{0}, now);
    REQUIRE(after.problems.empty());
    const Json& added = after.document["drawers"][1];
    CHECK_FALSE(added.contains("assembled"));
    CHECK_FALSE(added["opening"].contains("survey"));
    CHECK(after.work->plan.boxes[1].size == after.work->plan.boxes[0].size);
}
