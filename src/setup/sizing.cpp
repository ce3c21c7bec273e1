#include <algorithm>
#include <map>
#include <tuple>

#include "setup/setup.h"

namespace kw {
namespace {

struct Station {
    const Machine* machine = nullptr;
    const Cutter* cutter = nullptr;
    std::string guide;
    std::string verb;
};

const Cutter* blade_on(const Shop& shop, const Machine& machine) {
    for (const Cutter& cutter : shop.cutters)
        if (cutter.machine == machine.name && cutter.kind == CutterKind::blade) return &cutter;
    return nullptr;
}

const Machine* first_of(const Shop& shop, MachineKind kind) {
    for (const Machine& machine : shop.machines)
        if (machine.kind == kind && !machine.is_away) return &machine;
    return nullptr;
}

// How wide a board a miter saw crosscuts; common practice, no source.
constexpr Length miter_saw_reach = Length::millimetres(300);

// A short edge along the rip fence, with a long board across it, turns and is thrown: that goes against a stop
// (common practice, no source).
bool is_steady_on_the_fence(const SizeCut& cut) { return 3 * cut.edge >= 2 * cut.size; }

bool is_panel(const SizeCut& cut) { return cut.what == "bottoms" || cut.what == "faces"; }

Station station_for(const Shop& shop, const SizeCut& cut) {
    const Machine* saw = first_of(shop, MachineKind::table_saw);
    const bool along = is_panel(cut) ? is_steady_on_the_fence(cut) : cut.lengthwise;
    if (along)
        return {saw, saw ? blade_on(shop, *saw) : nullptr, "rip fence",
                cut.lengthwise ? "rip to width" : "cut to length"};
    const bool too_wide = is_panel(cut) && cut.edge > miter_saw_reach && saw;
    const Machine* machine = too_wide ? saw : crosscut_machine(shop);
    return {machine, machine ? blade_on(shop, *machine) : nullptr, "stop",
            cut.lengthwise ? "cut to width" : "crosscut to length"};
}

void say_what(Setup& setup, const std::string& what) {
    const std::size_t colon = setup.work.find(": ");
    if (colon == std::string::npos) setup.work += ": " + what;
    else if (setup.work.find(what, colon) == std::string::npos) setup.work += ", " + what;
}

}  // namespace

const Machine* crosscut_machine(const Shop& shop) {
    if (const Machine* miter = first_of(shop, MachineKind::miter_saw)) return miter;
    return first_of(shop, MachineKind::table_saw);
}

tl::expected<std::vector<Setup>, Refusal> sizing_setups(const Shop& shop, const std::vector<SizeCut>& cuts) {
    std::vector<Setup> setups;
    std::map<std::tuple<std::string, std::string, Length, bool>, std::size_t> place_of;
    for (const SizeCut& cut : cuts) {
        const Station station = station_for(shop, cut);
        if (!station.machine)
            return tl::unexpected(Refusal{"machines", Message::say("setup.nothing_cuts_to_size"),
                                          Message::say("setup.list_a_saw")});
        // Fronts go to length when their joint is locked, sides before: one setup only for those of one kind. And two
        // joints that are set on one machine are not locked at the same time.
        const auto key = std::make_tuple(station.machine->name, station.guide + cut.what + cut.waits_for,
                                         cut.size, cut.lengthwise);
        const auto [place, is_new] = place_of.try_emplace(key, setups.size());
        if (is_new) {
            Setup setup;
            setup.stage = cut.lengthwise ? Stage::rip : Stage::crosscut;
            setup.work = station.verb;
            setup.machine = station.machine->name;
            setup.cutter = station.cutter->name;
            setup.kerf = setup.make_up = station.cutter->kerf;
            setup.fence = cut.size;
            setup.guide = station.guide;
            setups.push_back(std::move(setup));
        }
        Setup& setup = setups[place->second];
        say_what(setup, cut.what);
        setup.passes.push_back({cut.from.part, cut.from.reference, BoardFace::inside, false});
    }
    return setups;
}

}  // namespace kw
