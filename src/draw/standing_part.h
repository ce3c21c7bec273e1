#pragma once
// A board as it stands in an indexing jig for its first socket, with its sockets at that end: which end is down, which face is toward
// the maker.

#include "draw/part_view.h"

namespace kw::draw {

// What part_view.h draws of a setup with an index.
Drawing standing_part_view(const Work& work, const Setup& setup, const PartLie& lie,
                           const SetupViewOptions& options);

// "inside face toward you"
std::string face_toward_words(const Words& words, const StandingLie& lie);

}  // namespace kw::draw
