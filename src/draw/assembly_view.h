#pragma once
// A drawer in the clamps and a face in its place, as one sees them who stands there: what was read, and what is off drawn larger than it is.

#include "draw/drawing.h"
#include "job/assembly.h"
#include "length/text.h"

namespace kw::draw {

// From above, the front below. Both diagonals with what was read (or what they should be), and an arrow at the corner that is to be pushed.
Drawing box_in_clamps(const AssemblyResult& result, const Assembled& read, const Locale& locale);

// From the front. The gaps that were read, each at its place.
Drawing face_in_place(const HungFace& face, const Gaps& read, const Locale& locale);

}  // namespace kw::draw
