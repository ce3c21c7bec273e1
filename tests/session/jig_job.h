#pragma once
// Drawers with fingers at all corners, at the jig, and ways to test and to look at their rows.

#include <doctest/doctest.h>

#include <algorithm>

#include "job/set_to.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/setup_said.h"
#include "session/words.h"

namespace kw::tests::jig {

inline const std::string side_row = "box joint: side sockets", end_row = "box joint: end sockets";

// Fingers at all corners, all boards equally thick.
inline Json fingered_json() {
    Json job = tests::sample_json();
    for (Json& drawer : job["drawers"]) {
        for (const char* place : {"front", "back"}) {
            drawer[place]["joint"] = "box joint";
            for (const char* field : {"depth", "setback"}) drawer[place].erase(field);
        }
        drawer["bottom"]["style"] = "captured";
    }
    return job;
}

inline Session fingered() { return opened(fingered_json()); }

// The same, of fronts and backs as thick as that.
inline Json jig_job(const char* front_thickness = "12.1 mm") {
    Json job = fingered_json();
    job["stock"].push_back({{"name", "fronts"}, {"thickness", front_thickness}, {"kind", "plywood"}});
    for (Json& drawer : job["drawers"])
        for (const char* place : {"front", "back"}) drawer[place]["stock"] = "fronts";
    return job;
}

inline const Setup& row_named(const Session& session, const std::string& work) {
    return *session.work->plan.setup_with_id(setup_of(session, work));
}

inline const Group& group_of_row(const Session& session, const std::string& work) {
    return *session.work->plan.group_with_id(row_named(session, work).group);
}

inline int measured_to(const Session& session) {
    const Group& group = group_of_row(session, side_row);
    return row_to(group, start_of(*session.work, group));
}

// Fingers and sockets as wide as that, sockets as deep as they are to be; `row`: measured over all of it.
inline std::vector<NamedLength> row_readings(const Session& session, double finger_mm, double socket_mm,
                                             bool row) {
    const Length deep = row_named(session, side_row).height.value();
    std::vector<NamedLength> all{mm("socket_width", socket_mm),
                                 mm("finger_width", finger_mm),
                                 mm("fit", socket_mm - finger_mm),
                                 {"depth", deep}};
    if (row) all.push_back(mm("row", measured_to(session) * (finger_mm + socket_mm)));
    return all;
}

inline Session tested_once(const Session& before, const std::string& work, std::vector<NamedLength> readings,
                           bool fresh_end = false) {
    TestCut cut = tests::test_cut(setup_of(before, work), std::move(readings));
    cut.fresh_end = fresh_end;
    cut.sure = true;
    Session after = apply(before, SaveTest{cut}, now);
    INFO(after.refused);
    REQUIRE(after.refused.empty());
    return after;
}

// With all boards at their size before, so that the saw stands as it was tested.
inline Session row_locked(const Json& job, double finger_mm = 6.25, double socket_mm = 6.35) {
    Session begun = tests::opened(job);
    const std::string sides = setup_of(begun, side_row);
    begun = tests::made_ready(begun, sides, tests::passes_of(begun, sides), now);
    for (const char* rip : {"rip to width: sides and fronts", "rip to width: backs"}) {
        const std::string id = setup_of(begun, rip);
        begun = tests::ran(begun, id, tests::passes_of(begun, id), now);
    }
    const Session tested = tested_once(begun, side_row, row_readings(begun, finger_mm, socket_mm, true));
    return locked_unmoved(tested, setup_of(tested, side_row));
}

inline Session lost(const Session& before, const std::string& part) {
    Session after = apply(before, MarkLost{part, false}, now);
    REQUIRE(after.refused.empty());
    return after;
}

// The sides have gone through; then the saw was used for the groove, and one side is to be made again.
inline Session to_be_set_again() {
    Session session = row_locked(jig_job());
    const std::string sides = setup_of(session, side_row);
    session = tests::ran(session, sides, tests::passes_of(session, sides), now);
    session = locked_unmoved(session, setup_of(session, "groove"));
    session = lost(session, "seeds.1.side_left");
    REQUIRE(is_torn_down(*session.work, row_named(session, side_row)));
    return session;
}

inline const RestStep& step_of_setup(const Session& session, const std::string& id) {
    const auto& steps = session.work->rest.steps;
    const auto found =
        std::find_if(steps.begin(), steps.end(), [&](const RestStep& step) { return step.setup == id; });
    REQUIRE(found != steps.end());
    return *found;
}

inline std::string changes_told(const Session& session, const std::string& id) {
    const Work& work = *session.work;
    const auto& sequence = work.plan.sequence;
    const auto at = std::find(sequence.begin(), sequence.end(), id) - sequence.begin();
    const Setup& setup = *work.plan.setup_with_id(id);
    std::string all;
    for (const std::string& one :
         setup_changes(work, before_at_machine(work, std::size_t(at)), setup, CutterSide::far).change)
        all += one + "; ";
    return all;
}

}  // namespace kw::tests::jig
