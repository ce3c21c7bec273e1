#include "setup/bit_passes.h"

#include <algorithm>

namespace kw {

Length most_in_one_pass(const Cutter& bit) {
    return bit.depth_per_pass.value_or(min(bit.kerf.scaled(1, 2), Length::inches(1, 4)));
}

std::vector<Length> heights_of_passes(const Machine& machine, const Cutter& cutter, Length height) {
    const Length most = most_in_one_pass(cutter);
    if (machine.kind != MachineKind::router_table || most < least_bit_pass) return {height};
    std::vector<Length> heights;
    Length reached;
    while (height - reached > most) {
        const Length left = height - reached;
        reached += left - most < least_bit_pass ? left.scaled(1, 2) : most;
        heights.push_back(reached);
    }
    heights.push_back(height);
    return heights;
}

std::vector<Length> heights_of(const Shop& shop, const Setup& setup) {
    if (!setup.height) return {};
    const Machine* machine = shop.machine_named(setup.machine);
    const Cutter* cutter = shop.cutter_named(setup.cutter);
    if (!machine || !cutter) return {*setup.height};
    return heights_of_passes(*machine, *cutter, *setup.height);
}

}  // namespace kw
