#include "wood/stock.h"

namespace kw {

std::string_view name_of(StockKind kind) {
    switch (kind) {
        case StockKind::plywood: return "plywood";
        case StockKind::solid: return "solid";
        case StockKind::panel: return "panel";
    }
    return {};
}

std::optional<StockKind> stock_kind_named(std::string_view name) {
    for (const StockKind kind : {StockKind::plywood, StockKind::solid, StockKind::panel})
        if (name_of(kind) == name) return kind;
    return std::nullopt;
}

std::string_view name_of(GrainCut cut) { return cut == GrainCut::flatsawn ? "flatsawn" : "quartersawn"; }

std::optional<GrainCut> grain_cut_named(std::string_view name) {
    if (name == "flatsawn") return GrainCut::flatsawn;
    if (name == "quartersawn") return GrainCut::quartersawn;
    return std::nullopt;
}

}  // namespace kw
