#include <doctest/doctest.h>

#include <set>

#include "wood/stock.h"

using namespace kw;

TEST_CASE("stock and cuts go by the names of the job file") {
    CHECK(name_of(StockKind::plywood) == "plywood");
    CHECK(name_of(StockKind::solid) == "solid");
    CHECK(name_of(StockKind::panel) == "panel");
    CHECK(name_of(GrainCut::flatsawn) == "flatsawn");
    CHECK(name_of(GrainCut::quartersawn) == "quartersawn");
    CHECK(stock_kinds().size() == 3);
    CHECK(grain_cuts().size() == 2);
    for (const StockKind kind : stock_kinds()) CHECK(stock_kind_named(name_of(kind)) == kind);
    for (const GrainCut cut : grain_cuts()) CHECK(grain_cut_named(name_of(cut)) == cut);
    for (const char* name : {"", "Plywood", "veneer", "plywood "})
        CHECK_FALSE(stock_kind_named(name).has_value());
    for (const char* name : {"", "Flatsawn", "riftsawn"}) CHECK_FALSE(grain_cut_named(name).has_value());
}
