// A plan made with no thought for time: one way per joint, settings straight from the trade's formulas. It shows that a random job
// can be made, and gives the check something right to pass and something to spoil.
#pragma once

#include "checker/json.h"

namespace checker {

struct NaiveWays {
    bool tongued_back = false;  // rabbets the back's ends to a tongue wherever one fits a single pass
};

// Throws std::exception where no way of its own makes the job.
Json naive_plan(const Json& job, NaiveWays ways = {});

}  // namespace checker
