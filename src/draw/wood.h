#pragma once
// Cut boards as filled areas: sections broken off where the picture ends, and the look of each kind of stock.

#include <functional>
#include <optional>

#include "draw/drawing.h"
#include "joint/section.h"
#include "wood/stock.h"

namespace kw::draw {

// Along which way of the board it is seen cut.
enum class Grain { along, across };

// How a board is filled. `upright`: its length runs along y. `mirrored`: hatched against its neighbour.
struct WoodLook {
    Material material = Material::long_grain;
    bool mirrored = false;
    bool upright = false;
    bool operator==(const WoodLook&) const = default;
};

// Plywood shows its plies, solid wood its grain; a panel, which has neither, the plain lining of a section.
Material wood_material(StockKind kind, Grain grain);

// Where the wood goes on beyond the picture: no firm edge, but a break line.
struct Breaks {
    std::optional<double> left_mm;
    std::optional<double> right_mm;
    std::optional<double> bottom_mm;
    std::optional<double> top_mm;
};

// The box in whole ticks.
Rect rect_of(const Box& box);

// From a section's frame to the picture's.
using Placing = std::function<Point(const kw::Point&)>;

// Shifted by so much, nothing turned.
Placing shifted(double x_mm, double y_mm);

std::vector<Ring> rings_of(const Region& region, const Placing& place);

// The area, its firm edges and its break lines.
void add_wood(Drawing& drawing, const std::vector<Ring>& rings, const WoodLook& look, const Breaks& breaks);

}  // namespace kw::draw
