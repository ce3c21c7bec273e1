#pragma once
// What a maker pencils on every board before the first cut, so that no board is cut as its own mirror image: a loop on one face
// whose tail runs to one edge, and a caret on that edge. On the parts of a drawer the inside face and the bottom edge are
// marked, since grooves are worked from them (common practice, no source).

#include "draw/drawing.h"
#include "setup/group.h"

namespace kw::draw {

inline constexpr BoardFace marked_face = BoardFace::inside;
inline constexpr Reference marked_edge = Reference::bottom_edge;

// Where a mark stands, and which way round.
struct MarkPlace {
    Point at;                // on the line of the face or the edge
    Point in_mm;             // from `at` into the wood, to the mark's top
    bool in_mirror = false;  // the whole drawing will be mirrored: drawn so that it has its own hand then
    bool operator==(const MarkPlace&) const = default;
};

// The loop, its tail at `at`; turned with the board it keeps its hand. Where the marked face is the one that is not seen it is dashed, and
// mirrored, since it is seen through the board.
void add_face_mark(Drawing& drawing, const MarkPlace& place, bool underneath = false);
// The caret, its point at `at`.
void add_edge_mark(Drawing& drawing, const MarkPlace& place);

}  // namespace kw::draw
