#pragma once
// A setup as the maker stands before it. The cuts of joints are seen along the feed: the fence at the left, the work
// against its right face or the spacer's, the cutter rising from the table. x = 0 is the fence's face, y = 0 the
// table. Cuts to size are seen from above: the blade at x = 0, the fence or the stop to its left.
//
// All sizes are true but the length of a board that runs out of the picture: that is broken off.

#include "draw/drawing.h"
#include "job/work.h"

namespace kw::draw {

// `setup` is one of work.plan's.
Drawing setup_view(const Work& work, const Setup& setup);

// "front end", "left and right ends": what touches the fence, each named once.
std::string references_text(const Setup& setup);

}  // namespace kw::draw
