#pragma once
// What must go through a setup once more. Private to this folder.

#include "job/plan.h"
#include "job/standing.h"

namespace kw {

// Ends through which a part must go once more are taken out of `ran` and into `again`: then they are open, as what has never gone
// through is. That is so for a size that is too large, and for a locked joint that takes more wood now.
// - A size comes off at the end opposite to the one against the stop. What was cut there comes off with it: a tongue is run again once
//   the part is to length; where a slot stands there, it would stand too near to its end, and nothing is opened.
// - A slot that is only too narrow and whose last pass has still to run is not begun anew.
Standing with_cuts_again(Standing standing, const Job& job, const Design& standing_design, const Plan& plan);

}  // namespace kw
