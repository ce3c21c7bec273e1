#include "job/laid_cuts.h"

#include <algorithm>

namespace kw {
namespace {

using cutting::CutDirection, cutting::CutNode, cutting::CutUse;

constexpr std::int64_t looks_for_fence = 20'000'000;

const CutNode* part_of(const cutting::SheetLayout& sheet, int node) {
    return node >= 0 ? &sheet.cuts[std::size_t(node)] : nullptr;
}

void add_parts(const cutting::SheetLayout& sheet, int node, std::vector<std::size_t>& parts) {
    const CutNode* const at = part_of(sheet, node);
    if (!at) return;
    if (at->use == CutUse::piece) parts.push_back(at->placed);
    if (at->use != CutUse::cut) return;
    add_parts(sheet, at->cut_off, parts);
    add_parts(sheet, at->remainder, parts);
}

std::optional<CutSide> side_of(const cutting::SheetLayout& sheet, const CutNode& cut, int side) {
    const CutNode* const part = part_of(sheet, side);
    if (!part) return std::nullopt;
    CutSide out{part->use, part->area, part->use == CutUse::cut && part->direction != cut.direction, {}};
    add_parts(sheet, side, out.parts);
    std::sort(out.parts.begin(), out.parts.end());
    return out;
}

// Where the blade takes all of the first part, the other one is what the fence is set to.
void note_sides(const cutting::SheetLayout& sheet, LaidCut& laid) {
    const CutNode& node = sheet.cuts[laid.node];
    laid.at_fence = side_of(sheet, node, node.cut_off < 0 ? node.remainder : node.cut_off);
    if (node.cut_off >= 0) laid.beyond = side_of(sheet, node, node.remainder);
}

// A rip runs along the fence for the length of what is ripped; a crosscut leaves a piece on each side of the blade. What falls off as
// waste is not held.
Length shortest_held(const cutting::SheetLayout& sheet, const cutting::Cut& cut) {
    if (cut.direction == CutDirection::rip) return cut.of.length;
    Length shortest = cut.of.length;
    const CutNode& node = sheet.cuts[cut.node];
    for (const int side : {node.cut_off, node.remainder})
        if (const CutNode* const part = part_of(sheet, side); part && part->use != CutUse::waste)
            shortest = min(shortest, part->area.length);
    return shortest;
}

}  // namespace

std::optional<SafeLength> safe_length(const Job& job) {
    const Cutter* widest = nullptr;
    for (const Cutter& cutter : job.shop.cutters)
        if (cutter.kind == CutterKind::blade && (!widest || cutter.kerf > widest->kerf)) widest = &cutter;
    const Machine* saw = nullptr;
    for (const Machine& machine : job.shop.machines)
        if (machine.kind == MachineKind::table_saw && (!saw || (widest && machine.name == widest->machine)))
            saw = &machine;
    if (!saw) return std::nullopt;
    return SafeLength{saw->name, saw->least_part};
}

std::vector<LaidCut> laid_cuts(const cutting::SheetLayout& sheet, const std::optional<SafeLength>& safe) {
    std::vector<LaidCut> cuts;
    for (const cutting::Cut& cut : cutting::cuts_in_order(sheet)) {
        LaidCut laid{cut, {}, {}, {}};
        const CutNode& node = sheet.cuts[cut.node];
        for (const int side : {node.cut_off, node.remainder})
            if (const CutNode* const part = part_of(sheet, side); part && part->use == CutUse::piece)
                laid.frees.push_back(part->placed);
        if (const CutNode* const strip = part_of(sheet, node.cut_off); strip && strip->use == CutUse::cut)
            add_parts(sheet, node.cut_off, laid.strip_for);
        std::sort(laid.strip_for.begin(), laid.strip_for.end());
        if (const Length shortest = shortest_held(sheet, cut); safe && shortest < safe->least)
            laid.too_short = shortest;
        note_sides(sheet, laid);
        cuts.push_back(std::move(laid));
    }
    return cuts;
}

void order_by_fence(LaidStock& laid, const cutting::Watch& watch) {
    std::vector<cutting::CutToOrder> cuts;
    std::vector<CutPlace> places;
    for (std::size_t p = 0; p < laid.pieces.size(); ++p) {
        const int first = int(cuts.size());
        for (std::size_t c = 0; c < laid.pieces[p].cuts.size(); ++c) {
            const LaidCut& cut = laid.pieces[p].cuts[c];
            cuts.push_back({cut.direction, cut.fence, cut.after < 0 ? -1 : first + cut.after});
            places.push_back({p, c});
        }
    }
    cutting::Effort effort{looks_for_fence, {}};
    if (watch) effort.watch = [&](std::int64_t, std::int64_t) { return watch(laid.cost, laid.least_cost); };
    const cutting::FenceOrder order = cutting::order_by_fence(cuts, effort);
    laid.least_settings = order.least;
    for (const cutting::FenceSetting& setting : order.settings) {
        laid.settings.push_back({setting.direction, setting.fence, {}});
        for (const std::size_t cut : setting.cuts) laid.settings.back().cuts.push_back(places[cut]);
    }
}

}  // namespace kw
