// What is said to change at a machine for the next step. Common practice, no source.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/setup_said.h"
#include "session/words.h"

using namespace kw;
using tests::mm, tests::now, tests::passes_of, tests::setup_of;

namespace {

std::string told_for(const Session& session, const std::string& id) {
    const auto& steps = session.work->rest.steps;
    const auto found =
        std::find_if(steps.begin(), steps.end(), [&](const RestStep& step) { return step.setup == id; });
    REQUIRE(found != steps.end());
    return say_changes(*session.work, *found);
}

// Read with the fence so much farther out, and the cutter so much higher, than designed.
std::vector<NamedLength> joint_off_by(const Session& session, const std::string& setup, double out_mm,
                                      double up_mm) {
    const Settings& s =
        session.work->plan.group_with_id(session.work->plan.setup_with_id(setup)->group)->designed;
    const double h = s.height.mm() + up_mm, f = s.fence.mm() + out_mm, k = s.kerf.mm();
    return {mm("stock_thickness", 12.1),
            mm("dado_width", k),
            mm("dado_depth", h),
            mm("lip", f),
            mm("fit", k + h - 12.1),
            mm("tongue_thickness", 12.1 - h),
            mm("tongue_length", f + k - s.spacer.mm())};
}

}  // namespace

TEST_CASE(
    "a stop that stands at the length of before a correction is set anew for the part that is made again") {
    Session session = tests::opened(tests::sample_json());
    const std::string dado = setup_of(session, tests::side_dado),
                      fronts = setup_of(session, "crosscut to length: fronts");
    session = tests::ran(session, fronts, passes_of(session, fronts), now);
    CHECK(session.work->rest.sized_to.empty());
    const Length stood = session.work->plan.setup_with_id(fronts)->fence;
    // The tongue comes out longer than planned, and with it the fronts.
    session = tests::tested(session, dado, joint_off_by(session, dado, 0.3, 0.0));
    session = tests::locked_unmoved(session, dado);
    session = apply(session, MarkLost{"seeds.1.front", false}, now);
    const Setup& again = *session.work->plan.setup_with_id(fronts);
    REQUIRE(abs(again.fence - stood) > Length::micrometres(100));
    CHECK(session.work->rest.sized_to.at("chop") == stood);
    CHECK(told_for(session, fronts).find("the stop") != std::string::npos);
    const auto& sequence = session.work->plan.sequence;
    const auto at = std::find(sequence.begin(), sequence.end(), fronts) - sequence.begin();
    std::string all;
    for (const std::string& one :
         setup_changes(*session.work, before_at_machine(*session.work, std::size_t(at)), again,
                       CutterSide::near)
             .change)
        all += one;
    INFO(all);
    CHECK(all.find("stop") != std::string::npos);
}

TEST_CASE("a blade goes up for a cut through the board, and down again for a slot") {
    Session session = tests::opened(tests::sample_json());
    const Plan& plan = session.work->plan;
    int through = 0;
    for (const RestStep& step : session.work->rest.steps) {
        const auto at =
            std::find(plan.sequence.begin(), plan.sequence.end(), step.step) - plan.sequence.begin();
        const Setup *before = before_at_machine(*session.work, std::size_t(at)),
                    *is = plan.setup_with_id(step.setup);
        if (!before || before->cutter != is->cutter || before->height.has_value() == is->height.has_value())
            continue;
        ++through;
        CHECK(say_changes(*session.work, step).find("the height") != std::string::npos);
    }
    CHECK(through > 0);
}
