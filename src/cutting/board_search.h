#pragma once
// The fewest or cheapest boards, proved: branch and bound that fills one board after another, each with the longest piece that is
// left (bin completion: Martello and Toth 1990, ch. 8; Korf, AAAI 2002; both from memory). Private to this folder.

#include <vector>

#include "cutting/effort.h"
#include "cutting/packing.h"

namespace kw::cutting {

struct FilledBoard {
    std::size_t stock = 0;
    std::vector<int> pieces;  // by index
};

struct FilledBoards {
    std::vector<FilledBoard> boards;  // empty: nothing cheaper than `below` was found
    std::int64_t cost = 0;
    bool is_exhausted = false;  // there is nothing cheaper
};

// Layouts that cost less than `below`; one that costs `enough` ends the search. Widths of pieces and stocks are left out of account.
FilledBoards search_boards(const Packing& packing, std::int64_t below, std::int64_t enough,
                           const Effort& effort);

}  // namespace kw::cutting
