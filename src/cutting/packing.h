#pragma once
// What the search for layouts is asked, in whole ticks and without kerf: a kerf was added to every piece and every sheet, which
// says the same (n pieces and their n kerfs fit where the last kerf may fall off the edge). A board is a sheet one tick wide.
// Private to this folder.

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace kw::cutting {

using Ticks = std::int64_t;

struct Piece {
    Ticks length = 0;
    Ticks width = 0;
    int count = 1;
    bool may_turn = false;
    std::int64_t value = 0;  // what is lost where one stays out

    bool fits(Ticks room_length, Ticks room_width) const {
        return (length <= room_length && width <= room_width) ||
               (may_turn && width <= room_length && length <= room_width);
    }
};

struct Region {
    Ticks length = 0;
    Ticks width = 0;
};

inline constexpr int unlimited = std::numeric_limits<int>::max();

struct Stock {
    Region outer;  // all of it, defects and all
    // Sound regions that a sheet can be cut into; one way and one region where it is sound all over.
    std::vector<std::vector<Region>> ways;
    std::int64_t cost = 1;
    int supply = unlimited;

    bool takes(const Piece& piece) const {
        for (const std::vector<Region>& way : ways)
            for (const Region& region : way)
                if (piece.fits(region.length, region.width)) return true;
        return false;
    }
};

struct Packing {
    std::vector<Piece> pieces;
    std::vector<Stock> stocks;
};

}  // namespace kw::cutting
