#pragma once
// The boards and panels that parts are cut from.

#include <optional>
#include <string>
#include <string_view>

#include "length/length.h"

namespace kw {

enum class StockKind { plywood, solid, panel };
enum class GrainCut { flatsawn, quartersawn };

struct Stock {
    std::string name;
    Length thickness;  // measured, not nominal
    StockKind kind = StockKind::plywood;
    std::string species;                       // solid wood only; empty: not known
    GrainCut cut = GrainCut::flatsawn;
    std::optional<double> moisture_percent;    // now

    bool operator==(const Stock&) const = default;
};

std::string_view name_of(StockKind kind);
std::optional<StockKind> stock_kind_named(std::string_view name);
std::string_view name_of(GrainCut cut);
std::optional<GrainCut> grain_cut_named(std::string_view name);

}  // namespace kw
