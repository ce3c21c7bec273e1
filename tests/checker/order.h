// The sequence of the setups: what has to come before what.
#pragma once

#include "checker/asked.h"
#include "checker/plan.h"
#include "checker/report.h"

namespace checker {

// Checked are: every setup comes, and nothing else; rip, then crosscut (boards of the box, except the width of a back over a
// slide-in bottom); crosscut before the joints at a part's ends; rip before groove; a front to length only after its drawer's
// locking-rabbet dado (the first pass of it), unless the saw that cuts the dado is the only one that crosscuts; a slide-in back's width after its
// drawer's grooves; a bottom to its last size after all joints of its drawer; a group, once set, is finished before anything else
// on its machine; time is not under its lower bound.
// A setup that comes twice counts as early and as late as it can, since the contract does not say which passes run when.
void check_order(const Plan& plan, const Asked& asked, Report& report);

}  // namespace checker
