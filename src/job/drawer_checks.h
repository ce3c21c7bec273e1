#pragma once
// What can be wrong with a drawer whose joints are each fine by themselves.

#include "job/design.h"

namespace kw {

// `at` is the drawer's JSON pointer. Empty: nothing is wrong.
std::vector<Problem> check_drawer(const DrawerDesign& drawer, const std::string& at);

}  // namespace kw
