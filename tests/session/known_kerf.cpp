// A cutter that is known to cut wider or narrower than it is called, in a slot of several passes.
#include <doctest/doctest.h>

#include <cmath>

#include "sample_job.h"
#include "session/session.h"
#include "session/words.h"

using namespace kw;

namespace {

const std::string now = "2026-03-01T09:00:00Z";

Memory kerf_known(double wider_mm) {
    Believed kerf;
    kerf.what = Taught::kerf;
    kerf.machine = "saw";
    kerf.cutter = "quarter stack";
    kerf.kerf = Length::inches(1, 4);
    return correct({}, kerf, wider_mm, now);
}

// The passes of the back's dado, in turn.
std::vector<const Setup*> passes_of(const Work& work) {
    std::vector<const Setup*> passes;
    for (const Setup& setup : work.plan.setups)
        if (setup.work.rfind("back dado", 0) == 0) passes.push_back(&setup);
    return passes;
}

}  // namespace

TEST_CASE("the passes of a slot come to its width by the kerf that is known, by rule and by scale alike") {
    for (const double wider_mm : {-0.1, 0.0, 0.2}) {
        CAPTURE(wider_mm);
        const Session session = open_session(tests::sample_json(), kerf_known(wider_mm), now);
        REQUIRE(session.work);
        const Work& work = *session.work;
        const auto passes = passes_of(work);
        REQUIRE(passes.size() == 2);
        const Length width = work.plan.group_with_id(passes[0]->group)->slot().width;
        const ChosenJoint& chosen = work.plan.group_with_id(passes[0]->group)->work.chosen;
        const double known_mm = scales_for(work.memory, chosen.machine, chosen.cutter, now).kerf.offset_mm;
        const double kerf_mm = Length::inches(1, 4).mm() + known_mm;
        CHECK(std::abs(known_mm) >= 0.7 * std::abs(wider_mm));
        const double out_mm = (passes[1]->fence - passes[0]->fence).mm();
        const double by_scale_mm = (dial_of(work, *passes[1]).fence - dial_of(work, *passes[0]).fence).mm();
        // To half of a step of the fence.
        CHECK(std::abs(out_mm + kerf_mm - width.mm()) < 0.03);
        CHECK(by_scale_mm == doctest::Approx(out_mm).epsilon(0.0001));
        CHECK(passes[1]->kerf.mm() == doctest::Approx(kerf_mm).epsilon(0.00001));
        CHECK(say_from_pass_before(work, *passes[1]) ==
              caliper_text(work.job, passes[1]->fence - passes[0]->fence) + " out from the pass before");
    }
}

TEST_CASE(
    "to the far side it is as far as the cutter is known to cut, in one pass as in several, tested or not") {
    for (const double wider_mm : {-0.1, 0.0, 0.3}) {
        CAPTURE(wider_mm);
        const Session session = open_session(tests::sample_json(), kerf_known(wider_mm), now);
        REQUIRE(session.work);
        const Work& work = *session.work;
        int in_one_pass = 0;
        for (const Setup& setup : work.plan.setups) {
            const Group* group = work.plan.group_with_id(setup.group);
            if (!group || setup.cutter != "quarter stack") continue;
            CAPTURE(setup.work);
            const ChosenJoint& chosen = group->work.chosen;
            const double known_mm =
                scales_for(work.memory, chosen.machine, chosen.cutter, now).kerf.offset_mm;
            CHECK(std::abs(known_mm) >= 0.7 * std::abs(wider_mm));
            const double far_mm = fence_reading(work, setup, CutterSide::far).distance.mm();
            CHECK(far_mm ==
                  doctest::Approx(setup.fence.mm() + Length::inches(1, 4).mm() + known_mm).epsilon(1e-5));
            CHECK(fence_reading(work, setup, CutterSide::near).distance == setup.fence);
            in_one_pass += group->slot_passes() == 1 ? 1 : 0;
        }
        CHECK(in_one_pass > 0);
    }
}
