#pragma once
// The joints of a drawer as work for the machines. Private to this folder.

#include "job/design.h"

namespace kw {

// "back dado": what a joint goes by in setups.
std::string label_of(Place place, const JointDesign& joint);

// What guides the boards when the joint is cut.
const char* guide_for(Place place, const JointDesign& joint);

JointKeys keys_of(const JointWork& work);

// The groups of all three joints; the drawer gets their keys.
void add_all_groups(const Job& job, DrawerDesign& drawer, std::vector<Group>& groups);

}  // namespace kw
