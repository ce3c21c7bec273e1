#pragma once
// A back that takes its depth from the front. Private to this folder.

#include "job/design.h"

namespace kw {

// The drawer whose front this slot or tongue of a back takes its depth or length from; nullptr where it has its own.
const DrawerDesign* leader_of(const Design& design, const Group& group);

// The same joint, planned to hold by `reach`: its slot deeper or less deep, its tongue longer or shorter. Where one height cuts
// both, the height is what the tongue's thickness comes of and stays: there the relief gives, as long as there is any.
Group with_reach(Group group, Length reach);

}  // namespace kw
