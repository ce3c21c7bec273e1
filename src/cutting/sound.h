#pragma once
// How a sheet with defects is cut into regions that have none. Private to this folder.

#include <vector>

#include "cutting/packing.h"

namespace kw::cutting {

// In ticks with the kerf added, as in packing.h: a part of `length` is `length` - kerf of wood and the kerf behind it.
struct Spot {
    Ticks x = 0;
    Ticks y = 0;
    Ticks length = 0;
    Ticks width = 0;
};

struct SoundNode {
    Spot spot;
    bool is_cut = false;
    bool is_across = false;  // of a cut
    Ticks at = 0;            // of a cut: the first part's length or width, its kerf with it
    int first = -1;
    int second = -1;
    int region = -1;  // of a sound region: its number in `regions`; neither: waste with a defect in it
};

struct SoundWay {
    std::vector<SoundNode> nodes;  // the root first
    std::vector<Region> regions;
};

// The ways that leave the largest regions, best first; at least one. `defects` are of wood, without kerf, from the same corner.
std::vector<SoundWay> sound_ways(Region sheet, const std::vector<Spot>& defects, Ticks kerf);

}  // namespace kw::cutting
