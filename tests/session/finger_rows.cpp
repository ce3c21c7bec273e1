// Rows of fingers while the job goes on: what was read stays read, and what is cut by another setting must go into what is cut already. Common
// practice, no source; numbers worked on paper.
#include <doctest/doctest.h>

#include <algorithm>

#include "session/jig_job.h"

using namespace kw;
using namespace kw::tests::jig;
using tests::locked_unmoved, tests::mm, tests::now, tests::setup_of;

TEST_CASE("a lower drawer that comes to the job later does not change to which socket a row was measured") {
    Session session = row_locked(jig_job());
    const Length pin = row_named(session, side_row).fence,
                 set_over = row_named(session, side_row).index.value();
    const int to = measured_to(session);
    Json job = session.document;
    Json low = job["drawers"][0];
    low["name"] = "low";
    low["opening"]["height"] = "3";
    job["drawers"].push_back(low);
    session = tests::opened(job);
    CHECK(row_named(session, side_row).fence == pin);
    CHECK(row_named(session, side_row).index == set_over);
    CHECK(measured_to(session) == to);
}

TEST_CASE("an insert's own row is cut with the shims that the sides' row was cut with") {
    Json job = jig_job("15 mm");
    job["cutters"][0]["spare_shims"] = {"0.1 mm", "0.1 mm", "0.2 mm"};
    // The stack cuts a twentieth wider than it is called.
    const Session session = row_locked(job, 6.25, 6.40);
    const Setup &sides = row_named(session, side_row), &ends = row_named(session, end_row);
    REQUIRE(sides.group != ends.group);
    CHECK(dial_of(*session.work, ends).shims == dial_of(*session.work, sides).shims);
    CHECK(dial_of(*session.work, ends).fence == dial_of(*session.work, sides).fence);
    CHECK(kerf_as_put_on(*session.work, ends) == ends.kerf);
    CHECK(ends.kerf == sides.kerf);
    for (const RestChange& change : step_of_setup(session, ends.id).changes) CHECK(change.what != "shims");
}

TEST_CASE("a row that is set again must come to the row that is cut: what a finger is off by adds up") {
    const Session begun = to_be_set_again();
    const std::string sides = setup_of(begun, side_row);
    SUBCASE("finger and socket alone don't tell, so the row is asked for") {
        const Session session = tested_once(begun, side_row, row_readings(begun, 6.25, 6.35, false), true);
        const auto report = fit_report(*session.work, sides).value();
        CHECK(report.advice == AdviceKind::measure);
        CHECK(report.measure == "row");
    }
    SUBCASE("as it was: the board goes on those cut before") {
        const Session session = tested_once(begun, side_row, row_readings(begun, 6.25, 6.35, true), true);
        CHECK(fit_report(*session.work, sides)->chance_in_tolerance > 0.75);
    }
    SUBCASE("each finger farther by 0.03 mm: that fits in itself, and goes on no board cut before") {
        const Session session = tested_once(begun, side_row, row_readings(begun, 6.28, 6.35, true), true);
        const auto report = fit_report(*session.work, sides).value();
        CHECK(report.chance_in_tolerance < 0.5);
        REQUIRE(report.moves.size() == 1);
        CHECK(report.moves[0].control == "fence");
        CHECK(report.moves[0].by.mm() == doctest::Approx(-0.03).epsilon(0.4));
    }
    SUBCASE("where none of those cut before is left, any row will do") {
        Session session = begun;
        for (const char* part : {"seeds.1.side_right", "seeds.2.side_left", "seeds.2.side_right"})
            session = lost(session, part);
        session = tested_once(session, side_row, row_readings(begun, 6.28, 6.35, true), true);
        CHECK(fit_report(*session.work, sides)->chance_in_tolerance > 0.75);
    }
}

TEST_CASE("fingers with a height of their own are lost with the row of the sides that they were cut for") {
    Session session = row_locked(jig_job("15 mm"));
    const std::string ends = setup_of(session, end_row), sides = setup_of(session, side_row);
    session = tests::ran(session, ends, {0}, now);
    CHECK(session.work->affected.empty());
    TestCut moved;
    moved.setup = sides;
    moved.moved = std::vector<NamedLength>{mm("fence", -0.3)};
    session = tests::locked(session, moved);
    const std::string part = session.work->plan.setup_with_id(ends)->passes[0].part;
    CHECK(std::any_of(session.work->affected.begin(), session.work->affected.end(),
                      [&](const Affected& one) { return one.part == part && one.fate == Fate::lost; }));
}

TEST_CASE("sides, fronts and backs of three thicknesses go by one pin, wherever a test cut brings it") {
    Json job = jig_job("15 mm");
    job["stock"].push_back({{"name", "backs"}, {"thickness", "14 mm"}, {"kind", "plywood"}});
    for (Json& drawer : job["drawers"]) drawer["back"]["stock"] = "backs";
    Session session = row_locked(job, 6.28, 6.35);
    const auto rows = [&] {
        std::vector<const Setup*> all;
        for (const Setup& setup : session.work->plan.setups)
            if (setup.index) all.push_back(&setup);
        return all;
    };
    REQUIRE(rows().size() == 3);
    for (const Setup* row : rows()) {
        CHECK(row->fence == rows()[0]->fence);
        CHECK(row->index == rows()[0]->index);
        CHECK(dial_of(*session.work, *row).fence == dial_of(*session.work, *rows()[0]).fence);
    }
    // Their own test is of the depth: it moves no pin that fits well enough.
    const std::string backs = setup_of(session, "back box joint: side sockets");
    session = tests::made_ready(session, backs, tests::passes_of(session, backs), now);
    session = tests::tested(
        session, backs,
        {mm("finger_width", 6.30), mm("socket_width", 6.33), mm("depth", 14.0), mm("face_step", 0.0)});
    CHECK(fit_report(*session.work, backs)->moves.empty());
    session = locked_unmoved(session, backs);
    for (const Setup* row : rows()) CHECK(row->fence == rows()[0]->fence);
}

TEST_CASE(
    "a row whose pin had to be set anew is judged by what is read of it, and brought back to the row that is "
    "cut") {
    Session session = row_locked(jig_job("15 mm"));
    const std::string sides = setup_of(session, side_row), ends = setup_of(session, end_row);
    session = tests::ran(session, sides, tests::passes_of(session, sides), now);
    const auto row_of_ends = [&](double finger_mm) {
        const Group& group = group_of_row(session, end_row);
        const int n = row_to(group, start_of(*session.work, group));
        return std::vector<NamedLength>{mm("socket_width", 6.35), mm("finger_width", finger_mm),
                                        mm("fit", 6.35 - finger_mm), mm("depth", 12.1),
                                        mm("row", n * (finger_mm + 6.35) - finger_mm)};
    };
    SUBCASE("before it was ever tested") { session = locked_unmoved(session, setup_of(session, "groove")); }
    SUBCASE("after it was locked") {
        session = tests::made_ready(session, ends, tests::passes_of(session, ends, "seeds.1.front"), now);
        session = locked_unmoved(tested_once(session, end_row, row_of_ends(6.25)), ends);
        session = locked_unmoved(session, setup_of(session, "groove"));
    }
    const Session off = tested_once(session, end_row, row_of_ends(6.37), true);
    const auto report = fit_report(*off.work, ends).value();
    CHECK(report.now.fence.mm() == doctest::Approx(6.37).epsilon(0.004));
    CHECK(report.chance_in_tolerance < 0.1);
    const auto& moves = report.moves.empty() ? report.unread : report.moves;
    REQUIRE(moves.size() >= 1);
    CHECK(moves[0].control == "fence");
    CHECK(moves[0].by.mm() == doctest::Approx(-0.12).epsilon(0.25));
    const Session right = tested_once(session, end_row, row_of_ends(6.25), true);
    CHECK(fit_report(*right.work, ends)->chance_in_tolerance > 0.7);
}

TEST_CASE("a second joint at the same pin that does not fit is not told to be locked") {
    Session session = row_locked(jig_job("15 mm"));
    const std::string sides = setup_of(session, side_row), ends = setup_of(session, end_row);
    session = tests::ran(session, sides, tests::passes_of(session, sides), now);
    session = tests::made_ready(session, ends, tests::passes_of(session, ends, "seeds.1.front"), now);
    session = tested_once(session, end_row, {mm("fit", -0.06), mm("depth", 12.1)});
    CHECK(fit_report(*session.work, ends)->chance_in_tolerance < session.work->job.fit.wanted_chance);
    CHECK(fit_report(*session.work, ends)->advice != AdviceKind::lock);
}

TEST_CASE("a front that is measured anew leaves the pin where it was locked, for all rows that are left") {
    Json job = jig_job("15 mm");
    job["stock"].push_back({{"name", "backs"}, {"thickness", "14 mm"}, {"kind", "plywood"}});
    for (Json& drawer : job["drawers"]) drawer["back"]["stock"] = "backs";
    Session session = row_locked(job, 6.40, 6.35);
    const std::string backs = setup_of(session, "back box joint: side sockets");
    session = tests::made_ready(session, backs, tests::passes_of(session, backs), now);
    session =
        locked_unmoved(tested_once(session, "back box joint: side sockets", {mm("depth", 14.0)}), backs);
    const Length pin = row_named(session, "back box joint: side sockets").fence;
    Json measured = session.document;
    for (Json& stock : measured["stock"])
        if (stock["name"] == "fronts") stock["thickness"] = "15.1 mm";
    session = tests::opened(measured);
    for (const Setup& setup : session.work->plan.setups)
        if (setup.index) CHECK(abs(setup.fence - pin) <= Length::micrometres(1));
    CHECK(pin.mm() == doctest::Approx(6.40).epsilon(0.004));
}

TEST_CASE(
    "a high drawer that is added does not make a low one's boards lost, nor is a row bound to boards of "
    "other corners") {
    Session session = row_locked(jig_job());
    const std::string sides = setup_of(session, side_row), ends = setup_of(session, end_row);
    session = tests::ran(session, sides, tests::passes_of(session, sides), now);
    session = tests::ran(session, ends, tests::passes_of(session, ends), now);
    Json job = session.document;
    Json high = job["drawers"][0];
    high["name"] = "high";
    high["opening"]["height"] = "12";
    job["drawers"].push_back(high);
    session = tests::opened(job);
    CHECK(session.work->affected.empty());
    // All of the first drawer has been cut: the next drawer's row may stand elsewhere.
    session = locked_unmoved(session, setup_of(session, "groove"));
    session = tested_once(session, side_row, row_readings(session, 6.28, 6.35, true), true);
    CHECK(fit_report(*session.work, setup_of(session, side_row))->chance_in_tolerance > 0.75);
}

TEST_CASE("where the stack is known to cut wider all rows are planned by that, before any is tested") {
    const Session session = open_session(jig_job("15 mm"), tests::off_by(Taught::kerf, 0.2), now);
    REQUIRE(session.work);
    const Setup &sides = row_named(session, side_row), &ends = row_named(session, end_row);
    // Both kerf and pin wider by 0.2 mm, so that fingers fit as they are to.
    CHECK((sides.kerf - Length::inches(1, 4)).mm() == doctest::Approx(0.2).epsilon(0.1));
    CHECK((sides.kerf - sides.fence).mm() == doctest::Approx(0.1016).epsilon(0.15));
    for (const Setup* row : {&sides, &ends}) {
        CHECK(row->fence == sides.fence);
        CHECK(row->index == sides.fence + sides.kerf);
        CHECK(set_to(*session.work, *row).fence.truly == row->fence);
    }
    CHECK(ends.spacer == ends.fence);
}

TEST_CASE("a log that tells of ends run, and of no test or lock before, leads no row") {
    const Session begun = tests::opened(jig_job("15 mm"));
    const Setup& ends = row_named(begun, end_row);
    Json job = begun.document;
    job["log"].push_back({{"kind", "ran"},
                          {"time", now},
                          {"setup", ends.id},
                          {"key", work_key(ends, begun.work->design)},
                          {"machine", ends.machine},
                          {"part", "seeds.1.front"},
                          {"reference", "left end"}});
    const Session session = tests::opened(job);
    CHECK(group_of_row(session, side_row).row_of.empty());
    CHECK(row_named(session, end_row).fence == row_named(session, side_row).fence);
}

TEST_CASE("boards that ran before the pin was moved were not cut by it, whatever the next test cut reads") {
    Session session = row_locked(jig_job("15 mm"));
    const std::string sides = setup_of(session, side_row);
    session = tests::ran(session, sides, tests::passes_of(session, sides), now);
    TestCut moved = tests::test_cut(sides, row_readings(session, 6.19, 6.35, true));
    moved.moved = std::vector<NamedLength>{mm("fence", -0.06)};
    moved.fresh_end = moved.sure = true;
    session = apply(session, SaveTest{moved}, now);
    REQUIRE(session.refused == "");
    // Six hundredths at each of nine sockets are half a millimetre at the top.
    int lost = 0;
    for (const Affected& one : session.work->affected) lost += one.fate == Fate::lost ? 1 : 0;
    CHECK(lost >= 4);
}

TEST_CASE("a row is read to a socket that is whole also where pin and cutter are off") {
    // 4 1/4 in, as these drawers are high, by a pitch of 12.6 mm: 8.57 times.
    const Session session = tests::opened(jig_job());
    const Length height = session.work->plan.part_with_id("seeds.1.side_left")->size.width;
    const double pitch_mm = row_named(session, side_row).index->mm();
    CHECK(measured_to(session) * (pitch_mm + 0.2) <= height.mm());
    CHECK((measured_to(session) + 1) * (pitch_mm + 0.3) > height.mm());
}

TEST_CASE("a front that has its length stays good while its own sockets are as deep as they may be") {
    Session session = row_locked(jig_job("15 mm"));
    const std::string ends = setup_of(session, end_row);
    const Length planned = session.work->plan.part_with_id("seeds.1.front")->size.length;
    session = tests::made_ready(session, ends, tests::passes_of(session, ends, "seeds.1.front"), now);
    session =
        tested_once(session, end_row, {mm("stock_thickness", 12.1), mm("depth", 12.2), mm("face_step", 0.1)});
    session = locked_unmoved(session, ends);
    // Longer by 0.1 mm at both ends, were it cut now.
    CHECK((session.work->plan.part_with_id("seeds.1.front")->size.length - planned).mm() ==
          doctest::Approx(0.2).epsilon(0.3));
    CHECK(session.work->affected.empty());
}
