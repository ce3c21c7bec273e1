#pragma once
// What the readings of a drawer's opening say to the maker: which place is out, by how much, and what takes it up.

#include <vector>

#include "job/job.h"

namespace kw {

// About the drawer by its name: also of its fillers, and of what is noted of its slides. None where the box is given. `box_depth`: how long a filler behind the slide is.
std::vector<Note> survey_notes(const DrawerSpec& drawer, Length box_depth);

}  // namespace kw
