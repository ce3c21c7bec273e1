// Each setup by itself: what it stands on, and whether that machine and that cutter can do it.
#pragma once

#include "checker/asked.h"
#include "checker/plan.h"
#include "checker/report.h"

namespace checker {

void check_setups(const Plan& plan, const Asked& asked, Report& report);

}  // namespace checker
