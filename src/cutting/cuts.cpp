#include "cutting/cuts.h"

namespace kw::cutting {
namespace {

void add_cuts(const SheetLayout& layout, int index, int stage, std::vector<Cut>& cuts) {
    std::vector<int> parts;
    const CutDirection direction = layout.cuts[static_cast<std::size_t>(index)].direction;
    while (index >= 0) {
        const CutNode& node = layout.cuts[static_cast<std::size_t>(index)];
        if (node.use != CutUse::cut || node.direction != direction) {
            parts.push_back(index);
            break;
        }
        cuts.push_back({node.direction, node.fence, node.area, static_cast<std::size_t>(index), stage});
        if (node.cut_off >= 0) parts.push_back(node.cut_off);
        index = node.remainder;
    }
    for (const int part : parts) {
        const CutNode& node = layout.cuts[static_cast<std::size_t>(part)];
        if (node.use == CutUse::cut) add_cuts(layout, part, stage + (node.direction != direction), cuts);
    }
}

}  // namespace

std::vector<Cut> cuts_in_order(const SheetLayout& layout) {
    std::vector<Cut> cuts;
    if (!layout.cuts.empty() && layout.cuts.front().use == CutUse::cut) add_cuts(layout, 0, 0, cuts);
    return cuts;
}

}  // namespace kw::cutting
