#pragma once
// What was likely meant by a name that is none.

#include <string>
#include <vector>

namespace kw {

// Of the known names the one that differs from it by the fewest slips, by one in every three letters at most; empty where none is so
// near. A slip is a letter too many, left out, changed, or swapped with the next. Capitals don't matter; of names equally near it is the
// first.
std::string near_name(const std::string& name, const std::vector<std::string>& known);

}  // namespace kw
