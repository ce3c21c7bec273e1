#pragma once
// How a joint stands once something was told of it, by the name that its setup went by before.

#include <optional>
#include <string>

#include "session/test_cut.h"

namespace kw {

// Of `setup` of the plan before. Where that is no setup of its group any more, of the group's first: a second pass that was only
// advised is gone once the joint is locked without it. Nothing where the group is not planned any more.
std::optional<FitReport> report_after(const Work& before, const Work& after, const std::string& setup);

}  // namespace kw
