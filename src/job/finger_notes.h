#pragma once
// What a maker is told of a box joint: what is left at the top edge, where the bottom's groove comes out, and what adds up.

#include "job/design.h"

namespace kw {

// Of the corners in front and behind, each by the heights at which its boards are cut. What both have in common is told once.
std::vector<Note> finger_notes(const Job& job, const DrawerDesign& drawer);

}  // namespace kw
