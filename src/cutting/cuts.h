#pragma once
// A sheet cut up: every cut goes straight through what lies on the saw, from edge to edge (guillotine cuts), so that a layout is a
// tree. Places count from the sheet's corner, x along the grain (the sheet's length) and y across it.

#include <cstddef>
#include <vector>

#include "length/length.h"

namespace kw::cutting {

struct Rectangle {
    Length x;
    Length y;
    Length length;  // along x
    Length width;   // along y

    Length end_x() const { return x + length; }
    Length end_y() const { return y + width; }
    bool operator==(const Rectangle&) const = default;
};

enum class CutDirection {
    rip,       // along the grain: the fence stands at the width of the strip
    crosscut,  // across it: the stop stands at the length
};

enum class CutUse { cut, piece, offcut, waste };

// What lies on the saw at one time: it is cut in two, or is something by itself. The kerf lies between both parts.
struct CutNode {
    Rectangle area;
    CutUse use = CutUse::waste;
    CutDirection direction = CutDirection::rip;  // of a cut
    // Of a cut: the width (rip) or length (crosscut) of what is cut off; of what stays, where the blade only trims an edge.
    Length fence;
    int cut_off = -1;        // of a cut: the part at the lesser x or y; -1: the blade takes it all
    int remainder = -1;      // of a cut: the other part; -1: the blade takes all that is left
    std::size_t piece = 0;   // of a piece: its index among those asked for
    std::size_t placed = 0;  // of a piece: its index among the layout's placed ones
    bool is_turned = false;  // its length lies across the grain
};

struct PlacedPiece {
    std::size_t piece = 0;
    Rectangle area;
    bool is_turned = false;
};

// One sheet as it is cut up. The trim comes off all four sides before the first cut: `cuts[0].area` is what it leaves.
struct SheetLayout {
    std::size_t sheet = 0;  // its index among the kinds of sheets that there are
    std::vector<CutNode> cuts;
    std::vector<PlacedPiece> pieces;
    std::vector<Rectangle> offcuts;  // the largest first
};

struct Cut {
    CutDirection direction = CutDirection::rip;
    Length fence;
    Rectangle of;          // what is cut
    std::size_t node = 0;  // in SheetLayout::cuts
    int stage = 0;         // how often the direction has changed before: 0 for the first cuts of a sheet
    int after = -1;  // the cut that what is cut comes from, by its place in the list; -1: the sheet itself
};

// In the order of the saw: all cuts of one stage through a part, then the parts one after another.
std::vector<Cut> cuts_in_order(const SheetLayout& layout);

}  // namespace kw::cutting
