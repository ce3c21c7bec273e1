#pragma once
// What stands in the shop: machines and cutters.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "length/length.h"

namespace kw {

enum class MachineKind { table_saw, router_table, miter_saw };

struct Machine {
    std::string name;
    MachineKind kind = MachineKind::table_saw;
    Length max_dado_width;  // what the arbor takes, or the widest bit
    Length max_height;      // of the cutter above the table
    Length least_part;      // shortest part that is run through without a carrier
    Length fence_step;      // how finely the fence can be set
    Length height_step;     // how finely the height can be set
    std::optional<Length> height_per_turn =
        std::nullopt;  // of the handwheel, as the maker measured it; never assumed
    // Set again to the same mark, a control comes back within this, nineteen times in twenty. Common practice, no source.
    Length fence_repeats = Length::micrometres(60);
    Length height_repeats = Length::micrometres(60);
    bool is_away = false;  // lent out, or broken: nothing is done on it

    bool operator==(const Machine&) const = default;
};

enum class CutterKind { blade, dado_stack, bit };

struct Cutter {
    std::string name;
    CutterKind kind = CutterKind::dado_stack;
    std::string machine;
    Length kerf;                              // what it really cuts
    std::vector<Length> shims = {};           // that are in the stack for this kerf
    std::vector<Length> spares = {};          // shims that the maker owns beside those
    std::vector<Length> chippers = {};        // likewise: in the stack for this kerf,
    std::vector<Length> spare_chippers = {};  // and owned beside those
    std::map<Length, std::string> as_written =
        {};  // each of these pieces as the maker wrote it, with its unit
    // By what the shop has learned of it: how much wider than `kerf` it cuts.
    Length known_wider = {};
    std::optional<Length> depth_per_pass = std::nullopt;  // of a bit: the most it takes at once

    bool operator==(const Cutter&) const = default;
};

// The names used in job files: "table saw", "blade" and so on.
std::string_view name_of(MachineKind kind);
std::string_view name_of(CutterKind kind);
std::optional<MachineKind> machine_kind_named(std::string_view name);
std::optional<CutterKind> cutter_kind_named(std::string_view name);
const std::vector<MachineKind>& machine_kinds();
const std::vector<CutterKind>& cutter_kinds();

// A machine of this kind with the usual limits (common practice, no source): see shop.cpp.
Machine usual_machine(std::string name, MachineKind kind);

struct Shop {
    std::vector<Machine> machines;
    std::vector<Cutter> cutters;

    const Machine* machine_named(std::string_view name) const;
    const Cutter* cutter_named(std::string_view name) const;
    const Machine* machine_of(const Cutter& cutter) const { return machine_named(cutter.machine); }
};

// The shop with what every shop has but nobody writes down: a miter saw and a table saw without a blade get one.
Shop with_implied_blades(Shop shop);

}  // namespace kw
