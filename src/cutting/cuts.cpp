#include "cutting/cuts.h"

#include <utility>

namespace kw::cutting {
namespace {

void add_cuts(const SheetLayout& layout, int index, int stage, int after, std::vector<Cut>& cuts) {
    std::vector<std::pair<int, int>> parts;  // with the cut that each comes from
    const CutDirection direction = layout.cuts[static_cast<std::size_t>(index)].direction;
    while (index >= 0) {
        const CutNode& node = layout.cuts[static_cast<std::size_t>(index)];
        if (node.use != CutUse::cut || node.direction != direction) {
            parts.push_back({index, after});
            break;
        }
        cuts.push_back(
            {node.direction, node.fence, node.area, static_cast<std::size_t>(index), stage, after});
        after = static_cast<int>(cuts.size()) - 1;
        if (node.cut_off >= 0) parts.push_back({node.cut_off, after});
        index = node.remainder;
    }
    for (const auto& [part, from] : parts) {
        const CutNode& node = layout.cuts[static_cast<std::size_t>(part)];
        if (node.use == CutUse::cut)
            add_cuts(layout, part, stage + (node.direction != direction), from, cuts);
    }
}

}  // namespace

std::vector<Cut> cuts_in_order(const SheetLayout& layout) {
    std::vector<Cut> cuts;
    if (!layout.cuts.empty() && layout.cuts.front().use == CutUse::cut) add_cuts(layout, 0, 0, -1, cuts);
    return cuts;
}

}  // namespace kw::cutting
