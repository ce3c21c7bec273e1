// A cutter that is known to cut wider or narrower than it is called, in a slot of several passes.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"
#include "session/words.h"

using namespace kw;
using tests::now;

namespace {

// The passes of the back's dado, in turn.
std::vector<const Setup*> back_dado_passes(const Work& work) {
    std::vector<const Setup*> passes;
    for (const Setup& setup : work.plan.setups)
        if (setup.work.rfind("back dado", 0) == 0) passes.push_back(&setup);
    return passes;
}

// The slots of the plan that are called for several passes: their setups in the order of their fences.
std::map<std::string, std::vector<const Setup*>> slots_of(const Work& work) {
    std::map<std::string, std::vector<const Setup*>> slots;
    for (const Setup& setup : work.plan.setups) {
        const Group* group = work.plan.group_with_id(setup.group);
        if (!group || !group->cuts_slot || group->designed.shift <= Length{}) continue;
        if (group->cuts_end && setup.work.find(": " + group->slot().name) == std::string::npos) continue;
        slots[group->key].push_back(&setup);
    }
    for (auto& [key, passes] : slots)
        std::sort(passes.begin(), passes.end(),
                  [](const Setup* a, const Setup* b) { return a->fence < b->fence; });
    return slots;
}

// What the passes leave: one slot of its width, with no ridge in it, by the plan's numbers and by the scales'.
void check_slot(const Work& work, const std::vector<const Setup*>& passes, double kerf_mm) {
    const Group& group = *work.plan.group_with_id(passes.front()->group);
    CAPTURE(group.key);
    CAPTURE(kerf_mm);
    CHECK(passes.size() == std::size_t(group.slot_passes()));
    const double fit_mm = work.job.fit.tolerance.fit.mm();
    const auto check = [&](const auto& fence_of) {
        double narrowest = 0.0;
        for (std::size_t i = 1; i < passes.size(); ++i)
            narrowest = std::max(narrowest, fence_of(*passes[i]) - fence_of(*passes[i - 1]) - kerf_mm);
        CHECK(narrowest <= 0.05);
        const double width_mm = fence_of(*passes.back()) - fence_of(*passes.front()) + kerf_mm;
        // A cutter that is wider than the slot can't make it narrower.
        CHECK(std::abs(width_mm - std::max(kerf_mm, group.slot().width.mm())) <= fit_mm);
    };
    check([](const Setup& pass) { return pass.fence.mm(); });
    check([&](const Setup& pass) { return dial_of(work, pass).fence.mm(); });
    if (passes.size() > 1)
        for (std::size_t i = 0; i < passes.size(); ++i)
            CHECK(passes[i]->work.find(", pass " + std::to_string(i + 1) + " of " +
                                       std::to_string(passes.size())) != std::string::npos);
}

// The back is of a board `thick_mm` thick: its dado is as wide as that, and a little.
Json with_back(double thick_mm) {
    Json job = tests::sample_json();
    job["stock"].push_back(
        Json{{"name", "backs"}, {"thickness", std::to_string(thick_mm) + " mm"}, {"kind", "plywood"}});
    job["drawers"][0]["back"]["stock"] = "backs";
    return job;
}

double known_mm(const Work& work, const Group& group) {
    const ChosenJoint& chosen = group.work.chosen;
    return scales_for(work.memory, chosen.machine, chosen.cutter, now).kerf.offset_mm;
}

}  // namespace

TEST_CASE("over random kerfs that are known, the passes make one slot of its width with no ridge in it") {
    std::mt19937 dice(7);
    std::uniform_real_distribution<double> thick(6.3, 19.5), wider(-1.2, 0.8);
    int more = 0, fewer = 0;
    for (int trial = 0; trial < 40; ++trial) {
        // Every fourth is a little wider than two kerfs as called, by a stack that is known to cut wider.
        const bool just_over = trial % 4 == 0;
        const double wider_mm = just_over ? std::abs(wider(dice)) + 0.2 : wider(dice),
                     thick_mm = just_over ? 12.75 + 0.1 * std::abs(wider(dice)) : thick(dice);
        CAPTURE(wider_mm);
        CAPTURE(thick_mm);
        Session session = open_session(with_back(thick_mm), tests::off_by(Taught::kerf, wider_mm), now);
        REQUIRE(session.work);
        const bool locks = trial % 3 == 0;
        std::map<std::string, int> planned;
        for (const auto& [key, passes] : slots_of(*session.work)) {
            const Group& group = *session.work->plan.group_with_id(passes.front()->group);
            const double known = known_mm(*session.work, group);
            // The grooves are cut by the ripping blade, of which nothing is known.
            if (group.work.chosen.cutter.name == "quarter stack")
                CHECK(std::abs(known) >= 0.7 * std::abs(wider_mm));
            check_slot(*session.work, passes, group.designed.kerf.mm() + known);
            const int called = passes_for(group.slot().width, group.designed.kerf);
            planned[key] = int(passes.size());
            more += planned[key] > called ? 1 : 0;
            fewer += planned[key] < called ? 1 : 0;
            const auto& notes = session.work->plan.notes;
            CHECK((planned[key] != called) == std::any_of(notes.begin(), notes.end(), [&](const Note& note) {
                      return note.about == group.work.label &&
                             note.text.text(Graduation::in_64).find("is known to cut") != std::string::npos;
                  }));
        }
        if (!locks) continue;
        // Once it is locked, it keeps its passes, whatever the shop learns of the cutter then.
        const std::string first =
            session.work->plan.setup_with_id(back_dado_passes(*session.work)[0]->id)->id;
        TestCut lock;
        lock.setup = first;
        session = apply(session, LockGroup{lock}, now);
        REQUIRE(session.refused.empty());
        const std::string key =
            session.work->plan.group_with_id(session.work->plan.setup_with_id(first)->group)->key;
        const double then_mm = session.work->standing.groups.at(key).start.scales.kerf.offset_mm;
        session = open_session(session.document, tests::off_by(Taught::kerf, -wider_mm), now);
        REQUIRE(session.work);
        const auto slots = slots_of(*session.work);
        REQUIRE(slots.contains(key));
        CHECK(int(slots.at(key).size()) == planned[key]);
        check_slot(*session.work, slots.at(key), Length::inches(1, 4).mm() + then_mm);
    }
    CHECK(more > 5);
    CHECK(fewer > 2);
}

TEST_CASE("a pass more that a narrow cutter asks for is planned, timed and numbered beside the others") {
    const Session called = open_session(with_back(12.1), {}, now),
                  narrow = open_session(with_back(12.1), tests::off_by(Taught::kerf, -0.6), now);
    REQUIRE(called.work);
    REQUIRE(narrow.work);
    const auto two = back_dado_passes(*called.work), three = back_dado_passes(*narrow.work);
    REQUIRE(two.size() == 2);
    REQUIRE(three.size() == 3);
    CHECK(narrow.work->plan.seconds > called.work->plan.seconds);
    CHECK(narrow.work->plan.sequence.size() > called.work->plan.sequence.size());
    // What is learned in the midst of the work leaves the other setups their names.
    for (const Setup& setup : called.work->plan.setups) {
        if (setup.group.empty()) continue;
        const Setup* same = narrow.work->plan.setup_with_id(setup.id);
        REQUIRE(same);
        CHECK(cut_of(same->work).substr(0, 4) == cut_of(setup.work).substr(0, 4));
    }
    CHECK(three[2]->id.back() == 'b');
}

TEST_CASE("the passes of a slot come to its width by the kerf that is known, by rule and by scale alike") {
    for (const double wider_mm : {-0.1, 0.0, 0.2}) {
        CAPTURE(wider_mm);
        const Session session =
            open_session(tests::sample_json(), tests::off_by(Taught::kerf, wider_mm), now);
        REQUIRE(session.work);
        const Work& work = *session.work;
        const auto passes = back_dado_passes(work);
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
        const Session session =
            open_session(tests::sample_json(), tests::off_by(Taught::kerf, wider_mm), now);
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
