// A drawer that is put together, measured by lines through its wood.
#pragma once

#include "checker/assembly.h"
#include "checker/report.h"

namespace checker {

// Fit, shoulders, ends and step of the front; fit, ends and setback of the back.
void measure_front(const Assembly& drawer, Report& report);
void measure_back(const Assembly& drawer, Report& report);

// Box joints at the front's corners, or at the back's.
void measure_fingers(const Assembly& drawer, bool at_back, Report& report);

// The groove in all parts, and the bottom in it.
void measure_bottom(const Assembly& drawer, Report& report);

// Sides alike, outer sizes, and no wood in the same place twice.
void measure_box(const Assembly& drawer, Report& report);

}  // namespace checker
