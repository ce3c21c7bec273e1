// Cards of work that has begun.

#include <algorithm>

#include "print/card_matter.h"
#include "print/job_to_print.h"
#include "session/made_ready.h"

using namespace kw::print;
using namespace kw;

namespace {

CardMatter card_of(const Session& session, const std::string& step) {
    return card_matter(*session.work, step_of(session.work->plan, step), {});
}

std::size_t ends_of(const CardMatter& card, bool has_run) {
    std::size_t count = 0;
    for (const PartToRun& part : card.parts)
        for (const EndToRun& end : part.ends) count += end.has_run == has_run;
    return count;
}

}  // namespace

TEST_CASE("what has run is ticked on its card, and the rest is not") {
    Session session = tests::opened(tests::sample_json());
    const std::string first = session.work->plan.sequence.front();
    CHECK(ends_of(card_of(session, first), true) == 0);
    session = tests::ran(std::move(session), first, {0, 1}, tests::now);
    const CardMatter card = card_of(session, first);
    CHECK(ends_of(card, true) == 2);
    CHECK(ends_of(card, false) == session.work->plan.setup_with_id(first)->passes.size() - 2);
}

TEST_CASE("a joint that is locked has no fields for a test cut, and says that it is locked") {
    Session session = tests::opened(tests::sample_json());
    const std::string setup = tests::setup_of(session, tests::side_dado);
    const CardMatter before = card_of(session, setup);
    REQUIRE(before.test);
    CHECK(before.test->readings.front() == "Front's thickness");
    CHECK(before.state.empty());
    session = tests::made_ready(std::move(session), setup, {0}, tests::now);
    session = tests::locked_unmoved(session, setup);
    const CardMatter after = card_of(session, setup);
    CHECK(after.state == "Locked as tested: leave it set");
    CHECK_FALSE(after.test);
}

TEST_CASE("a joint that is locked before its parts are ready is tested again when it is set again") {
    Session session = tests::opened(tests::sample_json());
    const std::string setup = tests::setup_of(session, tests::side_dado);
    session = tests::locked_unmoved(session, setup);
    const CardMatter card = card_of(session, setup);
    CHECK(
        card.state ==
        "Locked, and to be torn down before these parts: then set it again as it was locked, and test first");
    CHECK(card.test);
}

TEST_CASE("a setup that is set again has a card for each time, and each end stands on one of them") {
    Session session = tests::opened(tests::sample_json());
    const std::string setup = tests::setup_of(session, tests::side_dado);
    session = tests::made_ready(std::move(session), setup, {0}, tests::now);
    session = tests::locked_unmoved(session, setup);
    session = tests::ran(std::move(session), setup, {0}, tests::now);
    session = tests::locked_unmoved(session, tests::setup_of(session, "back dado"));
    REQUIRE(is_torn_down(*session.work, *session.work->plan.setup_with_id(setup)));
    const Plan& plan = session.work->plan;
    std::size_t open = 0;
    for (const std::string& step : plan.sequence)
        if (step.substr(0, step.find('#')) == setup) {
            const CardMatter card = card_of(session, step);
            open += ends_of(card, false);
            CHECK(card.state == "Was locked, then torn down: set it again as it was locked, and test first");
        }
    CHECK(open == plan.setup_with_id(setup)->passes.size() - 1);
    // Every step has its card.
    const auto pages = setup_cards(*session.work, Paper::a4);
    std::size_t cards = 0;
    for (const Page& page : pages)
        for (const Item& item : page.items)
            if (const auto* text = std::get_if<Text>(&item))
                cards +=
                    text->text.rfind("Step ", 0) == 0 &&
                    text->text.find(" of " + std::to_string(plan.sequence.size())) != std::string::npos &&
                    text->text.find("continued") == std::string::npos;
    CHECK(cards == plan.sequence.size());
}
