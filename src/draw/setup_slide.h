#pragma once
// From one setting of a machine to the next: the picture on its way, and where things stood before.

#include "draw/setup_view.h"

namespace kw::draw {

// Whether going from one to the other is a matter of moving the same machine's controls under the same cutter, and moves any of
// them by so much that a caliper shows it.
bool slides(const SetupScene& before, const SetupScene& after);

// At `fraction` 0 all stands as before, at 1 as after. Where it stood is drawn as an outline, and how far it has to go is
// dimensioned: "+0.012 in up". The cutter keeps its place, as at the machine, and fence and board move: x = 0 is the fence's face
// after. The words are those of `after`.
Drawing setup_slide(const SetupScene& before, const SetupScene& after, double fraction,
                    const SetupViewOptions& options = {});

// "+1/8 in" or "−0.012 in": on the maker's own graduation where that holds it, otherwise as a caliper shows it. Empty where a
// caliper shows nothing.
std::string change_text(Length by, const Locale& locale, const Locale& caliper);

}  // namespace kw::draw
