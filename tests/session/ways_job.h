#pragma once
// The demo job, opened in so many of each drawer, and what was chosen for its joints.

#include <doctest/doctest.h>

#include <algorithm>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/say_ways.h"
#include "session/session.h"

namespace ways_job {

using namespace kw;
using tests::now, tests::opened;

inline Json demo(int count) {
    Json job = tests::demo_json();
    for (Json& drawer : job["drawers"]) drawer["count"] = count;
    return job;
}

inline Json without_chippers(Json job) {
    for (Json& cutter : job["cutters"]) cutter.erase("spare_chippers");
    return job;
}

// The stack stays as it stands.
inline Json without_pieces(Json job) {
    for (Json& cutter : job["cutters"]) cutter.erase("spare_shims");
    return without_chippers(std::move(job));
}

inline const DrawerDesign& drawer_named(const Work& work, const std::string& name) {
    const auto& drawers = work.design.drawers;
    const auto found = std::find_if(drawers.begin(), drawers.end(),
                                    [&](const DrawerDesign& drawer) { return drawer.spec->name == name; });
    REQUIRE(found != drawers.end());
    return *found;
}

inline bool is_made_up(const ChosenJoint& chosen) { return !chosen.cutter.chippers.empty(); }

inline const WayReason& reason_for(const Work& work, const std::string& label, const std::string& drawer) {
    const auto found = std::find_if(work.reasons.begin(), work.reasons.end(), [&](const WayReason& one) {
        return one.label == label && one.drawers == std::vector<std::string>{drawer};
    });
    REQUIRE(found != work.reasons.end());
    return *found;
}

}  // namespace ways_job
