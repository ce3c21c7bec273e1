// Random jobs in the contract's format, version 1, for checking the program against things that nobody thought of.
#pragma once

#include <cstdint>

#include "checker/json.h"

namespace checker {

// One to five drawers that can be made, in inches or millimetres, with lengths written in all the ways people use. The same seed
// gives the same job everywhere.
Json random_job(std::uint64_t seed);

}  // namespace checker
