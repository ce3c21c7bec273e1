#pragma once
// The joints of a drawer as work for the machines. Private to this folder.

#include "job/design.h"

namespace kw {

// "back dado": what a joint goes by in setups.
std::string label_of(Place place, const JointDesign& joint);

// What guides the boards when the joint is cut.
const char* guide_for(Place place, const JointDesign& joint);

JointKeys keys_of(const JointWork& work);

// How far the end of a board of that stock reaches up when it is cut: a band on its top edge goes on afterwards.
Length cut_height(const DrawerDesign& drawer, const Stock& stock);

// The end that meets this one at a corner of the box; nothing of what is no corner.
std::optional<PartEnd> mate_of(const PartEnd& end);

// The groups of all three joints; the drawer gets their keys.
void add_all_groups(const Job& job, DrawerDesign& drawer, std::vector<Group>& groups);

}  // namespace kw
