#pragma once
// Parts laid out on boards, one behind the other: as few boards as possible, or the cheapest (the cutting stock problem in one dimension).
// The kerf is exact: with one kerf more on every piece and every board, pieces fit without kerfs. Bounds stand in bounds.h; the search that
// proves is in board_search.h.

#include <cstdint>
#include <optional>
#include <vector>

#include <tl/expected.hpp>

#include "cutting/effort.h"
#include "length/message.h"

namespace kw::cutting {

struct BoardPiece {
    Length length;
    int count = 1;
};

struct BoardKind {
    Length length;
    std::optional<int> on_hand;         // nothing: as many as are wanted
    std::optional<std::int64_t> price;  // in the least coin there is
    bool is_offcut = false;             // is here already and costs nothing, or its price where it has one
    Length trim;                        // comes off each end first, its kerf with it
};

struct BoardJob {
    std::vector<BoardPiece> pieces;
    std::vector<BoardKind> boards;
    Length kerf;
};

struct PieceOnBoard {
    std::size_t piece = 0;  // its index among those asked for
    Length from;            // its near end, from the board's end
};

struct BoardLayout {
    std::size_t board = 0;             // its index among the kinds of boards that there are
    std::vector<PieceOnBoard> pieces;  // in the order of the cuts, the longest first
    Length offcut_from;
    Length offcut;  // what is left behind the last kerf and before the trim; zero: nothing
};

struct BoardPlan {
    std::vector<BoardLayout> boards;  // in the order of their kinds
    bool is_in_money = false;     // every kind bought has a price: the cheapest plan; else the fewest boards
    std::int64_t cost = 0;        // in the least coin; else boards that are no offcuts
    std::int64_t least_cost = 0;  // no plan costs less
    bool proved = false;          // both are the same
    double yield = 0;             // length of the pieces by that of the boards used, from 0 to 1
};

// Offcuts are taken before anything is bought, wherever that saves a board or money. The same job has the same plan, whatever the machine.
// Refuses with the field that is to blame ("pieces.2.length", "boards.0.trim", "kerf"): what makes no sense, a piece longer than any board,
// and pieces for which there is not stock enough ("boards").
tl::expected<BoardPlan, Refusal> plan_boards(const BoardJob& job, const Effort& effort = {});

}  // namespace kw::cutting
