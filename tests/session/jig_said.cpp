// What is said of a jig's test cut: what to cut in scrap, on which board it is read, when the spacer is on the pin, and what the pin is
// called. Common practice, no source; numbers worked on paper.
#include <doctest/doctest.h>

#include <algorithm>

#include "session/jig_job.h"
#include "session/say_log.h"
#include "session/setup_said.h"
#include "session/test_cut.h"
#include "session/words.h"

using namespace kw;
using namespace kw::tests::jig;
using tests::mm, tests::now, tests::setup_of;

namespace {

std::string all_of(const std::vector<std::string>& lines) { return joined(lines, "\n"); }

bool says(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

TestCut reading(const std::string& setup, const char* name, double value_mm) {
    TestCut cut;
    cut.setup = setup;
    cut.readings = {mm(name, value_mm)};
    return cut;
}

}  // namespace

TEST_CASE(
    "a jig's test cut says how many sockets, in how wide a piece, when the spacer is on, and what is aimed "
    "at") {
    const Session session = fingered();
    const Work& work = *session.work;
    const Setup& sides = row_named(session, side_row);
    const Group& group = *work.plan.group_with_id(sides.group);
    const int sockets = row_to(group, start_of(work, group));
    const std::string steps = all_of(say_test(work, sides.id, CutterSide::near));
    INFO(steps);
    CHECK(says(steps, "Take scrap at least " +
                          without_mark(show_with_unit(sockets * group.pitch(), work.job.locale)) + " wide"));
    CHECK(says(steps, std::to_string(sockets) + " sockets"));
    CHECK(says(steps, "for the first socket a spacer of"));
    CHECK(says(steps, "comes off after it; for the sides it is off"));
    CHECK(says(steps, "the spacer is made anew, as wide as a finger then is"));
    CHECK(says(steps, "the row on the side, which begins with a finger"));
    CHECK(says(steps, "a fit of " + caliper_text(work.job, work.job.fit.clearance) + " is aimed at"));
}

// By the model: a row from the bottom edge on is whole fingers and sockets only on the board that begins with a finger.
TEST_CASE("a row is as long as its fingers and sockets on the side, and a finger less on the front") {
    const Session session = fingered();
    const Setup& sides = row_named(session, side_row);
    const Group& group = *session.work->plan.group_with_id(sides.group);
    const Cut &on_side = group.slot(), &on_front = *group.work.chosen.joint.insert_cut();
    const int last = row_to(group, start_of(*session.work, group)) - 1;
    const Length row = (last + 1) * group.pitch();
    CHECK(on_side.near + last * *on_side.pitch + on_side.width == row);
    CHECK(on_front.near + last * *on_front.pitch + on_front.width == row - group.stands.fence);
    CHECK(says(reading_label(*session.work, sides, "row"), "Side's bottom edge"));
}

TEST_CASE("who moves the pin makes the spacer as much wider or narrower, since it is a finger") {
    const Session session = fingered();
    const std::string setup = setup_of(session, side_row);
    const Session tight = tests::tested(session, setup, {mm("fit", -0.1), mm("socket_width", 6.35)});
    const auto report = fit_report(*tight.work, setup).value();
    const auto& moves = report.moves.empty() ? report.unread : report.moves;
    REQUIRE(moves.size() == 1);
    CHECK(says(moves[0].say, "toward the cutter, and make the spacer as much narrower"));
    CHECK(report.next.spacer == report.next.fence);
    CHECK(*report.fit_aimed_mm == doctest::Approx(session.work->job.fit.clearance.mm()));
}

TEST_CASE("what was moved at a jig is told as its pin, and the log says so") {
    Session session = fingered();
    const std::string setup = setup_of(session, side_row);
    session = tests::tested(session, setup, {mm("fit", -0.1), mm("socket_width", 6.35)});
    TestCut cut = reading(setup, "fit", 0.1);
    cut.fresh_end = true;
    cut.moved = std::vector<NamedLength>{mm("pin", -0.2)};
    const auto entry = test_entry(*session.work, cut, now);
    REQUIRE(entry);
    CHECK(entry->moved == std::vector<NamedLength>{mm("fence", -0.2)});
    CHECK(says(say_told(*session.work, *entry), "moved pin"));
    cut.moved = std::vector<NamedLength>{mm("spindle", -0.2)};
    const auto refused = test_entry(*session.work, cut, now);
    REQUIRE_FALSE(refused);
    CHECK(says(refused.error().remedy.text(session.work->job.locale), "`pin`"));
}

TEST_CASE("only a jig has a pin") {
    const Session session = tests::opened(tests::sample_json());
    const std::string setup = setup_of(session, "locking rabbet: side dado");
    TestCut cut = reading(setup, "lip", 6.3);
    cut.moved = std::vector<NamedLength>{mm("pin", 0.1)};
    const auto refused = test_entry(*session.work, cut, now);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().field == "moved");
}

TEST_CASE("a doubt about where a jig's pin stands speaks of the pin") {
    const Session session = fingered();
    const std::string setup = setup_of(session, side_row);
    TestCut cut = reading(setup, "finger_width", 12.7);
    cut.readings.push_back(mm("fit", -6.35));
    const auto refused = test_entry(*session.work, cut, now);
    REQUIRE_FALSE(refused);
    const std::string said = refused.error().why.text(session.work->job.locale) + " | " +
                             refused.error().remedy.text(session.work->job.locale);
    INFO(said);
    CHECK(says(said, "the pin "));
    CHECK_FALSE(says(said, "fence"));
}

TEST_CASE("where a length is cut against a stop, the stop is what is changed") {
    const Session session = fingered();
    const Work& work = *session.work;
    int stops = 0;
    for (const RestStep& step : work.rest.steps) {
        const Setup& setup = *work.plan.setup_with_id(step.setup);
        const std::string changes = say_changes(work, step);
        if (setup.guide != "stop") continue;
        CAPTURE(changes);
        CHECK_FALSE(says(changes, "fence"));
        stops += says(changes, "the stop");
    }
    CHECK(stops > 0);
}

TEST_CASE(
    "a machine is needed as it stands by what comes next there by the same lock, and not as a step before "
    "had it") {
    Session session = fingered();
    const std::string sides = setup_of(session, side_row), ends = setup_of(session, end_row);
    for (const std::string& id : {sides, ends})
        session = tests::made_ready(session, id, tests::passes_of(session, id), now);
    session = tests::ran(tests::locked_unmoved(session, sides), sides, tests::passes_of(session, sides), now);
    const Plan& plan = session.work->plan;
    REQUIRE(plan.setup_with_id(sides)->machine == plan.setup_with_id(ends)->machine);
    for (const Setup& other : plan.setups)
        if (other.id != sides) CHECK(needs_as_it_stands(*session.work, other) == nullptr);
    REQUIRE(needs_as_it_stands(*session.work, *plan.setup_with_id(sides)));
    CHECK(needs_as_it_stands(*session.work, *plan.setup_with_id(sides))->setup == ends);
    const std::string said = say_done(*session.work, *plan.setup_with_id(sides));
    INFO(said);
    CHECK(says(said, "needs it so, but for the spacer"));
}
