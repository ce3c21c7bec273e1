// Pictures of a cutter that is known to cut wider or narrower than it is called.

#include <doctest/doctest.h>

#include <optional>
#include <stdexcept>

#include "draw/setup_slide.h"
#include "draw/setup_view.h"
#include "draw/shapes_of.h"
#include "draw/view_job.h"

using namespace kw::draw;
using kw::Length;
using kw::Setup;

namespace {

std::shared_ptr<const kw::Work> work_with_known_kerf(double wider_mm) {
    kw::Believed kerf;
    kerf.what = kw::Taught::kerf;
    kerf.machine = "saw";
    kerf.cutter = "stack";
    kerf.kerf = view_job::Wanted{}.kerf;
    const std::string day = "2026-03-01T09:00:00Z";
    auto made = kw::work_out(view_job::job({}), kw::correct({}, kerf, wider_mm, day), day);
    if (!made) throw std::runtime_error("the job with a known kerf cannot be worked out");
    return *made;
}

}  // namespace

TEST_CASE("a stack that stays on is as wide in every picture, and as wide as it is known to cut") {
    for (const double wider_mm : {-0.3, 0.3}) {
        CAPTURE(wider_mm);
        const auto work = work_with_known_kerf(wider_mm);
        std::optional<SetupScene> before;
        int in_one_pass = 0;
        for (const Setup& setup : work->plan.setups) {
            if (setup.cutter != "stack") continue;
            CAPTURE(setup.work);
            const auto scene = setup_scene(*work, setup);
            REQUIRE(scene);
            const double wider = (scene->kerf - view_job::Wanted{}.kerf).mm();
            CHECK(wider == doctest::Approx(wider_mm).epsilon(0.3));
            CHECK(scene->far() == setup.fence + scene->kerf);
            if (before)
                for (const Dimension& dimension :
                     shapes_of::all<Dimension>(setup_slide(*before, *scene, 0.5, {})))
                    if (dimension.text.starts_with("kerf")) CHECK_FALSE(dimension.change);
            before = scene;
            in_one_pass += work->plan.group_with_id(setup.group)->slot_passes() == 1 ? 1 : 0;
        }
        CHECK(in_one_pass > 0);
    }
}

TEST_CASE("what the earlier passes of a slot cleared reaches as far as they are known to have cut") {
    for (const double wider_mm : {-0.3, 0.0, 0.3}) {
        CAPTURE(wider_mm);
        const auto work = work_with_known_kerf(wider_mm);
        int later = 0;
        for (const Setup& setup : work->plan.setups) {
            if (setup.stage != kw::Stage::joint || setup.work.find(", pass ") == std::string::npos) continue;
            CAPTURE(setup.work);
            // As one finds it in the list of setups: from the first pass's fence to where the pass before this one cut.
            std::optional<SetupScene> first, before;
            for (const Setup& other : work->plan.setups) {
                if (other.id == setup.id) break;
                if (other.group != setup.group) continue;
                before = *setup_scene(*work, other);
                if (!first) first = before;
            }
            const SetupScene scene = *setup_scene(*work, setup);
            if (!before) {
                CHECK(scene.cleared == Length{});
                continue;
            }
            ++later;
            CHECK(scene.fence_before == first->fence);
            CHECK(scene.fence_before + scene.cleared == before->far());
        }
        CHECK(later >= 1);  // a stack that cuts wide takes fewer
    }
}
