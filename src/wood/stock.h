#pragma once
// The sheets and boards that parts are cut from.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "length/length.h"

namespace kw {

enum class StockKind { plywood, solid, panel };

// How the board was sawn: the growth rings run with its face, or stand on it.
enum class GrainCut { flatsawn, quartersawn };

struct Stock {
    std::string name;
    Length thickness;  // measured, never the nominal one
    StockKind kind = StockKind::plywood;
    std::optional<std::string> species;  // solid wood's, as in species.h
    GrainCut cut = GrainCut::flatsawn;
    std::optional<double> moisture_percent;  // now
    Length uneven =
        Length::micrometres(20);  // one sigma, of one piece against another; common practice, no source

    bool operator==(const Stock&) const = default;
};

// The names used in job files: "plywood", "solid", "panel"; "flatsawn", "quartersawn".
std::string_view name_of(StockKind kind);
std::string_view name_of(GrainCut cut);
std::optional<StockKind> stock_kind_named(std::string_view name);
std::optional<GrainCut> grain_cut_named(std::string_view name);
const std::vector<StockKind>& stock_kinds();
const std::vector<GrainCut>& grain_cuts();

}  // namespace kw
