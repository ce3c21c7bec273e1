#pragma once
// A layout in the maker's words: what to buy, how good it is, and the cuts one after another.

#include <string>
#include <vector>

#include "job/lay_out.h"

namespace kw {

// "2 sheets; no layout takes fewer; 83 % of them become parts; 140.00 in all".
std::string say_layout(const Job& job, const LaidStock& laid);

// What to buy of it: "2 of 96 × 48 in"; empty: all of it is on hand.
std::vector<std::string> say_to_buy(const Job& job, const LaidStock& laid);

// "96 × 48 in", "96 in long"; "offcut of 30 × 20 in".
std::string say_size(const Job& job, const StockSize& size);

// The cuts of one board or sheet in the order of the saw: "rip 4 in off 95 1/2 × 47 1/2 in". Its trim comes first.
std::vector<std::string> say_cuts(const Job& job, const LaidStock& laid, const LaidPiece& piece);

// "18 × 4 in"
std::string say_rectangle(const Job& job, const cutting::Rectangle& area);

// "18 × 4 in, turned"
std::string say_place(const Job& job, const LaidPart& part);

}  // namespace kw
