#pragma once
// One drawer that was put together and hung: what its readings say.

#include <optional>

#include "drawer/slides_hung.h"
#include "drawer/squareness.h"
#include "job/work.h"

namespace kw {

struct AssemblyResult {
    BoxSides box;                         // as its parts are: as they were cut, or else as they are planned
    bool is_as_planned = true;            // no side of it is off by as much as is worth moving
    Length diagonal;                      // that each should read
    std::optional<Squareness> square;     // where both diagonals were read
    bool is_half_read = false;            // one diagonal without the other, which says nothing
    std::optional<Refusal> not_this_box;  // where they can't be this box's
    std::optional<SlidesHung> slides;     // where one of their places was read
    Length slide_take_up;                 // how much more than its room each slide takes
    std::optional<HungFace> face;         // nothing where the drawer has none, or it has no size
    Gaps gaps;                            // as they were read
    std::optional<Hanging> hanging;       // where one was
};

// The face and the gaps that are wanted round it: those of an inset face, or the reveal of an overlay face; in a bank, those of this copy.
std::optional<HungFace> hung_face(const DrawerSpec& drawer, int copy);

// Nothing for a drawer that the plan has not. A copy of which nothing was read has only the sizes.
std::optional<AssemblyResult> assembly(const Work& work, const std::string& drawer, int copy);

// Of a box, how far its back may stand over against its front and be called square; of a face, what a move must be to be
// worth it: a 64th of an inch. Common practice, no source.
inline constexpr Length worth_moving = Length::inches(1, 64);

}  // namespace kw
