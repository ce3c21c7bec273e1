// What the maker wants first, or not today, or on no machine that is lent out; and what that takes.
#include <doctest/doctest.h>

#include <algorithm>

#include "effort.h"
#include "job/pins.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"

using namespace kw;
using tests::now, tests::opened;

namespace {

Session pin(const Session& session, const std::string& setup, Pinned where) {
    Session after = apply(session, PinSetup{setup, where}, now);
    REQUIRE(after.refused.empty());
    REQUIRE(after.problems.empty());
    return after;
}

std::size_t place_of_pin(const Session& session, const std::string& name) {
    const auto& steps = session.work->rest.steps;
    for (std::size_t i = 0; i < steps.size(); ++i)
        if (pin_name(*session.work->plan.setup_with_id(steps[i].setup), session.work->design) == name)
            return i;
    return steps.size();
}

// Of each part, in what sequence its setups come.
bool same_rules_hold(const Session& session) {
    const auto& steps = session.work->rest.steps;
    for (std::size_t i = 0; i < steps.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const Setup &late = *session.work->plan.setup_with_id(steps[i].setup),
                        &early = *session.work->plan.setup_with_id(steps[j].setup);
            if (late.stage != Stage::rip || early.stage == Stage::rip) continue;
            for (const std::string& part : steps[i].parts)
                if (std::find(steps[j].parts.begin(), steps[j].parts.end(), part) != steps[j].parts.end())
                    return false;
        }
    return true;
}

}  // namespace

TEST_CASE("any setup can be done first: only what its parts need comes before it; or last") {
    const Session session = opened(tests::sample_json());
    for (const Setup& setup : session.work->plan.setups) {
        CAPTURE(setup.work);
        const std::string name = pin_name(setup, session.work->design);
        const Session first = pin(session, setup.id, Pinned::first),
                      last = pin(session, setup.id, Pinned::last);
        CHECK(place_of_pin(first, name) <= place_of_pin(session, name));
        CHECK(same_rules_hold(first));
        CHECK(same_rules_hold(last));
        CHECK(first.work->plan.seconds >= session.work->plan.lower_bound_seconds);
        CHECK(first.work->rest.steps.size() == session.work->rest.steps.size());
        // Before it is only what some of its own parts go through, or what these wait for.
        if (setup.stage == Stage::rip && place_of_pin(first, name) > 0)
            CHECK(place_of_pin(first, name) < session.work->rest.steps.size() - 1);
        // Last: after it is only what cannot be done without it.
        const auto& steps = last.work->rest.steps;
        if (setup.stage == Stage::rip && setup.work.find("bottoms") != std::string::npos)
            for (std::size_t i = place_of_pin(last, name) + 1; i < steps.size(); ++i)
                CHECK(last.work->plan.setup_with_id(steps[i].setup)->work.find("bottoms") !=
                      std::string::npos);
    }
}

TEST_CASE("what a pin takes is said, and nothing is left of it when it is let go") {
    const Session session = opened(tests::sample_json());
    const Setup& late = *session.work->plan.setup_with_id(session.work->plan.sequence.back());
    const Session pinned_first = pin(session, late.id, Pinned::first);
    CHECK(pinned(*pinned_first.work, *pinned_first.work->plan.setup_with_id(
                                         pinned_first.work->plan.sequence[0])) == Pinned::nowhere);
    CHECK(pinned_first.work->plan.pins_s > 0);
    CHECK(pinned_first.work->plan.seconds == session.work->plan.seconds + pinned_first.work->plan.pins_s);
    const std::string name = pin_name(late, session.work->design);
    const std::string id = pinned_first.work->rest.steps[place_of_pin(pinned_first, name)].setup;
    CHECK(pinned(*pinned_first.work, *pinned_first.work->plan.setup_with_id(id)) == Pinned::first);
    const Session again = pin(pinned_first, id, Pinned::nowhere);
    CHECK(again.document == session.document);
    CHECK(again.work->plan.sequence == session.work->plan.sequence);
    CHECK(again.work->plan.pins_s == 0);
}

TEST_CASE("of two that are pinned first the one that was pinned first comes first") {
    const Session session = opened(tests::sample_json());
    std::string groove, dado;
    for (const Setup& setup : session.work->plan.setups) {
        if (setup.work == "groove, pass 1 of 2") groove = pin_name(setup, session.work->design);
        if (setup.work == "locking rabbet: side dado") dado = pin_name(setup, session.work->design);
    }
    const auto pin_named = [&](const Session& from, const std::string& name) {
        return pin(from, from.work->rest.steps[place_of_pin(from, name)].setup, Pinned::first);
    };
    const Session there = pin_named(pin_named(session, groove), dado);
    CHECK(place_of_pin(there, groove) < place_of_pin(there, dado));
    const Session back = pin_named(pin_named(session, dado), groove);
    CHECK(place_of_pin(back, dado) < place_of_pin(back, groove));
}

TEST_CASE("pins that can't be kept together are let go, and it is said; a pin on work that is gone, too") {
    Json job = tests::sample_json();
    Session session = opened(job);
    const auto name_of_work = [&](const std::string& work) {
        for (const Setup& setup : session.work->plan.setups)
            if (setup.work == work) return pin_name(setup, session.work->design);
        return std::string();
    };
    // Fronts are cut to length when their joint is locked: the dado can't come last if they are to come first.
    job["pins"] = {{"first", {name_of_work("crosscut to length: fronts")}},
                   {"last", {name_of_work("locking rabbet: side dado"), "no such thing"}}};
    session = opened(job);
    std::string notes;
    for (const Note& note : session.work->plan.notes) notes += note.text.text(Graduation::in_64) + "\n";
    CHECK(notes.find("can't be kept") != std::string::npos);
    CHECK(notes.find("no such thing") != std::string::npos);
    CHECK(session.work->plan.sequence == opened(tests::sample_json()).work->plan.sequence);
}

TEST_CASE("on a machine that is lent out nothing is done") {
    Json job = tests::sample_json();
    const Session all_there = opened(job);
    REQUIRE(std::any_of(all_there.work->plan.setups.begin(), all_there.work->plan.setups.end(),
                        [](const Setup& setup) { return setup.machine == "chop"; }));
    for (Json& machine : job["machines"])
        if (machine["name"] == "chop") machine["away"] = true;
    const Session lent = opened(job);
    for (const Setup& setup : lent.work->plan.setups) CHECK(setup.machine == "saw");
    // The saw that cuts the joints as well: nothing can be cut there without a cutter.
    for (Json& machine : job["machines"]) machine["away"] = true;
    const Session none = open_session(job, {}, now);
    REQUIRE_FALSE(none.problems.empty());
    CHECK(none.problems.front().why.text(Graduation::in_64) ==
          "`saw` is away, and nothing else in the shop can make this joint");
    CHECK(none.problems.front().remedy.text(Graduation::in_64) ==
          "take `saw` back, or list a cutter that fits on another machine");
}

TEST_CASE("what is pinned first comes first among what is left, wherever the work stands") {
    Session session = opened(tests::sample_json());
    for (int step = 0; step < 3; ++step) {
        const std::string id = session.work->rest.steps.front().setup;
        std::vector<std::size_t> all(session.work->plan.setup_with_id(id)->passes.size());
        for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
        session = apply(session, MarkRun{id, all, true}, now);
    }
    const auto& steps = session.work->rest.steps;
    const std::string name =
        pin_name(*session.work->plan.setup_with_id(steps.back().setup), session.work->design);
    const std::size_t before = place_of_pin(session, name);
    session = pin(session, steps.back().setup, Pinned::first);
    CHECK(place_of_pin(session, name) < before);
}

TEST_CASE("setups of a job with several joints on one saw can be pinned first, and last") {
    Json job = tests::demo_json();
    for (Json& cutter : job["cutters"]) {  // without these it is planned sooner
        cutter.erase("spare_chippers");
        cutter.erase("spare_shims");
    }
    const Session session = opened(job);
    for (std::size_t i = 1; i < session.work->plan.setups.size(); i += tests::is_sanitized ? 12 : 3)
        for (const Pinned where : {Pinned::first, Pinned::last}) {
            const Setup& setup = session.work->plan.setups[i];
            CAPTURE(setup.id);
            const Session after = pin(session, setup.id, where);
            for (const Note& note : after.work->plan.notes)
                CHECK(note.text.text(Graduation::in_64).find("can't be kept") == std::string::npos);
        }
}
