#pragma once
// Work told in an order in which it can be done, and readings told by name.

#include <doctest/doctest.h>

#include "job/comes_first.h"
#include "session/session.h"

namespace kw::tests {

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

inline NamedLength mm(const std::string& name, double value_mm) {
    return {name, Length::nearest_mm(value_mm)};
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
