#pragma once
// What goes with a drawer when it is renamed, or when another begins like it. Private to this folder.

#include "job/job.h"
#include "session/session.h"

namespace kw {

// What was read is of another opening, and of other drawers; what it came to (`opening`) is a start.
void forget_readings(Json& drawer, const std::optional<Opening>& opening);

// What was told of a drawer's parts goes with it to its new name, and so does its place in a bank. `before`, `now`: the names.
void follow_name(Json& document, const Json& before, const Json& now);

// A drawer that goes leaves its banks, with what they have for its rows; a bank without drawers goes too.
void leave_banks(Json& document, std::size_t drawer);

// The drawer at this pointer has another count than in `before`: where its banks name each copy, its name is added after its last or the last are taken out; a
// new row has the part and the height of the one above it.
void follow_count(Json& document, const Json& before, const Json::json_pointer& drawer, const Json& count);

// Makes a bank, called so, of the first drawer that has an opening and is in none, and of all such with faces of its style whose openings are
// within 1/16 in as wide as each other; false where there is none. Rails and reveals are 3/4 in and 1/8 in, of a job in millimetres 19 mm and
// 3 mm. `job`: as the document was last read.
bool gather_bank(Json& document, const Job& job, const std::string& called);

// A name that no drawer has, made from `like`.
std::string free_name(const Json& drawers, const std::string& like);

}  // namespace kw
