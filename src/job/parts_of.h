#pragma once
// Parts of the whole job and the cuts that bring them to size. Private to this folder.

#include "job/plan.h"

namespace kw {

std::vector<Part> parts_of(const Job& job, const Design& design);
std::vector<SizeCut> size_cuts_of(const Design& design, const std::vector<Part>& parts);

}  // namespace kw
