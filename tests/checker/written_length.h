// Lengths as people write them in a job, read in the checker's own way.
#pragma once

#include <string>

#include "checker/json.h"

namespace checker {

enum class Unit { inch, millimetre };

// Exact since 1959: addendum to NBS Circular 572.
inline constexpr double inch_mm = 25.4;

// "10 1/16", "10-1/16 in", "1' 2 1/2\"", "0.492in", "12,7 mm", "1.27 cm", "13 1/2 - 1/4". Each term of a sum has its own unit; a
// term without one is in `bare`. A hyphen is part of a mixed number where no blank stands beside it, and a minus elsewhere.
// Throws std::invalid_argument, with the text in what(), for anything else.
double read_length_mm(const std::string& text, Unit bare);

// The same for a field of a job: a string, or a number in `bare`.
double read_length_mm(const Json& value, Unit bare);

}  // namespace checker
