#pragma once
// How a board lies at the machine, seen from above by someone who stands in front of it and pushes away from himself: worked
// out in space from where its face, its ends and its edges are in the drawer.

#include "drawer/parts.h"
#include "setup/group.h"

namespace kw::draw {

struct BoardLie {
    BoardFace up = BoardFace::outside;                // the face that is seen
    Reference at_fence = Reference::left_end;         // what touches the fence, the spacer or the stop
    Reference from_fence = Reference::right_end;      // its other end or edge
    Reference away = Reference::top_edge;             // what goes in first
    Reference toward_maker = Reference::bottom_edge;  // what lies toward the maker
    bool operator==(const BoardLie&) const = default;
};

// `at_fence` is one of this part's ends or edges; the fence stands to the left of the board, or to its right.
BoardLie board_lie(Role role, Reference at_fence, BoardFace down, bool fence_left = true);

// How a board stands on its end before an indexing jig's fence, its bottom edge toward the pin; seen along the feed.
struct StandingLie {
    BoardFace toward_maker = BoardFace::outside;
    Reference down = Reference::left_end;
    Reference up = Reference::right_end;
    bool operator==(const StandingLie&) const = default;
};

// The pin stands to the left of the cutter, or to its right.
StandingLie standing_lie(Role role, Reference down, bool pin_left = true);

// Which end is at the left of one who looks at the outside of a board that stands as in the drawer, its bottom edge down.
Reference end_at_left(Role role);

}  // namespace kw::draw
