#include "checker/fingered_job.h"

#include <algorithm>

namespace checker {
namespace {

// A captured panel of solid wood may have to be so narrow that it leaves its grooves.
bool has_solid_bottom(const Json& job, const Json& drawer) {
    const Json& all = job.at("stock");
    const auto stock = std::find_if(all.begin(), all.end(), [&](const Json& one) {
        return one.at("name") == drawer.at("bottom").at("stock");
    });
    return stock != all.end() && stock->value("kind", "plywood") == "solid";
}

}  // namespace

Json with_box_joints(Json job) {
    for (Json& drawer : job["drawers"]) {
        if (has_solid_bottom(job, drawer)) continue;
        for (const char* place : {"front", "back"}) {
            Json& part = drawer[place];
            part["joint"] = "box joint";
            for (const char* field : {"depth", "dado_width", "setback", "cutter"}) part.erase(field);
        }
        drawer["bottom"]["style"] = "captured";
        drawer["bottom"].erase("depth");  // which was right for the boards that had its groove before
    }
    return job;
}

}  // namespace checker
