// One drawer of a random job.
#pragma once

#include <string>

#include "checker/random_shop.h"

namespace checker {

// A drawer that the shop can make: joints within a third of web, grooves within half a part and within the tongue, cutters that
// fit, slides that fit the case.
Json random_drawer(const Shop& shop, const std::string& name, Dice& dice);

}  // namespace checker
