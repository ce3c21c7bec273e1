#pragma once
// Rows of fingers that are cut and wait for their mates. Private to this folder.

#include "job/standing.h"

namespace kw {

// Of the controls of a row: its pin ("fence"), or how wide its cutter cuts ("kerf").
bool is_of_pin(const std::string& control);

// Sockets that are cut by another setting of the pin, by hand of these controls, must go into those that are cut already and wait for their
// mates; and what follows another row must go on doing so. `its`: of the group, as the log has been told so far.
void match_row(const Job& job, const Design& design, const Standing& standing, const Group& group,
               GroupStanding& its, const std::vector<std::string>& by_hand);

}  // namespace kw
