// Which parts there are, and of which stock and size.
#pragma once

#include "checker/asked.h"
#include "checker/assembly.h"
#include "checker/plan.h"
#include "checker/report.h"
#include "checker/workpiece.h"

namespace checker {

// The box of a drawer in the plan, checked against what the job allows; none where the plan has none, or two.
const PlanBox* check_box(const Plan& plan, const AskedDrawer& drawer, Report& report);

// The five parts of one copy; none where one is missing or is there twice.
std::optional<Pieces> find_pieces(const std::vector<Workpiece>& all, const AskedDrawer& drawer, int copy,
                                  Report& report);

// Parts of no drawer or no copy, wrong stock and thickness, faces.
void check_parts(const Plan& plan, const Asked& asked, Report& report);

}  // namespace checker
