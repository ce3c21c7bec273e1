#pragma once
// What a maker is told of a box joint: what is left at the top edge, where the bottom's groove comes out, and what adds up.

#include "job/design.h"

namespace kw {

std::vector<Note> finger_notes(const DrawerDesign& drawer);

}  // namespace kw
