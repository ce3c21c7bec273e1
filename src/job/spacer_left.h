#pragma once
// The spacer of a test cut that is still where it was put. Private to this folder.

#include "job/rest.h"

namespace kw {

// Marks what is left to do first on each machine, where it takes no spacer and the last test cut there was made with one: the second
// cut of a test is, whichever of the group's setups is told. By machine: the setup that it was last used for, and whether what was cut last was
// a test.
void note_spacers_left(std::vector<RestStep>& steps, const Plan& plan,
                       const std::map<std::string, std::string>& stands,
                       const std::map<std::string, bool>& tested_last);

}  // namespace kw
