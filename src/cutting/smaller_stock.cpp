#include "cutting/smaller_stock.h"

#include <algorithm>
#include <numeric>

namespace kw::cutting {
namespace {

double outer_area(const Stock& stock) {
    return static_cast<double>(stock.outer.length) * static_cast<double>(stock.outer.width);
}

std::vector<std::size_t> by_area(const Packing& packing) {
    std::vector<std::size_t> stocks(packing.stocks.size());
    std::iota(stocks.begin(), stocks.end(), std::size_t{0});
    std::stable_sort(stocks.begin(), stocks.end(), [&packing](std::size_t a, std::size_t b) {
        return outer_area(packing.stocks[a]) < outer_area(packing.stocks[b]);
    });
    return stocks;
}

// The pieces of one sheet, and one sheet of another stock to put them on.
Packing alone(const Packing& packing, const Sheet& sheet, std::size_t stock) {
    Packing part;
    for (const Piece& piece : packing.pieces) {
        part.pieces.push_back(piece);
        part.pieces.back().count = 0;
    }
    for (const PackingTree& region : sheet.regions)
        for (const TreeNode& node : region.nodes())
            if (node.is_used && !node.is_group()) ++part.pieces[static_cast<std::size_t>(node.piece)].count;
    part.stocks.push_back(packing.stocks[stock]);
    part.stocks.back().supply = 1;
    return part;
}

}  // namespace

void take_smaller_stock(const Packing& packing, Packed& packed, std::int64_t looks) {
    const std::vector<std::size_t> stocks = by_area(packing);
    if (stocks.size() < 2) return;
    std::vector<int> left;
    for (const Stock& stock : packing.stocks) left.push_back(stock.supply);
    for (const Sheet& sheet : packed.sheets) --left[sheet.stock];
    std::stable_sort(packed.sheets.begin(), packed.sheets.end(), [&packing](const Sheet& a, const Sheet& b) {
        return outer_area(packing.stocks[a.stock]) > outer_area(packing.stocks[b.stock]);
    });
    for (Sheet& sheet : packed.sheets)
        for (const std::size_t k : stocks) {
            const Stock& had = packing.stocks[sheet.stock];
            if (outer_area(packing.stocks[k]) >= outer_area(had)) break;
            if (left[k] == 0 || packing.stocks[k].cost > had.cost) continue;
            const Packing part = alone(packing, sheet, k);
            RepackGoal goal;
            goal.enough_cost = part.stocks.front().cost;
            Packed again = repack(part, goal, {looks, {}});
            if (!again.left_over.empty() || again.sheets.size() != 1) continue;
            ++left[sheet.stock];
            --left[k];
            packed.cost -= had.cost - packing.stocks[k].cost;
            sheet = std::move(again.sheets.front());
            sheet.stock = k;
            break;
        }
}

}  // namespace kw::cutting
