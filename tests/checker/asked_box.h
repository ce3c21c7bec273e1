// From opening and slide to the box that is asked for.
#pragma once

#include "checker/json.h"
#include "checker/report.h"
#include "checker/written_length.h"

namespace checker {

struct AskedBox {
    Range width_mm;
    Range height_mm;
    Range depth_mm;
};

// Of a drawer's entry in a job: its "box", or its "opening" and "slide". Clearances by kind of slide are common practice and the
// slide makers' sheets; what the job leaves open and no sheet fixes comes back as a range.
AskedBox asked_box(const Json& drawer, Unit bare, double side_thickness_mm, double face_in_case_mm);

}  // namespace checker
