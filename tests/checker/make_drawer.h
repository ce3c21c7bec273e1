// Makes the drawers of a plan in numbers: cuts the blanks with the plan's passes, puts the boxes together, and measures them
// against what the job asked. It knows the trade's rules and the contract's files, and nothing of the program.
#pragma once

#include <vector>

#include "checker/json.h"
#include "checker/report.h"

namespace checker {

inline constexpr double usual_tolerance_mm = 0.002;

// Empty where the plan makes what the job asks. Throws std::exception where the *job* can't be read; a plan that can't be read is
// a finding.
std::vector<Finding> make_drawers(const Json& job, const Json& plan,
                                  double tolerance_mm = usual_tolerance_mm);

}  // namespace checker
