#pragma once
// What must go through a setup once more, and what may go through nothing more.

#include "job/work.h"

namespace kw {

// Ends through which a part must go once more are taken out of `ran` and into `again`: then they are open, as what has never gone
// through is. That is so for a size that is too large, and for a locked joint that takes more wood now.
// - A size comes off at the end opposite to the one against the stop. What was cut there comes off with it: a tongue is run again once
//   the part is to length; where a slot stands there, it would stand too near to its end, and nothing is opened.
// - A slot that is only too narrow and whose last pass has still to run is not begun anew.
Standing with_cuts_again(Standing standing, const Job& job, const Design& standing_design, const Plan& plan);

// Of the parts of these passes one that was cut too small for what is planned now, and is not told lost; nullptr where there is none.
const Affected* too_small(const Work& work, const Setup& setup, const std::vector<std::size_t>& passes);

}  // namespace kw
