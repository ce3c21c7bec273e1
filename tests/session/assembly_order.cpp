// In which order a drawer is put together: rules of the trade (common practice, no source), for every style of drawer.
#include <doctest/doctest.h>

#include <algorithm>

#include "drawer/squareness.h"
#include "job/assembly_order.h"
#include "sample_job.h"
#include "session/made_ready.h"

using namespace kw;

namespace {

std::vector<AssemblyStep> steps_of(const Session& session) {
    const DrawerDesign& drawer = session.work->standing_design.drawers.at(0);
    return assembly_order(session.work->job, drawer, equal_diagonal(sides_of(drawer.box)));
}

// The step that puts it on.
std::size_t place_of(const std::vector<AssemblyStep>& steps, Role role) {
    for (std::size_t i = 0; i < steps.size(); ++i)
        if (std::find(steps[i].puts.begin(), steps[i].puts.end(), role) != steps[i].puts.end()) return i;
    return steps.size();
}

std::string all_text(const Session& session) {
    std::string text;
    for (const AssemblyStep& step : steps_of(session))
        text += step.text.text(session.work->job.locale) + "\n";
    return text;
}

Json with_bottom(const char* style, const char* kind) {
    Json job = tests::sample_json();
    job["drawers"][0]["bottom"]["style"] = style;
    for (Json& stock : job["stock"])
        if (stock["name"] == job["drawers"][0]["bottom"]["stock"]) stock["kind"] = kind;
    return job;
}

}  // namespace

TEST_CASE("every board is put on once, and each corner is brushed with glue once") {
    for (const char* style : {"slide in", "captured"})
        for (const char* kind : {"plywood", "solid"}) {
            const auto steps = steps_of(tests::opened(with_bottom(style, kind)));
            for (const Role role :
                 {Role::front, Role::back, Role::side_left, Role::side_right, Role::bottom}) {
                std::size_t times = 0;
                for (const AssemblyStep& step : steps)
                    times += static_cast<std::size_t>(std::count(step.puts.begin(), step.puts.end(), role));
                CHECK(times == 1);
            }
            std::vector<std::pair<bool, bool>> corners;
            for (const AssemblyStep& step : steps)
                for (const GlueSpot& spot : step.glue) corners.emplace_back(spot.at_back, spot.on_right_side);
            std::sort(corners.begin(), corners.end());
            CHECK(corners == std::vector<std::pair<bool, bool>>{
                                 {false, false}, {false, true}, {true, false}, {true, true}});
        }
}

TEST_CASE(
    "glue goes into the side that lies, and not into the one that is turned over; with a relief not on end "
    "grain") {
    const Session session = tests::opened(tests::sample_json());
    for (const AssemblyStep& step : steps_of(session))
        for (const GlueSpot& spot : step.glue)
            CHECK(spot.on_right_side == step.puts.empty());  // the side that lies is brushed and set at once
    CHECK(all_text(session).find("on the cheeks of the ends") != std::string::npos);
    Json tight = tests::sample_json();
    tight["fit"]["end_relief"] = 0;
    CHECK(all_text(tests::opened(tight)).find("on the ends of front and back") != std::string::npos);
}

TEST_CASE("a captured bottom goes in before the second side, one that slides in after it") {
    const auto captured = steps_of(tests::opened(with_bottom("captured", "plywood")));
    CHECK(place_of(captured, Role::bottom) < place_of(captured, Role::side_right));
    CHECK(place_of(captured, Role::bottom) > place_of(captured, Role::side_left));
    const auto sliding = steps_of(tests::opened(with_bottom("slide in", "plywood")));
    CHECK(place_of(sliding, Role::bottom) > place_of(sliding, Role::side_right));
}

TEST_CASE("insides are finished before any glue, outsides after all of it, and a dry fit comes first") {
    const Session session = tests::opened(tests::sample_json());
    const std::string text = all_text(session);
    CHECK(text.find("Dry fit first") == 0);
    CHECK(text.find("Finish the insides") < text.find("Brush glue"));
    CHECK(text.find("finish the outsides") > text.rfind("Brush glue"));
    // sqrt(13 3/8^2 + 17 3/4^2) in = 22.2253 in; worked by hand
    CHECK(text.find("22 7/32 in +") != std::string::npos);
}

TEST_CASE("a solid bottom gets no glue in its grooves, and where it slides in it is free at the back") {
    CHECK(all_text(tests::opened(with_bottom("captured", "solid"))).find("without glue: solid wood") !=
          std::string::npos);
    CHECK(all_text(tests::opened(with_bottom("slide in", "solid"))).find("leave it free at the back") !=
          std::string::npos);
    Json beech = with_bottom("slide in", "solid");
    for (Json& stock : beech["stock"])
        if (stock["kind"] == "solid") stock["species"] = "American beech", stock["moisture"] = 8;
    CHECK(all_text(tests::opened(beech)).find("one screw in a slot at least") != std::string::npos);
}
