#pragma once
// A face in its opening or among its neighbours: from the gaps as they are read, how it hangs, and how to move it.

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "drawer/parts.h"

namespace kw {

// Where a gap round the face is read, and how far its ends stand out from what is beside it.
enum class GapPlace {
    left_top,
    left_bottom,
    right_top,
    right_bottom,
    top_left,
    top_right,
    bottom_left,
    bottom_right,
    proud_left,  // + the face stands out, - in
    proud_right,
};
inline constexpr std::size_t gap_place_count = 10;

// The names used in job files: "left_top", "proud_left".
std::string_view name_of(GapPlace place);
const std::vector<GapPlace>& gap_places();

struct Gaps {
    std::array<std::optional<Length>, gap_place_count> readings{};

    std::optional<Length>& at(GapPlace place) { return readings[static_cast<std::size_t>(place)]; }
    const std::optional<Length>& at(GapPlace place) const {
        return readings[static_cast<std::size_t>(place)];
    }
    bool is_empty() const;
    bool operator==(const Gaps&) const = default;
};

// A face as it is to hang.
struct HungFace {
    Length width, height;             // of the face
    Length left, right, top, bottom;  // the gaps that are wanted
};

// What to do so that the gaps come as they are wanted, as one who stands before it sees it.
struct Hanging {
    Length to_right;             // move the face; - left
    Length left_up, right_up;    // move each end of it; - down
    Length left_out, right_out;  // move each end toward the maker; - in
    // The largest gap that is left too narrow or too wide when that is done: the face or its opening is not square.
    Length left_over;

    bool operator==(const Hanging&) const = default;
};

// A face moves as one piece: by dx to the right, dy up, and turned by phi against the clock about its middle, phi small. A gap at the left
// edge then grows by dx - phi y (y above the middle), one at the right shrinks by it; one at the bottom grows by dy + phi x, one at the top
// shrinks by it. Of all gaps that were read, least squares; what no reading tells is taken as not moved. Nothing where there is no reading.
std::optional<Hanging> hanging(const HungFace& face, const Gaps& gaps);

}  // namespace kw
