#include "job/on_hand.h"

#include <algorithm>
#include <utility>

namespace kw {
namespace {

// Across: of an offcut of a board as well, though a board has no width.
std::optional<Length> width_of(const StockSize& size) { return size.width ? size.width : size.no_wider; }

bool is_of(const StockSize& size, const UsedPieces& used) {
    return size.length == used.length && width_of(size) == used.width && size.is_offcut == used.is_offcut &&
           is_here(size) != used.is_bought;
}

// From the first of this size that has some left.
void take(const UsedPieces& used, std::vector<StockSize>& sizes) {
    int left = used.is_bought ? 0 : used.count;
    for (StockSize& size : sizes) {
        if (!is_of(size, used)) continue;
        const int taken = std::min(left, size.count.value_or(0));
        if (taken > 0) size.count = *size.count - taken;
        left -= taken;
    }
}

void keep(const KeptOffcut& offcut, bool in_sheets, std::vector<StockSize>& sizes) {
    StockSize size;
    size.length = offcut.length;
    if (in_sheets) size.width = offcut.width;
    else size.no_wider = offcut.width;
    size.count = 1;
    size.is_offcut = true;
    sizes.push_back(std::move(size));
}

FreedPart freed_part(const LaidPart& part) {
    FreedPart freed{part.part, part.area.length, part.area.width};
    if (part.is_turned) std::swap(freed.length, freed.width);
    return freed;
}

void add_used(const StockSize& size, std::vector<UsedPieces>& all) {
    const UsedPieces one{size.length, width_of(size), size.is_offcut, !is_here(size), 1};
    const auto known =
        std::find_if(all.begin(), all.end(), [&](const UsedPieces& used) { return is_of(size, used); });
    if (known == all.end()) all.push_back(one);
    else ++known->count;
}

}  // namespace

bool is_in_sheets(const Stock& stock) {
    return std::any_of(stock.sizes.begin(), stock.sizes.end(),
                       [](const StockSize& size) { return size.width.has_value(); });
}

BrokenDown broken_down_of(const Job& job, const LaidStock& laid) {
    BrokenDown down;
    down.stock = laid.stock;
    const std::vector<StockSize>& sizes = job.stock_named(laid.stock)->sizes;
    for (const LaidPiece& piece : laid.pieces) {
        for (const LaidPart& part : piece.parts) down.freed.push_back(freed_part(part));
        for (const cutting::Rectangle& offcut : piece.offcuts)
            down.kept.push_back({offcut.length, offcut.width});
        add_used(sizes.at(piece.size), down.used);
    }
    return down;
}

std::vector<Stock> stock_on_hand(const Job& job) {
    std::vector<Stock> all = job.stock;
    for (const LogEntry& entry : job.log) {
        if (!entry.broken_down) continue;
        const auto stock = std::find_if(
            all.begin(), all.end(), [&](const Stock& one) { return one.name == entry.broken_down->stock; });
        // Without sizes nothing is laid out, and what is on hand of it is not asked.
        if (stock == all.end() || stock->sizes.empty()) continue;
        const bool in_sheets = is_in_sheets(*stock);
        for (const UsedPieces& used : entry.broken_down->used) take(used, stock->sizes);
        for (const KeptOffcut& offcut : entry.broken_down->kept) keep(offcut, in_sheets, stock->sizes);
    }
    return all;
}

bool is_enough(const Job& job, const Part& part, const Freed& freed) {
    const Length fit = job.fit.tolerance.fit;
    return part.stock == freed.stock && part.size.length - freed.length <= fit &&
           part.size.width - freed.width <= fit;
}

}  // namespace kw
