// A box joint from the jig's first test cut to the parts that go through. Common practice, no source; numbers worked on paper.
#include <doctest/doctest.h>

#include <algorithm>

#include "session/jig_job.h"
#include "session/setup_said.h"
#include "session/test_cut.h"

using namespace kw;
using namespace kw::tests::jig;
using tests::mm, tests::now, tests::setup_of;

namespace {

// Where pin and cutter truly stand.
struct AsCut {
    double finger_mm, socket_mm, height_mm;
};

// All that can be read of it with a caliper, true to the hundredth.
std::vector<NamedLength> readings_of(const Session& session, const AsCut& cut) {
    const Group& group = *session.work->plan.group_with_id(row_named(session, side_row).group);
    const int whole = row_to(group, start_of(*session.work, group));
    return {mm("stock_thickness", 12.1),
            mm("socket_width", cut.socket_mm),
            mm("finger_width", cut.finger_mm),
            mm("fit", cut.socket_mm - cut.finger_mm),
            mm("row", whole * (cut.finger_mm + cut.socket_mm)),
            mm("depth", cut.height_mm),
            mm("face_step", cut.height_mm - 12.1)};
}

Session tested_as(const Session& begun, const AsCut& cut) {
    const std::string setup = setup_of(begun, side_row);
    Session session = tests::tested(begun, setup, readings_of(begun, cut));
    return session;
}

}  // namespace

TEST_CASE(
    "fingers too wide for their sockets: the pin goes toward the cutter, by as much as they are too wide") {
    const Session session = tested_as(fingered(), {6.45, 6.35, 12.1});
    const auto report = fit_report(*session.work, setup_of(session, side_row)).value();
    REQUIRE(report.advice == AdviceKind::move);
    REQUIRE(report.moves.size() == 1);
    CHECK(report.moves[0].control == "fence");
    // Tight by 0.10 mm, and to be loose by the job's 0.004 in: 0.2 mm.
    CHECK(report.moves[0].by.mm() == doctest::Approx(-0.2).epsilon(0.15));
    CHECK(report.moves[0].say.find("move the jig's pin") == 0);
    CHECK(report.moves[0].say.find("toward the cutter") != std::string::npos);
    CHECK(report.retry == Retry::fresh_end);
}

TEST_CASE(
    "what each finger and socket is off by adds up over the row, and both boards' rows are set over alike") {
    const Session session = tested_as(fingered(), {6.45, 6.35, 12.1});
    const auto report = fit_report(*session.work, setup_of(session, side_row)).value();
    const Setup &sides = row_named(session, side_row), &ends = row_named(session, end_row);
    REQUIRE(report.row_mm);
    CHECK(report.sockets == sides.passes.front().cuts);
    // After the move by 0.2 mm a finger is 0.05 mm narrower or so than planned, the socket as wide as its stack: told for all sockets.
    const double off_mm = (report.next.fence + report.next.kerf).mm() - (6.35 - 0.1016 + 6.35);
    CHECK(*report.row_mm == doctest::Approx(report.sockets * off_mm));
    CHECK(sides.index == ends.index);
    CHECK(*sides.index == sides.fence + sides.kerf);
    CHECK(ends.spacer == ends.fence);  // a finger as it is cut
}

TEST_CASE("fingers that stand proud by more than asked: the cutter comes down, and that takes fresh ends") {
    const Session session = tested_as(fingered(), {6.25, 6.35, 12.5});
    const auto report = fit_report(*session.work, setup_of(session, side_row)).value();
    REQUIRE(report.moves.size() == 1);
    CHECK(report.moves[0].control == "height");
    CHECK(report.moves[0].by.mm() == doctest::Approx(-0.4).epsilon(0.15));
    CHECK(report.retry == Retry::fresh_end);
}

TEST_CASE("sockets not deep enough: the cutter goes up, and the same ends will do") {
    const Session session = tested_as(fingered(), {6.25, 6.35, 11.7});
    const auto report = fit_report(*session.work, setup_of(session, side_row)).value();
    REQUIRE(report.moves.size() == 1);
    CHECK(report.moves[0].control == "height");
    CHECK(report.moves[0].by > Length{});
    CHECK(report.retry == Retry::same_ends);
}

TEST_CASE("a joint that fits is locked, and front and back go to length by it") {
    Session session = tested_as(fingered(), {6.25, 6.35, 12.15});
    const std::string setup = setup_of(session, side_row);
    CHECK(fit_report(*session.work, setup)->is_good());
    session = tests::locked_unmoved(session, setup);
    // Sockets a little deeper than the sides are thick: front and back are longer by that at both ends, and planed off.
    const Plan& plan = session.work->plan;
    const auto front = std::find_if(plan.parts.begin(), plan.parts.end(),
                                    [](const Part& part) { return part.size.role == Role::front; });
    const Length wide = plan.boxes.front().size.width;
    const Length deep =
        session.work->standing_design
            .group_with_key(session.work->plan.group_with_id(row_named(session, side_row).group)->key)
            ->stands.height;
    CHECK(front->size.length == wide + 2 * (deep - Length::nearest_mm(12.1)));
    CHECK(deep.mm() == doctest::Approx(12.15).epsilon(0.003));
}

TEST_CASE("parts that went through before the pin was moved are lost, by name") {
    Session session = tested_as(fingered(), {6.25, 6.35, 12.1});
    const std::string setup = setup_of(session, side_row);
    session = tests::locked_unmoved(session, setup);
    session = tests::ran(session, setup, {0}, now);
    CHECK(session.work->affected.empty());
    TestCut lock;
    lock.setup = setup;
    lock.moved = std::vector<NamedLength>{mm("fence", -0.3)};
    session = tests::locked(session, lock);
    const Affected& lost = session.work->affected.at(0);
    CHECK(lost.part == session.work->plan.setup_with_id(setup)->passes[0].part);
    CHECK(lost.fate == Fate::lost);
}

TEST_CASE("the saw says pin, set over, sockets and how the board stands, and no fence") {
    const Session session = fingered();
    const Work& work = *session.work;
    const Setup &sides = row_named(session, side_row), &ends = row_named(session, end_row);
    std::string all;
    for (const SetupNumber& number : setup_numbers(work, nullptr, ends, CutterSide::far))
        all += number.caption + " " + number.value + " " + number.note + "; ";
    INFO(all);
    CHECK(all.find("Pin to cutter") == 0);
    CHECK(all.find("Set over by") != std::string::npos);
    CHECK(all.find("sockets in each end") != std::string::npos);
    CHECK(all.find("ence") == std::string::npos);
    const Words& words = work.job.locale.words();
    CHECK(say_lie(words, sides) == "front end and rear end down, bottom edge against the pin");
    CHECK(say_lie(words, ends) == "left end and right end down, bottom edge against the spacer on the pin");
    const Group& group = *work.plan.group_with_id(sides.group);
    const int whole = row_to(group, start_of(work, group));
    CHECK(reading_label(work, sides, "row") ==
          "Side's bottom edge to the far wall of its socket " + std::to_string(whole));
}
