#pragma once
// Parts of the whole job and the cuts that bring them to size. Private to this folder.

#include "job/plan.h"

namespace kw {

std::vector<Part> parts_of(const Job& job, const Design& design);
std::vector<SizeCut> size_cuts_of(const Design& design, const std::vector<Part>& parts);

// How far the insert enters: as far as its tongue is long, or what the slot's depth leaves less the relief. `end`: what cuts the insert, where
// anything does.
Length reach_by(const JointDesign& joint, const Settings& slot, const Settings* end);

}  // namespace kw
