// What to set for a test cut is said as the page at the saw says it: by the scale where that is known to be off, and to the side of the
// cutter that the maker measures to.
#include <doctest/doctest.h>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"
#include "session/words.h"

using namespace kw;
using tests::now, tests::off_by;

namespace {

// Line by line with the setups of the group that it tells to cut.
template <class Check>
int for_cuts(const Work& work, CutterSide side, Check check) {
    int seen = 0;
    for (const Group& group : work.plan.groups) {
        std::vector<const Setup*> its;
        for (const Setup& setup : work.plan.setups)
            if (setup.group == group.id) its.push_back(&setup);
        if (its.empty() || its.front()->cutter != "quarter stack") continue;
        const auto lines = say_test(work, its.front()->id, side);
        REQUIRE(lines.size() == its.size() + 1);
        for (std::size_t i = 0; i < its.size(); ++i) {
            CAPTURE(lines[i]);
            check(lines[i], *its[i]);
            ++seen;
        }
    }
    return seen;
}

bool says(const std::string& line, const std::string& words) { return line.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("a test cut is set by the scales where they are known to be off") {
    const Session fence = open_session(tests::sample_json(), off_by(Taught::fence, 0.5), now);
    CHECK(for_cuts(*fence.work, CutterSide::near, [&](const std::string& line, const Setup& setup) {
              const Dial dial = dial_of(*fence.work, setup);
              CHECK(says(line, "fence scale at " + caliper_text(fence.work->job, dial.fence)));
              CHECK_FALSE(says(line, "fence at"));
          }) > 2);
    const Session height = open_session(tests::sample_json(), off_by(Taught::height, 0.5), now);
    CHECK(for_cuts(*height.work, CutterSide::near, [&](const std::string& line, const Setup& setup) {
              const Dial dial = dial_of(*height.work, setup);
              CHECK(says(line, "height scale at " + caliper_text(height.work->job, dial.height)));
          }) > 2);
}

TEST_CASE(
    "a test cut's fence is told to the side of the cutter that the maker measures to, and its height with "
    "it") {
    const Session session = open_session(tests::sample_json(), {}, now);
    const Work& work = *session.work;
    for (const CutterSide side : {CutterSide::near, CutterSide::far})
        for_cuts(work, side, [&](const std::string& line, const Setup& setup) {
            const FenceReading fence = fence_reading(work, setup, side);
            CHECK(says(line, "fence at " + show_with_unit(fence.distance, work.job.locale)));
            CHECK(says(line, " to the " + fence.side + " side"));
            CHECK(says(line, "height " + show_with_unit(*setup.height, work.job.locale)));
        });
}

TEST_CASE("a test cut's height makes up for the cutter as the page at the saw does") {
    // Where a stack is known to cut wide, a first setting makes up for it: where it does, that is what is told.
    const Session session = open_session(tests::sample_json(), off_by(Taught::kerf, 0.4), now);
    const Work& work = *session.work;
    int made_up_for = 0;
    for_cuts(work, CutterSide::near, [&](const std::string& line, const Setup& setup) {
        const SetTo set = set_to(work, setup);
        if (set.height->by_scale || set.dial.height_beyond == Length{}) return;
        CHECK(says(line, "height " + show_with_unit(set.height->truly, work.job.locale)));
        ++made_up_for;
    });
    CHECK(made_up_for > 0);
}
