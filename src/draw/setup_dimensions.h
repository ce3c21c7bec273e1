#pragma once
// The sizes on the picture at the saw: what the maker sets, and by how much that has moved.

#include "draw/setup_parts.h"

namespace kw::draw {

// Fence (of a jig: pin), kerf, height and spacer.
void add_dimensions(Drawing& drawing, const Way& way, const SetupViewOptions& options);

// "spacer 1/4 in"
std::string spacer_text(const SetupScene& scene);

}  // namespace kw::draw
