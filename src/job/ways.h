#pragma once
// Which way each joint is cut that can be cut in more than one: the way with which all of the work takes the least time.

#include "job/plan.h"

namespace kw {

// What is known of a time that is the difference of two, each from a search that may have ended before it was proved.
enum class Surety { exact, at_most, at_least, about };

// What one way costs beside the others, everything else in its own best order then.
struct WayCost {
    ChosenJoint way;
    std::int64_t seconds = 0;  // that this joint adds to all the other work
    bool picked = false;
    Surety surety = Surety::exact;  // of the seconds
};

// Why a joint is cut the way it is.
struct WayReason {
    std::string label;                 // "back dado"
    std::vector<std::string> drawers;  // their names
    std::vector<WayCost> ways;         // the least first
};

// A joint that could be cut in several ways and is cut in the usual one, the others not being looked at.
struct NotCompared {
    std::string label;
    std::vector<std::string> drawers;
    ChosenJoint way;  // the usual one
    bool shares =
        false;  // since it shares setups with another joint; else since there are more choices than are gone through
};

struct FoundWays {
    Picks picks;
    // Where there was something to choose: no way and no order takes less than this.
    std::optional<std::int64_t> lower_bound_seconds;
    std::vector<std::string>
        order;  // of all the work, by the names of its setups; empty where there was no choice
    std::vector<WayReason> reasons;
    std::vector<NotCompared> not_compared;
};

// `usual`: as designed without picks. A joint that was tested, locked or cut stays with its way. Nothing is picked where there is no order
// at all, which make_plan then says. `settled`: ways that were found for the same joints, and are not looked for again.
FoundWays find_ways(const Job& job, const Design& usual, const Watch& watch = {},
                    const FoundWays* settled = nullptr);

}  // namespace kw
