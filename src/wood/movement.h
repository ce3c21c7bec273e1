#pragma once
// How far solid wood moves across its grain over the year.

#include <optional>
#include <string_view>

#include <tl/expected.hpp>

#include "length/message.h"
#include "wood/species.h"
#include "wood/stock.h"

namespace kw {

// The moisture content of the wood in the driest and in the dampest month of where the drawer will live. As
// preset, heated rooms of a temperate country (common practice, no source).
struct Climate {
    double driest_percent = 6;
    double dampest_percent = 11;

    bool operator==(const Climate&) const = default;
};

// Refuses what no wood can do, with the field `driest` or `dampest`: out of order, below 0, or above 30 %
// (the handbook's fibre saturation, above which wood no longer swells).
std::optional<Refusal> check_climate(const Climate& climate);

// USDA Wood Handbook (2010), eq. 13-2: D_I C (M_F - M_I), with D_I the width at M_I. Positive where the
// panel grows. To the nearest tick, which says nothing of its accuracy: one coefficient can't predict a
// single board, so show a tenth of a millimetre at most.
Length movement(const Species& species, GrainCut cut, Length width, double from_percent, double to_percent);

// The equation is made for moisture contents from 6 to 14 %; beyond them its figure is a rough one.
bool movement_holds(double from_percent, double to_percent);

// From the narrowest to the widest in the year, never negative, for a panel of `width` in the driest month.
// Refuses a species that is not in the table, with the field `species`.
tl::expected<Length, Refusal> panel_swing(std::string_view species, GrainCut cut, Length width,
                                          const Climate& climate);

}  // namespace kw
