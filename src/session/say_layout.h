#pragma once
// A layout in the maker's words: what to buy, how good it is, and the cuts one after another.

#include <string>
#include <vector>

#include "job/lay_out.h"
#include "session/say_log.h"

namespace kw {

// "2 sheets; no layout takes fewer; 83 % of them become parts; 140.00 in all".
std::string say_layout(const Job& job, const LaidStock& laid);

// What to buy of it: "2 of 96 × 48 in"; empty: all of it is on hand.
std::vector<std::string> say_to_buy(const Job& job, const LaidStock& laid);

// "96 × 48 in", "96 in long"; "offcut of 30 × 20 in".
std::string say_size(const Job& job, const StockSize& size);

struct SaidCut {
    std::string cut;
    std::string caution;  // empty: nothing out of the common
};

// The cuts of one board or sheet in the order of the saw: "2. rip 95 1/2 × 47 1/2 in, fence 4 in: between fence and blade a strip for 1 and 3;
// what is left, 95 1/2 × 43 3/8 in, goes on". Its trim comes first.
std::vector<SaidCut> say_cuts(const Job& job, const LaidStock& laid, const LaidPiece& piece);

// All cuts by the setting of fence or stop, the first line saying how many there are: "fence 4 in: 1.2, 2.1".
std::vector<std::string> say_settings(const Job& job, const LaidStock& laid);

// "7 parts are cut already and left out; ..."; empty: none is.
std::string say_cut_already(const Job& job, const LayOut& layout);

// Of parts that lie by themselves as told: how many, and of each that is laid out once more, why. Whole sentences; none where none is freed.
std::vector<std::string> say_freed(const Job& job, const Plan& plan, const LayOut& layout,
                                   SetupNames names = SetupNames::ids);

// What is on hand of a stock after what was broken down of it, the offcuts that were kept with it; empty where nothing was, or nothing is counted.
// `job`: a work's, whose stock is what is on hand.
std::string say_on_hand(const Job& job, const std::string& stock);

// Why there is nothing laid out at all.
std::string say_nothing_laid_out(const Job& job, const LayOut& layout);

// "18 × 4 in"
std::string say_rectangle(const Job& job, const cutting::Rectangle& area);

// "18 × 4 in, turned"
std::string say_place(const Job& job, const LaidPart& part);

}  // namespace kw
