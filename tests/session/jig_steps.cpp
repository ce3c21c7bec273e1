// What is to be done at a jig from step to step. Common practice, no source.
#include <doctest/doctest.h>

#include <algorithm>

#include "session/jig_job.h"

using namespace kw;
using namespace kw::tests::jig;
using tests::locked_unmoved, tests::mm, tests::now, tests::setup_of;

TEST_CASE("a pin that is told to stand at the cutter's far side is nonsense, and is planned all the same") {
    const Session begun = row_locked(jig_job());
    for (const double by_mm : {-12.5984, -12.6, -30.0}) {
        TestCut nonsense;
        nonsense.setup = setup_of(begun, side_row);
        nonsense.moved = std::vector<NamedLength>{mm("fence", by_mm)};
        const Session session = tests::locked(begun, nonsense);
        for (const Pass& pass : row_named(session, side_row).passes) CHECK(pass.cuts < 500);
    }
}

TEST_CASE("moves that were advised and not made yet are named with the step") {
    Session session = tests::opened(jig_job());
    const std::string sides = setup_of(session, side_row);
    session = tests::made_ready(session, sides, tests::passes_of(session, sides), now);
    auto readings = row_readings(session, 6.45, 6.35, true);
    for (const NamedLength& more : {mm("stock_thickness", 12.1), mm("face_step", 0.0)})
        readings.push_back(more);
    session = tests::tested(session, sides, readings);
    REQUIRE(!fit_report(*session.work, sides)->moves.empty());
    const auto told = [&] { return say_changes(*session.work, step_of_setup(session, sides)); };
    CHECK(told().find("moves advised after its test cut") != std::string::npos);
    session = tests::locked(session, sides);
    CHECK(told().find("advised") == std::string::npos);
}

TEST_CASE("the spacer of a test's second cut comes off before the boards that take none") {
    Session session = row_locked(jig_job());
    const std::string sides = setup_of(session, side_row), ends = setup_of(session, end_row);
    CHECK(step_of_setup(session, sides).spacer_left);
    CHECK(changes_told(session, sides).find("Take the spacer off the pin") != std::string::npos);
    CHECK(
        say_changes(*session.work, step_of_setup(session, sides)).find("spacer of the test cut comes off") !=
        std::string::npos);
    CHECK_FALSE(step_of_setup(session, ends).spacer_left);
    session = tests::ran(session, sides, {0}, now);
    CHECK_FALSE(step_of_setup(session, sides).spacer_left);
    CHECK(changes_told(session, sides).find("spacer") == std::string::npos);
}

TEST_CASE("the sides' dado of a locking rabbet takes no spacer either") {
    Session session = tests::opened(tests::sample_json());
    const std::string dado = setup_of(session, tests::side_dado);
    session = tests::made_ready(session, dado, tests::passes_of(session, dado), now);
    CHECK_FALSE(step_of_setup(session, dado).spacer_left);
    session = tests::tested(session, dado, {mm("stock_thickness", 12.1), mm("fit", 0.1)});
    session = locked_unmoved(session, dado);
    CHECK(step_of_setup(session, dado).spacer_left);
    CHECK(changes_told(session, dado).find("Take the spacer off the fence") != std::string::npos);
}
