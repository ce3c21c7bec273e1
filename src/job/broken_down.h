#pragma once
// What was told of boards and sheets that were broken down, as the log keeps it: enough to stay true whatever is changed in the job later.

#include <optional>
#include <string>
#include <vector>

#include "length/length.h"

namespace kw {

// A part that lies by itself: so long along its grain, and so wide.
struct FreedPart {
    std::string part;  // its id
    Length length, width;
    bool operator==(const FreedPart&) const = default;
};

// Boards or sheets of one size that were cut up.
struct UsedPieces {
    Length length;
    std::optional<Length> width;  // a board has none
    bool is_offcut = false;
    bool is_bought = false;  // for this: nothing on hand has become less
    int count = 1;
    bool operator==(const UsedPieces&) const = default;
};

// What came off and was worth keeping, its length along the grain.
struct KeptOffcut {
    Length length, width;
    bool operator==(const KeptOffcut&) const = default;
};

struct BrokenDown {
    std::string stock;
    std::vector<FreedPart> freed;
    std::vector<UsedPieces> used;
    std::vector<KeptOffcut> kept;
    bool operator==(const BrokenDown&) const = default;
};

}  // namespace kw
