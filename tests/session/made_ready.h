#pragma once
// Work told in an order in which it can be done, and readings told by name.

#include <doctest/doctest.h>

#include <algorithm>

#include "job/comes_first.h"
#include "session/session.h"

namespace kw::tests {

inline const std::string now = "2026-03-01T09:00:00Z";
inline const std::string side_dado = "locking rabbet: side dado";

inline Session opened(const Json& job) {
    Session session = open_session(job, {}, now);
    REQUIRE(session.work);
    return session;
}

inline std::vector<std::size_t> passes_of(const Session& session, const std::string& id,
                                          const std::string& part = {}) {
    std::vector<std::size_t> all;
    const auto& passes = session.work->plan.setup_with_id(id)->passes;
    for (std::size_t i = 0; i < passes.size(); ++i)
        if (part.empty() || passes[i].part == part) all.push_back(i);
    return all;
}

// The plan's first setup of that work.
inline std::string setup_of(const Session& session, const std::string& work) {
    for (const Setup& setup : session.work->plan.setups)
        if (setup.work.rfind(work, 0) == 0) return setup.id;
    FAIL("no setup `" << work << "`");
    return {};
}

// The first of that work that the part goes through.
inline std::string setup_of(const Session& session, const std::string& work, const std::string& part) {
    for (const Setup& setup : session.work->plan.setups)
        if (setup.work.rfind(work, 0) == 0 && !passes_of(session, setup.id, part).empty()) return setup.id;
    FAIL("no setup of ", work, " for ", part);
    return {};
}

inline NamedLength mm(const std::string& name, double value_mm) {
    return {name, Length::nearest_mm(value_mm)};
}

inline TestCut test_cut(const std::string& setup, std::vector<NamedLength> readings) {
    return {setup, std::move(readings), {}, std::nullopt, false, "test"};
}

// A test cut with these readings, and with those of them again that are asked for again.
inline Session tested(const Session& session, const std::string& setup,
                      const std::vector<NamedLength>& readings) {
    Session after = apply(session, SaveTest{test_cut(setup, readings)}, now);
    for (;;) {
        INFO(after.refused);
        REQUIRE(after.refused.empty());
        const auto report = fit_report(*after.work, setup);
        const auto again = std::find_if(readings.begin(), readings.end(), [&](const NamedLength& reading) {
            return reading.name == report->measure;
        });
        if (report->advice != AdviceKind::measure || again == readings.end()) return after;
        after = apply(after, SaveTest{test_cut(setup, {*again})}, now);
    }
}

inline Session locked(const Session& before, const TestCut& lock) {
    Session session = apply(before, LockGroup{lock}, now);
    REQUIRE(session.refused == "");
    return session;
}

// With the moves made that were advised before.
inline Session locked(const Session& before, const std::string& id) {
    TestCut lock;
    lock.setup = id;
    return locked(before, lock);
}

// As it stands: whatever was advised, nothing was moved.
inline Session locked_unmoved(const Session& before, const std::string& id) {
    TestCut lock;
    lock.setup = id;
    lock.moved = std::vector<NamedLength>{};
    return locked(before, lock);
}

// What is known of the quarter stack on the saw, or of another cutter: one thing, by hand.
inline Memory off_by(Taught what, double value, const std::string& machine = "saw",
                     const std::string& cutter = "quarter stack") {
    Believed belief;
    belief.what = what;
    belief.machine = machine;
    belief.cutter = cutter;
    belief.kerf = Length::inches(1, 4);
    return correct({}, belief, value, now);
}

// All done that comes before: sizes run, joints locked as they stand.
inline Session made_ready(const Session& begun, const std::string& id, const std::vector<std::size_t>& passes,
                          const std::string& time) {
    Session session = begun;  // not moved: what is asked of it beside is read in any order
    while (const auto first =
               what_comes_first(*session.work, *session.work->plan.setup_with_id(id), passes)) {
        const std::string before = first->setup->id, through = first->through;
        if (first->lock) {
            TestCut lock;
            lock.setup = before;
            session = apply(session, LockGroup{lock}, time);
        } else {
            const auto its = passes_of(session, before, through);
            session = made_ready(session, before, its, time);
            session = apply(session, MarkRun{before, its, true}, time);
        }
        REQUIRE(session.refused == "");
    }
    return session;
}

inline Session ran(const Session& begun, const std::string& id, const std::vector<std::size_t>& passes,
                   const std::string& time) {
    Session session = apply(made_ready(begun, id, passes, time), MarkRun{id, passes, true}, time);
    REQUIRE(session.refused == "");
    return session;
}

}  // namespace kw::tests
