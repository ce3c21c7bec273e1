#include "wood/stock.h"

#include <algorithm>

namespace kw {
namespace {

template <class Kind>
std::optional<Kind> named(const std::vector<Kind>& kinds, std::string_view name) {
    for (const Kind kind : kinds)
        if (name_of(kind) == name) return kind;
    return std::nullopt;
}

}  // namespace

std::string_view name_of(StockKind kind) {
    switch (kind) {
        case StockKind::plywood: return "plywood";
        case StockKind::solid: return "solid";
        case StockKind::panel: return "panel";
    }
    return "";
}

std::string_view name_of(GrainCut cut) {
    switch (cut) {
        case GrainCut::flatsawn: return "flatsawn";
        case GrainCut::quartersawn: return "quartersawn";
    }
    return "";
}

std::optional<StockKind> stock_kind_named(std::string_view name) { return named(stock_kinds(), name); }
std::optional<GrainCut> grain_cut_named(std::string_view name) { return named(grain_cuts(), name); }

const std::vector<StockKind>& stock_kinds() {
    static const std::vector<StockKind> all = {StockKind::plywood, StockKind::solid, StockKind::panel};
    return all;
}

const std::vector<GrainCut>& grain_cuts() {
    static const std::vector<GrainCut> all = {GrainCut::flatsawn, GrainCut::quartersawn};
    return all;
}

bool Banding::has(BandedEdge edge) const {
    return std::find(edges.begin(), edges.end(), edge) != edges.end();
}

std::string_view name_of(BandedEdge edge) {
    switch (edge) {
        case BandedEdge::left: return "left";
        case BandedEdge::right: return "right";
        case BandedEdge::top: return "top";
        case BandedEdge::bottom: return "bottom";
    }
    return "";
}

std::optional<BandedEdge> banded_edge_named(std::string_view name) { return named(banded_edges(), name); }

const std::vector<BandedEdge>& banded_edges() {
    static const std::vector<BandedEdge> all = {BandedEdge::left, BandedEdge::right, BandedEdge::top,
                                                BandedEdge::bottom};
    return all;
}

}  // namespace kw
