#pragma once
// In which order a drawer is put together, and where glue goes. Common practice, no source, but for what the wood's movement asks (see
// seasons.h): nothing is finished where glue is to hold, glue is brushed only where it lies on top while the next board goes on, and a
// solid bottom is left free to move.

#include <vector>

#include "job/design.h"

namespace kw {

// One of the four corner joints. At the left side its slot is brushed, at the right one the end that stands in it.
struct GlueSpot {
    bool at_back = false;
    bool on_right_side = false;
    bool operator==(const GlueSpot&) const = default;
};

struct AssemblyStep {
    Message text;
    std::vector<Role> puts = {};      // what is put on or in, to stay
    std::vector<GlueSpot> glue = {};  // before that
};

// `diagonal`: what each of its diagonals is, of the copy that is put together (see assembly.h).
std::vector<AssemblyStep> assembly_order(const Job& job, const DrawerDesign& drawer, Length diagonal);

}  // namespace kw
