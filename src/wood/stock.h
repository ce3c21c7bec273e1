#pragma once
// The sheets and boards that parts are cut from.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "length/length.h"

namespace kw {

enum class StockKind { plywood, solid, panel };

// How the board was sawn: the growth rings run with its face, or stand on it.
enum class GrainCut { flatsawn, quartersawn };

// A place on a sheet that no part may have: from its corner, x along the grain.
struct StockDefect {
    Length x, y, length, width;
    bool operator==(const StockDefect&) const = default;
};

// As one looks at a face, or at a part of the box that stands as it does in the drawer.
enum class BandedEdge { left, right, top, bottom };

// A strip glued onto the edges of what is cut from a stock: of faces onto those named, of the box's sides, front and back onto their top
// edges where `top` is among them, since their ends are joints and their bottom edges run on the fence. Of bottoms onto none.
struct Banding {
    Length thickness;
    std::vector<BandedEdge> edges;

    bool has(BandedEdge edge) const;
    bool operator==(const Banding&) const = default;
};

// Boards or sheets of one size that can be had or are on hand.
struct StockSize {
    Length length;                            // along the grain
    std::optional<Length> width;              // of a sheet; a board is as wide as what is cut from it
    std::optional<int> count;                 // on hand; nothing: as many as are wanted can be bought
    std::optional<std::int64_t> price_cents;  // of one, in hundredths of whatever the maker pays in
    bool is_offcut = false;                   // is here already, and used first
    Length trim;                              // off every edge before anything is cut to size
    std::vector<StockDefect> defects = {};
    std::optional<Length> no_wider = {};  // of a board's offcut: what is cut from it, at most
    bool operator==(const StockSize&) const = default;
};

struct Stock {
    std::string name;
    Length thickness;  // measured, never the nominal one
    StockKind kind = StockKind::plywood;
    std::optional<std::string> species;  // solid wood's, as in species.h
    GrainCut cut = GrainCut::flatsawn;
    std::optional<double> moisture_percent;  // now
    Length uneven =
        Length::micrometres(20);  // one sigma, of one piece against another; common practice, no source
    bool may_turn = false;        // parts may lie across the grain: of a panel that has none
    std::vector<StockSize> sizes = {};
    std::optional<Banding> banding = std::nullopt;

    bool operator==(const Stock&) const = default;
};

// The names used in job files: "plywood", "solid", "panel"; "flatsawn", "quartersawn".
std::string_view name_of(StockKind kind);
std::string_view name_of(GrainCut cut);
std::string_view name_of(BandedEdge edge);  // "left", "right", "top", "bottom"
std::optional<BandedEdge> banded_edge_named(std::string_view name);
const std::vector<BandedEdge>& banded_edges();
std::optional<StockKind> stock_kind_named(std::string_view name);
std::optional<GrainCut> grain_cut_named(std::string_view name);
const std::vector<StockKind>& stock_kinds();
const std::vector<GrainCut>& grain_cuts();

}  // namespace kw
