#pragma once
// The board itself as it lies at the machine, seen from above: which face is up, which end or edge touches the fence, what lies
// toward the maker, and the marks. Left and right parts lie as mirror images of each other: that is what this picture is for.

#include "draw/board_lie.h"
#include "draw/setup_view.h"

namespace kw::draw {

// One way in which parts of a setup lie: of those that lie alike, the first pass.
struct PartLie {
    std::size_t pass = 0;  // in Setup::passes
    Role role = Role::front;
    bool operator==(const PartLie&) const = default;
};

// All ways in which parts of this setup lie, in the order of the passes; `setup` is one of work.plan's.
std::vector<PartLie> part_lies(const Work& work, const Setup& setup);

// How it lies, for the picture's caption: "inside face down", "inside face toward you".
std::string lie_words(const Work& work, const Setup& setup, const PartLie& lie,
                      const SetupViewOptions& options = {});

// A board in an indexing jig stands on its end, and is seen from before: x = 0 is the pin's side toward the cutter, y = 0 the table.
// Otherwise x = 0 is the fence's face, as in setup_view; y runs along the feed from the maker's edge of the board, y = 0. At a router table,
// where the fence is beyond the bit, y runs against the feed instead, from the edge that goes in first; that picture is never
// mirrored. Widths are true; a length is broken off where it is too long to be shown. What is cut lies underneath and is dashed.
Drawing part_view(const Work& work, const Setup& setup, const PartLie& lie,
                  const SetupViewOptions& options = {});

}  // namespace kw::draw
