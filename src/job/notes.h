#pragma once
// What a maker should be told beside each setup. Private to this folder.

#include "job/plan.h"

namespace kw {

// Adds notes and warnings about the plan's setups, drawers and faces.
void add_setup_notes(const Job& job, Plan& plan);

// The usual cautions for one setup, in the order of weight. They never say that a setup is safe.
std::vector<std::string> cautions_for(const Job& job, const Setup& setup);

}  // namespace kw
