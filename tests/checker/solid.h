// Boards as blocks with blocks taken out of them. All cuts of a drawer run parallel to the board's edges, so this is the whole
// geometry: a line through a board meets wood in spans, and what is left of a block is a list of blocks.
#pragma once

#include <array>
#include <vector>

namespace checker {

using Point = std::array<double, 3>;  // mm

struct Block {
    Point low{};
    Point high{};
};

struct Span {
    double from = 0;
    double to = 0;
};

struct Solid {
    Block hull;
    std::vector<Block> cuts;  // may reach out of the hull, and into each other
};

// A plan's numbers have six decimals of a millimetre: two passes that meet may leave a skin or a gap of a few nanometres between
// them that no board has. Thinner than this (mm) is nothing; every tolerance that is asked for is far above it.
inline constexpr double nothing_mm = 1e-4;

// Where the line through `point` along axis 0, 1 or 2 is in the wood, from low to high; nothing-thin skins and gaps left out.
std::vector<Span> wood_along(const Solid& solid, int axis, const Point& point);

// What is left of `block` when all the cuts are taken out of it, as blocks that do not overlap. Empty where nothing is.
std::vector<Block> left_of(const Block& block, const std::vector<Block>& cuts);

// Whether `block` less the cuts has room for a cube with edges of `edge_mm` somewhere: that is, whether anything more than that
// thick in every direction is left.
bool leaves_more_than(const Block& block, const std::vector<Block>& cuts, double edge_mm);

// Whether the two have wood in common that is more than `depth_mm` thick in every direction.
bool overlap_more_than(const Solid& one, const Solid& other, double depth_mm);

// A board put into the box: its axis i lies along the box's axis[i], backwards where `backwards[i]`, and its corner
// (0, 0, 0) comes to `corner`.
struct Placing {
    std::array<int, 3> axis{};
    std::array<bool, 3> backwards{};
    Point corner{};
};

Solid placed(const Solid& board, const Placing& placing);

}  // namespace checker
