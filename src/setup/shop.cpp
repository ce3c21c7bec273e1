#include "setup/shop.h"

#include <algorithm>

namespace kw {
namespace {

template <class Items>
auto find_named(const Items& items, std::string_view name) -> decltype(items.data()) {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.name == name; });
    return found == items.end() ? nullptr : &*found;
}

template <class Kind>
std::optional<Kind> kind_named(const std::vector<Kind>& kinds, std::string_view name) {
    for (const Kind kind : kinds)
        if (name_of(kind) == name) return kind;
    return std::nullopt;
}

constexpr Length usual_kerf = Length::inches(1, 8);

}  // namespace

std::string_view name_of(MachineKind kind) {
    switch (kind) {
        case MachineKind::table_saw: return "table saw";
        case MachineKind::router_table: return "router table";
        case MachineKind::miter_saw: return "miter saw";
    }
    return {};
}

std::string_view name_of(CutterKind kind) {
    switch (kind) {
        case CutterKind::blade: return "blade";
        case CutterKind::dado_stack: return "dado stack";
        case CutterKind::bit: return "bit";
    }
    return {};
}

const std::vector<MachineKind>& machine_kinds() {
    static const std::vector<MachineKind> kinds = {MachineKind::table_saw, MachineKind::router_table,
                                                   MachineKind::miter_saw};
    return kinds;
}

const std::vector<CutterKind>& cutter_kinds() {
    static const std::vector<CutterKind> kinds = {CutterKind::blade, CutterKind::dado_stack, CutterKind::bit};
    return kinds;
}

std::optional<MachineKind> machine_kind_named(std::string_view name) {
    return kind_named(machine_kinds(), name);
}
std::optional<CutterKind> cutter_kind_named(std::string_view name) {
    return kind_named(cutter_kinds(), name);
}

// 13/16 in of dado is the figure of two saw manuals; the rest is common practice, no source. 100 mm is the least part that a
// hand can hold to a miter gauge with its back to the fence; longer is better, and the caution says so.
Machine usual_machine(std::string name, MachineKind kind) {
    const Length fence_step = Length::micrometres(50);
    const Length height_step = Length::micrometres(50);
    Machine machine{
        std::move(name), kind,       Length::inches(13, 16), Length::inches(3), Length::millimetres(100),
        fence_step,      height_step};
    if (kind == MachineKind::router_table) {
        machine.max_dado_width = Length::inches(1);
        machine.max_height = Length::inches(3, 2);
    }
    return machine;
}

const Machine* Shop::machine_named(std::string_view name) const { return find_named(machines, name); }
const Cutter* Shop::cutter_named(std::string_view name) const { return find_named(cutters, name); }

Shop with_implied_blades(Shop shop) {
    for (const Machine& machine : shop.machines) {
        if (machine.kind == MachineKind::router_table) continue;
        const bool has_blade =
            std::any_of(shop.cutters.begin(), shop.cutters.end(), [&](const Cutter& cutter) {
                return cutter.machine == machine.name && cutter.kind == CutterKind::blade;
            });
        if (!has_blade)
            shop.cutters.push_back({machine.name + " blade", CutterKind::blade, machine.name, usual_kerf});
    }
    return shop;
}

}  // namespace kw
