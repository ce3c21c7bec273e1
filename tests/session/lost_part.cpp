// A part that is lost, and what is left to do then: from how the machines stand.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"
#include "session/words.h"

using namespace kw;
using tests::locked, tests::now, tests::opened;

namespace {

// The back is joined by tongue and dado, cut by the front's stack.
Json tongued_back() {
    Json job = tests::sample_json();
    job["drawers"][0]["back"]["joint"] = "tongue and dado";
    job["drawers"][0]["back"].erase("depth");
    return job;
}

// Two table saws: one with the stack, one that rips.
Json two_saws() {
    Json job = tests::sample_json();
    job["machines"].push_back(Json{{"name", "ripping saw"}, {"kind", "table saw"}});
    job["cutters"].erase(1);
    job["cutters"].push_back(
        Json{{"name", "ripping blade"}, {"kind", "blade"}, {"machine", "ripping saw"}, {"kerf", "1/8"}});
    // The first table saw is the one that sizes parts.
    std::swap(job["machines"][0], job["machines"][2]);
    return job;
}

std::string setup_called(const Session& session, const std::string& work) {
    for (const Setup& setup : session.work->plan.setups)
        if (setup.work == work) return setup.id;
    return {};
}

Session ran(Session session, const std::string& id, const std::vector<std::size_t>& passes) {
    return tests::ran(std::move(session), id, passes, now);
}

Session all_ran(const Session& session, const std::string& id) {
    std::vector<std::size_t> all(session.work->plan.setup_with_id(id)->passes.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
    return ran(session, id, all);
}

// As planned up to the setup, without it.
Session done_before(Session session, const std::string& id) {
    const auto sequence = session.work->plan.sequence;
    for (const std::string& step : sequence) {
        if (step == id) return session;
        session = all_ran(session, step);
    }
    return session;
}

// The maker has spoilt it.
Session with_lost(Session session, const std::string& part) {
    session.document["log"].push_back(Json{{"kind", "lost"}, {"time", now}, {"part", part}});
    return opened(session.document);
}

const RestStep* step_called(const Session& session, const std::string& step) {
    for (const RestStep& one : session.work->rest.steps)
        if (one.step == step) return &one;
    return nullptr;
}

// A joint is tested each time that it is set, and only then; what is said to stand was not disturbed before.
void check_what_stands(const Work& work) {
    std::map<std::string, std::string> set;  // by machine: the locked or tested group that it stands for
    for (const auto& [machine, setup] : work.rest.stands) {
        const Group* group = work.plan.group_with_id(work.plan.setup_with_id(setup)->group);
        const auto standing = group ? work.standing.groups.find(group->key) : work.standing.groups.end();
        if (standing != work.standing.groups.end() && standing->second.locked) set[machine] = group->id;
    }
    std::set<std::string> disturbed;
    for (const RestStep& step : work.rest.steps) {
        const Setup& setup = *work.plan.setup_with_id(step.setup);
        std::string& stands = set[setup.machine];
        if (step.still_set) CHECK_MESSAGE(!disturbed.contains(setup.machine), step.step);
        if (stands != setup.group) disturbed.insert(setup.machine);
        CHECK_MESSAGE((step.test_s > 0) == (!setup.group.empty() && stands != setup.group), step.step);
        stands = setup.group;
    }
}

std::size_t place_of_step(const Session& session, const std::string& step) {
    const auto& steps = session.work->rest.steps;
    return std::size_t(
        std::find_if(steps.begin(), steps.end(), [&](const RestStep& one) { return one.step == step; }) -
        steps.begin());
}

}  // namespace

TEST_CASE("before anything is done, what is left is the plan") {
    const Session session = opened(tests::sample_json());
    const Rest& rest = session.work->rest;
    CHECK_FALSE(rest.begun);
    CHECK(rest.done.empty());
    REQUIRE(rest.steps.size() == session.work->plan.setups.size());
    for (std::size_t i = 0; i < rest.steps.size(); ++i)
        CHECK(rest.steps[i].step == session.work->plan.setups[i].id);
    CHECK(rest.seconds == session.work->plan.seconds);
}

TEST_CASE("as long as it goes as planned, the order stays, and the time left goes down to nothing") {
    Session session = opened(tests::sample_json());
    const auto sequence = session.work->plan.sequence;
    std::int64_t left = session.work->rest.seconds;
    for (const std::string& step : sequence) {
        session = ran(session, step, {0});
        CHECK(session.work->plan.sequence == sequence);
        session = all_ran(session, step);
        CHECK(session.work->plan.sequence == sequence);
        CHECK(session.work->rest.seconds < left);
        left = session.work->rest.seconds;
    }
    CHECK(left == 0);
    CHECK(session.work->rest.steps.empty());
}

TEST_CASE(
    "a side lost where the only saw stands locked: first the parts that wait there, then it is set again for "
    "the side") {
    Session session = opened(tests::sample_json());
    const std::string dado = setup_called(session, "locking rabbet: side dado"),
                      rabbet = setup_called(session, "locking rabbet: rabbet"),
                      rip = setup_called(session, "rip to width: sides and fronts");
    session = locked(done_before(session, dado), dado);
    session = ran(session, dado, {0});
    const std::string side = session.work->plan.setup_with_id(dado)->passes[0].part;
    session = with_lost(session, side);
    // The other sides and the fronts come first, where the saw stands; the lost one needs the saw for its rip.
    REQUIRE(step_called(session, dado));
    REQUIRE(step_called(session, dado + "#2"));
    CHECK(step_called(session, dado)->still_set);
    CHECK(step_called(session, dado)->changes.empty());
    CHECK(step_called(session, dado + "#2")->set_again);
    CHECK(step_called(session, dado + "#2")->ends == 1);
    CHECK(place_of_step(session, dado) < place_of_step(session, rip));
    CHECK(place_of_step(session, rabbet) < place_of_step(session, rip));
    CHECK(place_of_step(session, rip) < place_of_step(session, dado + "#2"));
    const auto& affected = session.work->affected;
    const auto remade =
        std::find_if(affected.begin(), affected.end(), [&](const Affected& a) { return a.part == side; });
    REQUIRE(remade != affected.end());
    const std::string words = remade->what.text(Graduation::in_64);
    const auto work = [&](const std::string& id) { return session.work->plan.setup_with_id(id)->work; };
    CHECK(words.find(work(dado) + " (to be set again, with a test cut)") != std::string::npos);
    CHECK(words.find(work(rip)) != std::string::npos);
}

TEST_CASE("where another saw rips, the lost side comes back to the saw that still stands") {
    Session session = opened(two_saws());
    const std::string dado = setup_called(session, "locking rabbet: side dado"),
                      rip = setup_called(session, "rip to width: sides and fronts");
    REQUIRE(session.work->plan.setup_with_id(rip)->machine == "ripping saw");
    session = locked(done_before(session, dado), dado);
    session = ran(session, dado, {0});
    const std::string side = session.work->plan.setup_with_id(dado)->passes[0].part;
    session = with_lost(session, side);
    CHECK(step_called(session, dado + "#2") == nullptr);
    REQUIRE(step_called(session, dado));
    CHECK(step_called(session, dado)->still_set);
    CHECK(place_of_step(session, rip) < place_of_step(session, dado));
    // Nothing else comes to that saw before the side has been there.
    for (std::size_t i = 0; i < place_of_step(session, dado); ++i) {
        const Setup& before = *session.work->plan.setup_with_id(session.work->rest.steps[i].setup);
        CHECK((before.machine != "saw" || before.group == session.work->plan.setup_with_id(dado)->group));
    }
}

TEST_CASE(
    "a part lost at the end is the only thing left, with all its setups in order, each of them set again") {
    Session session = opened(tests::sample_json());
    for (const std::string& step : std::vector<std::string>(session.work->plan.sequence)) {
        const Setup& setup = *session.work->plan.setup_with_id(step);
        if (setup.test_cut) session = locked(session, step);
        session = all_ran(session, step);
    }
    const std::string side = "seeds.1.side_left";
    session = with_lost(session, side);
    std::size_t setups = 0;
    for (const Setup& setup : session.work->plan.setups)
        setups += std::any_of(setup.passes.begin(), setup.passes.end(),
                              [&](const Pass& pass) { return pass.part == side; });
    REQUIRE(session.work->rest.steps.size() == setups);
    for (const RestStep& step : session.work->rest.steps) {
        CHECK(step.parts == std::vector<std::string>{side});
        CHECK_FALSE(step.still_set);
        CHECK(step.set_again == !session.work->plan.setup_with_id(step.setup)->group.empty());
    }
    CHECK(session.work->rest.proved);
    // Rip, crosscut, joints (common practice, no source).
    CHECK(session.work->plan.setup_with_id(session.work->rest.steps[0].setup)->stage == Stage::rip);
    CHECK(session.work->plan.setup_with_id(session.work->rest.steps[1].setup)->stage == Stage::crosscut);
}

TEST_CASE("work done out of turn: what is left keeps the rules and takes no longer than as planned") {
    const Session session = opened(tests::sample_json());
    // The bottoms first, against all advice: not told so any more, but there may be a log that has it.
    Json job = session.document;
    const Setup& last = *session.work->plan.setup_with_id(session.work->plan.sequence.back());
    for (const Pass& pass : last.passes)
        job["log"].push_back(Json{{"kind", "ran"},
                                  {"time", now},
                                  {"key", work_key(last, session.work->design)},
                                  {"part", pass.part},
                                  {"reference", name_of(pass.reference)}});
    const Session after = opened(job);
    CHECK(after.work->plan.sequence.front() == session.work->plan.sequence.back());
    CHECK(after.work->rest.steps.size() == session.work->plan.sequence.size() - 1);
    CHECK(after.work->rest.seconds <= session.work->rest.seconds);
    CHECK(after.work->rest.lower_bound_seconds <= after.work->rest.seconds);
}

TEST_CASE(
    "random work, locks and losses: each open end is left to do once, and after what its part needs first") {
    std::mt19937 dice(41);
    for (int walk = 0; walk < 60; ++walk) {
        Session session = opened(walk % 3 == 0   ? two_saws()
                                 : walk % 3 == 1 ? tongued_back()
                                                 : tests::sample_json());
        for (int action = 0; action < 12; ++action) {
            const auto& steps = session.work->rest.steps;
            const bool in_turn = dice() % 3 != 0;
            const RestStep step = steps[in_turn ? 0 : dice() % steps.size()];
            const Setup& setup = *session.work->plan.setup_with_id(step.setup);
            const std::string part = setup.passes[dice() % setup.passes.size()].part;
            if (dice() % 4 == 0) session = with_lost(session, part);
            else if (setup.test_cut && dice() % 2 == 0) session = locked(session, setup.id);
            else session = ran(session, setup.id, {dice() % setup.passes.size()});

            const Work& work = *session.work;
            std::size_t open = 0, left = 0;
            std::map<std::string, std::size_t> ripped;  // where a part is ripped
            for (const Setup& one : work.plan.setups)
                for (const Pass& pass : one.passes) open += has_run(work, one, pass) ? 0 : 1;
            for (std::size_t i = 0; i < work.rest.steps.size(); ++i) {
                left += std::size_t(work.rest.steps[i].ends);
                const Setup& one = *work.plan.setup_with_id(work.rest.steps[i].setup);
                for (const std::string& name : work.rest.steps[i].parts) {
                    if (one.stage == Stage::rip) ripped[name] = i;
                    else if (ripped.contains(name)) CHECK(ripped[name] < i);
                }
            }
            // A part that must still be ripped has nothing else left before that.
            for (const auto& [name, at] : ripped)
                for (std::size_t i = 0; i < at; ++i) {
                    const auto& parts = work.rest.steps[i].parts;
                    CHECK(std::find(parts.begin(), parts.end(), name) == parts.end());
                }
            CHECK(left == open);
            check_what_stands(work);
            auto sequence = work.plan.sequence;
            std::sort(sequence.begin(), sequence.end());
            CHECK(std::adjacent_find(sequence.begin(), sequence.end()) == sequence.end());
            CHECK(work.rest.lower_bound_seconds <= work.rest.seconds);
        }
    }
}

TEST_CASE("a part that is being made again is not lost once more at the next lock") {
    Session session = opened(tests::sample_json());
    const std::string dado = setup_called(session, "locking rabbet: side dado"), side = "seeds.1.side_left";
    session = with_lost(done_before(session, dado), side);
    session = ran(session, session.work->rest.steps[0].setup, {0});
    REQUIRE(session.work->plan.setup_with_id(session.work->rest.steps[0].setup)->stage == Stage::crosscut);
    session = locked(session, dado);
    const Json& log = session.document["log"];
    CHECK(std::count_if(log.begin(), log.end(), [](const Json& entry) { return entry["kind"] == "lost"; }) ==
          1);
    CHECK(std::any_of(session.work->standing.ran.begin(), session.work->standing.ran.end(),
                      [&](const Ran& one) { return one.part == side; }));
}

TEST_CASE("a log from when a slot had more passes, or fewer, still says what ran") {
    CHECK(without_pass_count("key | groove, pass 1 of 2") == "key | groove");
    CHECK(without_pass_count("key | groove, pass 2 of 2") == "key | groove, last pass");
    CHECK(without_pass_count("key | groove, pass 3 of 3") == "key | groove, last pass");
    CHECK(without_pass_count("key | groove, pass 2 of 3") == "key | groove, pass 2 of 3");
    CHECK(without_pass_count("key | groove, last pass") == "key | groove, last pass");
    CHECK(without_pass_count("rip") == "rip");
    Session session = opened(tests::sample_json());
    const std::string groove = setup_called(session, "groove, pass 1 of 2");
    REQUIRE(!groove.empty());
    session = ran(session, groove, {0});
    Json& entry = session.document["log"].back();
    entry["key"] = entry["key"].get<std::string>() + ", pass 1 of 3";
    session = opened(session.document);
    const Setup& setup = *session.work->plan.setup_with_id(groove);
    CHECK(has_run(*session.work, setup, setup.passes[0]));
    CHECK(session.work->rest.begun);
}

TEST_CASE("of a setup that is set twice, a step's own ends are those that can go through then") {
    Session session = opened(tests::sample_json());
    const std::string dado = setup_called(session, "locking rabbet: side dado");
    session = locked(done_before(session, dado), dado);
    const Setup setup = *session.work->plan.setup_with_id(dado);
    session = with_lost(session, setup.passes[0].part);
    REQUIRE(step_called(session, dado + "#2"));
    CHECK(step_called(session, dado + "#2")->open == std::vector<std::size_t>{0});
    const auto& now_open = step_called(session, dado)->open;
    CHECK(now_open.size() == setup.passes.size() - 1);
    CHECK(std::find(now_open.begin(), now_open.end(), std::size_t(0)) == now_open.end());
}

TEST_CASE("a groove stands while boards that are ripped await their length on the same saw") {
    Json job = tests::sample_json();
    job["machines"].erase(1);  // the only saw rips, crosscuts and grooves
    Session session = opened(job);
    const std::string groove = setup_called(session, "groove, pass 1 of 2");
    for (const Setup& setup : std::vector<Setup>(session.work->plan.setups))
        if (setup.work == "rip to width: sides and fronts") session = all_ran(session, setup.id);
    session = locked(session, groove);
    REQUIRE(step_called(session, groove));
    CHECK(step_called(session, groove)->still_set);
    CHECK(step_called(session, groove + "#2") == nullptr);
    CHECK(place_of_step(session, groove) == 0);
}

TEST_CASE(
    "what stands and waits for nobody runs before it is disturbed: a back's dado locked before the front's") {
    Session session = opened(tongued_back());
    for (const Setup& setup : std::vector<Setup>(session.work->plan.setups))
        if (setup.work == "rip to width: sides and fronts" || setup.work == "crosscut to length: sides")
            session = all_ran(session, setup.id);
    const std::string dado = setup_called(session, "back tongue and dado: side dado");
    session = locked(session, dado);
    const auto& steps = session.work->rest.steps;
    const std::string group = session.work->plan.setup_with_id(dado)->group;
    bool disturbed = false, tested = false;
    for (const RestStep& step : steps) {
        const Setup& setup = *session.work->plan.setup_with_id(step.setup);
        if (setup.machine == "saw" && setup.group != group) disturbed = true;
        if (setup.group != group) continue;
        // Still set is only what nothing else came to; what is set again is tested once.
        CHECK(step.still_set == !disturbed);
        CHECK(step.set_again == disturbed);
        if (disturbed && !tested) CHECK(step.test_s > 0);
        tested = tested || disturbed;
    }
}
