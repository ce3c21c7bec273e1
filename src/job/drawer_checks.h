#pragma once
// What can be wrong with a drawer whose joints are each fine by themselves.

#include "job/design.h"

namespace kw {

// How much deeper than the tongue is thick the groove may be: the reading of a rule. A quarter-inch groove, tongue and cutter
// are usual, and a clearance in the dado makes that tongue a little less (common practice, no source).
inline constexpr Length groove_past_tongue = Length::inches(1, 64);

// `at` is the drawer's JSON pointer. Empty: nothing is wrong.
std::vector<Problem> check_drawer(const DrawerDesign& drawer, const std::string& at);

// Of wood that is thinner than this nothing holds: it goes when the joint is put together (common practice, no source).
inline constexpr Length least_left = Length::millimetres(1);

// What check_drawer lets pass, and the maker had better know.
std::vector<Note> notes_on(const DrawerDesign& drawer);

}  // namespace kw
