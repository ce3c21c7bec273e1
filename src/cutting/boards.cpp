#include "cutting/boards.h"

#include <algorithm>

#include "cutting/board_search.h"
#include "cutting/bounds.h"
#include "cutting/checks.h"
#include "cutting/repack.h"

namespace kw::cutting {
namespace {

Fault check_board(const BoardKind& kind, std::size_t index) {
    const auto field = [index](const char* member) { return field_of("boards", index, member); };
    if (Fault fault = check_size(field("length"), kind.length)) return fault;
    if (Fault fault = check_supply(field("on_hand"), kind.on_hand, kind.is_offcut)) return fault;
    if (Fault fault = check_price(field("price"), kind.price)) return fault;
    return check_trim(field("trim"), kind.trim, kind.length);
}

Fault check_fit(const BoardJob& job, std::size_t index) {
    Length most;
    for (const BoardKind& kind : job.boards) most = max(most, kind.length - 2 * kind.trim);
    const Length length = job.pieces[index].length;
    if (length <= most) return std::nullopt;
    return Refusal{field_of("pieces", index, "length"),
                   Message::say("cutting.board_too_short", length, most, length - most),
                   Message::say("cutting.longer_board", length)};
}

Fault check_job(const BoardJob& job) {
    if (job.boards.empty())
        return Refusal{"boards", Message::say("cutting.no_stock"), Message::say("cutting.name_stock")};
    for (std::size_t k = 0; k < job.boards.size(); ++k)
        if (Fault fault = check_board(job.boards[k], k)) return fault;
    if (Fault fault = check_not_negative("kerf", job.kerf)) return fault;
    std::int64_t in_all = 0;
    for (std::size_t p = 0; p < job.pieces.size(); ++p) {
        const BoardPiece& piece = job.pieces[p];
        in_all += piece.count;
        if (Fault fault = check_size(field_of("pieces", p, "length"), piece.length)) return fault;
        if (Fault fault = check_count(field_of("pieces", p, "count"), piece.count, in_all)) return fault;
        if (Fault fault = check_fit(job, p)) return fault;
    }
    return std::nullopt;
}

bool is_bought_by_price(const BoardJob& job) {
    return std::all_of(job.boards.begin(), job.boards.end(),
                       [](const BoardKind& kind) { return kind.is_offcut || kind.price; });
}

std::int64_t cost_of(const BoardKind& kind, bool is_in_money) {
    if (kind.is_offcut) return is_in_money ? kind.price.value_or(0) : 0;
    return is_in_money ? *kind.price : 1;
}

Packing packing_of(const BoardJob& job) {
    Packing packing;
    int count = 0;
    for (const BoardPiece& piece : job.pieces) {
        const Ticks length = (piece.length + job.kerf).ticks();
        packing.pieces.push_back({length, 1, piece.count, false, length});
        count += piece.count;
    }
    const bool is_in_money = is_bought_by_price(job);
    for (const BoardKind& kind : job.boards) {
        const Region all{(kind.length - 2 * kind.trim + job.kerf).ticks(), 1};
        packing.stocks.push_back(
            {all, {{all}}, cost_of(kind, is_in_money), std::min(count, kind.on_hand.value_or(count))});
    }
    return packing;
}

std::vector<FilledBoard> filled(const Packed& packed) {
    std::vector<FilledBoard> boards;
    for (const Sheet& sheet : packed.sheets) {
        FilledBoard board{sheet.stock, {}};
        for (const TreeNode& node : sheet.regions.front().nodes())
            if (node.is_used && !node.is_group()) board.pieces.push_back(node.piece);
        boards.push_back(std::move(board));
    }
    return boards;
}

// What costs the same may still be too much: a board goes on the shortest that holds its pieces and costs no more.
void take_shorter_stock(const Packing& packing, std::vector<FilledBoard>& boards) {
    std::vector<int> left;
    for (const Stock& stock : packing.stocks) left.push_back(stock.supply);
    for (const FilledBoard& board : boards) --left[board.stock];
    for (FilledBoard& board : boards) {
        Ticks used = 0;
        for (const int piece : board.pieces) used += packing.pieces[static_cast<std::size_t>(piece)].length;
        std::size_t best = board.stock;
        for (std::size_t k = 0; k < packing.stocks.size(); ++k) {
            const Stock& stock = packing.stocks[k];
            const bool is_shorter = stock.outer.length < packing.stocks[best].outer.length;
            if (left[k] > 0 && stock.outer.length >= used && is_shorter &&
                stock.cost <= packing.stocks[board.stock].cost)
                best = k;
        }
        ++left[board.stock];
        --left[best];
        board.stock = best;
    }
}

BoardLayout layout_of_board(const BoardJob& job, FilledBoard board) {
    std::stable_sort(board.pieces.begin(), board.pieces.end(), [&job](int a, int b) {
        const Length x = job.pieces[static_cast<std::size_t>(a)].length;
        const Length y = job.pieces[static_cast<std::size_t>(b)].length;
        return x != y ? x > y : a < b;
    });
    const BoardKind& kind = job.boards[board.stock];
    BoardLayout layout{board.stock, {}, {}, {}};
    Length at = kind.trim;
    for (const int piece : board.pieces) {
        const auto index = static_cast<std::size_t>(piece);
        layout.pieces.push_back({index, at});
        at += job.pieces[index].length + job.kerf;
    }
    layout.offcut_from = at;
    layout.offcut = max(Length{}, kind.length - kind.trim - at);
    return layout;
}

double yield_of_boards(const BoardJob& job, const BoardPlan& plan) {
    double pieces = 0;
    double stock = 0;
    for (const BoardPiece& piece : job.pieces) pieces += piece.count * piece.length.mm();
    for (const BoardLayout& board : plan.boards) stock += job.boards[board.board].length.mm();
    return stock > 0 ? pieces / stock : 0;
}

constexpr std::size_t most_searched = 3000;  // pieces: the search goes as deep as there are boards

struct FoundBoards {
    std::vector<FilledBoard> boards;
    std::int64_t cost = 0;
    std::int64_t least_cost = 0;
    std::size_t left_over = 0;
};

// A quarter of the effort for a good layout, the rest for a better one or the proof that there is none.
FoundBoards find_boards(const Packing& packing, const Effort& effort) {
    FoundBoards found;
    found.least_cost = least_cost(packing);
    RepackGoal goal;
    goal.enough_cost = found.least_cost;
    const Packed packed = repack(packing, goal, {effort.looks / 4, effort.watch});
    found.boards = filled(packed);
    found.cost = packed.cost;
    found.left_over = packed.left_over.size();
    if (found.left_over == 0 && found.cost == found.least_cost) return found;
    std::size_t pieces = 0;
    for (const Piece& piece : packing.pieces) pieces += static_cast<std::size_t>(piece.count);
    if (pieces > most_searched) return found;
    const std::int64_t below =
        found.left_over == 0 ? found.cost : std::numeric_limits<std::int64_t>::max() / 8;
    FilledBoards better =
        search_boards(packing, below, found.least_cost, {effort.looks - packed.looks, effort.watch});
    if (!better.boards.empty()) {
        found.boards = std::move(better.boards);
        found.cost = better.cost;
        found.left_over = 0;
    }
    if (better.is_exhausted && found.left_over == 0) found.least_cost = found.cost;
    return found;
}

}  // namespace

tl::expected<BoardPlan, Refusal> plan_boards(const BoardJob& job, const Effort& effort) {
    if (Fault fault = check_job(job)) return tl::unexpected(*fault);
    const Packing packing = packing_of(job);
    FoundBoards found = find_boards(packing, effort);
    if (found.left_over > 0) return tl::unexpected(left_over("boards", found.left_over));
    take_shorter_stock(packing, found.boards);
    BoardPlan plan;
    plan.is_in_money = is_bought_by_price(job);
    for (const FilledBoard& board : found.boards) plan.cost += packing.stocks[board.stock].cost;
    plan.least_cost = found.least_cost;
    plan.proved = plan.cost == plan.least_cost;
    std::stable_sort(found.boards.begin(), found.boards.end(),
                     [](const FilledBoard& a, const FilledBoard& b) { return a.stock < b.stock; });
    for (FilledBoard& board : found.boards) plan.boards.push_back(layout_of_board(job, std::move(board)));
    plan.yield = yield_of_boards(job, plan);
    return plan;
}

}  // namespace kw::cutting
