#pragma once
// A bank of faces from the front, as it stands in its case: how high each is and where it begins on one tape, the reveal, what the faces
// cover or leave at the ends, and the holes of their handles. Openings behind overlay faces are dashed. Numbers stand for
// drawers, from the top down.

#include "draw/drawing.h"
#include "job/bank_checks.h"
#include "length/text.h"

namespace kw::draw {

// `zero`: of the tape, measured up from the floor of the column's opening. `holes`: of some rows, or none.
Drawing bank_view(const Job& job, const BankSpec& bank, Length zero, const std::vector<RowHoles>& holes);

}  // namespace kw::draw
