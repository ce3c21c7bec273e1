// One drawer worked out by hand, with pencil and the trade's formulas: the check must find nothing wrong with it.
#pragma once

#include "checker/json.h"

namespace whole {

// All stock 12 mm but the bottom (5.6 mm); a 1/4 in stack and a 1/8 in blade on the saw, a miter saw; a box of 300 x 100 x 250 mm
// with the sides' ends half a millimetre proud.
checker::Json hand_job();
checker::Json hand_plan();

}  // namespace whole
