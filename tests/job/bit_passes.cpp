// A drawer whose only cutter for joints is a bit on a router table.
#include "half_inch_job.h"
#include "job/notes.h"

using namespace half_inch;

namespace {

Job at_the_router_table(std::optional<Length> depth_per_pass = std::nullopt) {
    Job job = half_inch_job();
    job.shop.machines.push_back(usual_machine("router", MachineKind::router_table));
    job.shop.cutters = {{"quarter bit", CutterKind::bit, "router", in(1, 4)}};
    job.shop.cutters.front().depth_per_pass = depth_per_pass;
    return job;
}

const Setup& setup_called(const Work& work, const std::string& what) {
    for (const Setup& setup : work.plan.setups)
        if (setup.work == what) return setup;
    FAIL("no setup does " << what);
    return work.plan.setups.front();
}

std::vector<std::string> notes_about(const Work& work, const std::string& id) {
    std::vector<std::string> notes;
    for (const Note& note : work.plan.notes)
        if (note.about == id) notes.push_back(note.text.text(Graduation::in_64));
    return notes;
}

}  // namespace

TEST_CASE(
    "a locking rabbet at the router table says the heights of its passes, and the last is the joint's own") {
    const auto work = worked(at_the_router_table());
    const Setup& dado = setup_called(*work, "locking rabbet: side dado");
    CHECK(dado.machine == "router");
    CHECK(*dado.height == in(1, 4));
    const std::vector<std::string> notes = notes_about(*work, dado.id);
    REQUIRE(notes.size() == 1);
    CHECK(notes[0] ==
          "in 2 passes: set the bit to 1/8 in, and last to the height given, each time for all ends and the "
          "test ends "
          "too; the last height is what is tested and locked");
}

TEST_CASE("the rabbet that is cut after the lock comes back to the height that was locked") {
    const auto work = worked(at_the_router_table(in(3, 32)));
    const Setup& rabbet = setup_called(*work, "locking rabbet: rabbet");
    bool found = false;
    for (const std::string& note : notes_about(*work, rabbet.id))
        found =
            found || note ==
                         "in 3 passes: set the bit to 3/32 in, 3/16 in, and last back to the height that was "
                         "locked, by a stop or a block that was set to it";
    CHECK(found);
}

TEST_CASE(
    "each pass of the bit costs each end once more, and the whole batch one more setting of the height") {
    const auto at_once = worked(at_the_router_table(in(1, 4))), twice = worked(at_the_router_table(in(1, 8)));
    const WorkTimes times = at_once->job.times;
    std::int64_t more = 0;
    for (const Setup& setup : twice->plan.setups) {
        if (setup.machine != "router") continue;
        REQUIRE(*setup.height > in(1, 8));  // each takes two passes
        REQUIRE(*setup.height <= in(1, 4));
        more += times.pass_s * static_cast<std::int64_t>(setup.passes.size()) + times.height_s;
    }
    CHECK(more > 0);
    CHECK(twice->plan.seconds == at_once->plan.seconds + more);
}

TEST_CASE("at the router table the feed is from right to left, and no work goes between bit and fence") {
    const auto work = worked(at_the_router_table());
    const auto cautions = cautions_for(work->job, setup_called(*work, "locking rabbet: side dado"));
    CHECK(cautions.front() ==
          "WARNING Feed from right to left as you stand at the table. Never between the bit and the fence.");
}

namespace {

// The sockets are 1/2 in deep.
Job fingered_at_the_router_table(Length depth_per_pass) {
    Job job = fingered_job();
    const Job router = at_the_router_table(depth_per_pass);
    job.shop = router.shop;
    return job;
}

bool says_low_pin(const Work& work, const std::string& id, const std::string& lower_than) {
    for (const std::string& note : notes_about(work, id))
        if (note.find("make the pin lower than " + lower_than + ":") == 0) return true;
    return false;
}

}  // namespace

// A socket stands over the pin, and is no deeper than the bit has come.
TEST_CASE("where a bit takes sockets in passes, the jig's pin is lower than the first of them") {
    for (const char* cut : {"box joint: side sockets", "box joint: end sockets"}) {
        const auto thrice = worked(fingered_at_the_router_table(in(3, 16)));
        CHECK(says_low_pin(*thrice, setup_called(*thrice, cut).id, "3/16 in"));
        const auto twice = worked(fingered_at_the_router_table(in(1, 4)));
        CHECK(says_low_pin(*twice, setup_called(*twice, cut).id, "1/4 in"));
        const auto at_once = worked(fingered_at_the_router_table(in(1, 2)));
        CHECK(notes_about(*at_once, setup_called(*at_once, cut).id).empty());
    }
}
