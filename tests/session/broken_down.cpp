// Boards and sheets that were broken down, told in the open job.
#include <doctest/doctest.h>

#include "job/on_hand.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/say_layout.h"
#include "session/session.h"

using namespace kw;
using tests::now;

namespace {

Session on_boards(const char* over_width = "1/8") {
    Json job = tests::sample_json();
    job["stock"][0]["sizes"] = {{{"length", "96"}}};
    job["cutting"] = {{"over_width", over_width}, {"least_offcut_length", "10"}};
    return open_session(job);
}

LayOut layout_of(const Session& session) {
    return lay_out(session.work->job, session.work->plan, session.work->standing);
}

BrokenDown boards_of(const Session& session) {
    return broken_down_of(session.work->job, layout_of(session).stocks.at(0));
}

}  // namespace

TEST_CASE("undo takes the breaking-down back, and redo tells it again") {
    const Session before = on_boards();
    const BrokenDown down = boards_of(before);
    const Session told = apply(before, MarkBrokenDown{down}, now);
    REQUIRE(told.refused == "");
    CHECK(told.work->job.log.back().broken_down == down);
    CHECK(layout_of(told).stocks.empty());
    const Session undone = apply(told, Undo{}, now);
    CHECK(undone.document == before.document);
    CHECK(boards_of(undone) == down);
    CHECK(apply(undone, Redo{}, now).document == told.document);
}

TEST_CASE("what is told twice is told once: the second is refused, and says why") {
    const Session before = on_boards();
    const BrokenDown down = boards_of(before);
    const Session told = apply(before, MarkBrokenDown{down}, now);
    const Session twice = apply(told, MarkBrokenDown{down}, now);
    CHECK(twice.document == told.document);
    CHECK(twice.refused == "`" + down.freed.front().part + "` lies by itself already, as told; mark `" +
                               down.freed.front().part +
                               "` as spoilt if that piece is gone: then it is laid out again");
}

TEST_CASE("no part is laid on a board's offcut that is narrower than it") {
    Session session = apply(on_boards(), MarkBrokenDown{boards_of(on_boards())}, now);
    const auto& kept = session.work->job.log.back().broken_down->kept;
    REQUIRE_FALSE(kept.empty());
    const std::string side = session.work->plan.parts.front().id;
    session = apply(session, MarkLost{side}, now);
    const auto is_on_offcut = [](const Session& of) {
        const LaidStock laid = layout_of(of).stocks.at(0);
        return of.work->job.stock_named(laid.stock)->sizes.at(laid.pieces.at(0).size).is_offcut;
    };
    CHECK(is_on_offcut(session));
    // All parts of the box are as high as it is: a taller drawer has wider ones.
    const Session taller = apply(session, SetField{"/drawers/0/opening/height", "9"}, now);
    REQUIRE(taller.problems.empty());
    CHECK_FALSE(is_on_offcut(taller));
}

TEST_CASE("what was freed goes by the drawer's new name") {
    Session session = apply(on_boards(), MarkBrokenDown{boards_of(on_boards())}, now);
    const std::size_t freed = layout_of(session).freed.size();
    session = apply(session, SetField{"/drawers/0/name", "herbs"}, now);
    CHECK(layout_of(session).freed.size() == freed);
    CHECK(layout_of(session).stocks.empty());
}

TEST_CASE("a stock whose sizes have changed since has its log all the same") {
    Session session = apply(on_boards(), MarkBrokenDown{boards_of(on_boards())}, now);
    session = apply(session, SetField{"/stock/0/sizes/0/length", "120"}, now);
    CHECK(layout_of(session).stocks.empty());
    session = apply(session, SetField{"/stock/0/sizes", nullptr}, now);
    CHECK(layout_of(session).stocks.empty());
    CHECK(session.problems.empty());
}

TEST_CASE(
    "what is on hand after a breaking-down is told of its stock: what is left of the count, and what was "
    "kept") {
    Json job = tests::sample_json();
    job["stock"][0]["sizes"] = {{{"length", "96"}, {"count", 5}}};
    job["cutting"] = {{"least_offcut_length", "10"}};
    const Session before = open_session(job);
    CHECK(say_on_hand(before.work->job, "ply 12").empty());
    const BrokenDown down = boards_of(before);
    REQUIRE(down.used.size() == 1);
    const Session told = apply(before, MarkBrokenDown{down}, now);
    const std::string said = say_on_hand(told.work->job, "ply 12");
    CHECK(said.find("on hand now: " + std::to_string(5 - down.used.front().count) + " of 96 in long") !=
          std::string::npos);
    for (const KeptOffcut& kept : down.kept)
        CHECK(said.find(", offcut of " + show_with_unit(kept.length, told.work->job.locale)) !=
              std::string::npos);
    CHECK(say_on_hand(told.work->job, "ply 6").empty());
}
