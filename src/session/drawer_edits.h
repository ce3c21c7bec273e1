#pragma once
// What goes with a drawer when it is renamed, or when another begins like it. Private to this folder.

#include "job/job.h"
#include "session/session.h"

namespace kw {

// What was read is of another opening, and of other drawers; what it came to (`opening`) is a start.
void forget_readings(Json& drawer, const std::optional<Opening>& opening);

// What was told of a drawer's parts goes with it to its new name, and so does its place in a bank. `before`, `now`: the names.
void follow_name(Json& document, const Json& before, const Json& now);

// Makes a bank of the first drawer that has an opening and is in none, and of all such whose openings are as wide; false where there is none. `job`: as the document was last read.
bool gather_bank(Json& document, const Job& job);

// A name that no drawer has, made from `like`.
std::string free_name(const Json& drawers, const std::string& like);

}  // namespace kw
