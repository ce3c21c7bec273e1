#pragma once
// The job's parts laid out on the boards and sheets that they are cut from.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cutting/cuts.h"
#include "cutting/effort.h"
#include "job/plan.h"
#include "job/standing.h"

namespace kw {

// One part in its place. Of a board x runs along it, and the width is the part's.
struct LaidPart {
    std::string part;  // its id
    cutting::Rectangle area;
    bool is_turned = false;
};

// A part as it is cut from its stock, before the setups bring it to size: finished, and what the job's `cutting` rules allow.
struct RoughSize {
    Length length, width;
};
RoughSize rough_size(const Job& job, const Part& part);

// What lies on one side of the blade once a cut is made.
struct CutSide {
    cutting::CutUse use = cutting::CutUse::waste;  // `cut`: it is cut further
    cutting::Rectangle area;
    bool is_strip = false;           // cut further, across this cut
    std::vector<std::size_t> parts;  // that it is, or that come of it
};

// A cut and what it is for; parts by their place in the piece's list.
struct LaidCut : cutting::Cut {
    std::vector<std::size_t> frees;      // parts that lie by themselves once it is made
    std::vector<std::size_t> strip_for;  // what is cut off is a strip for these
    std::optional<Length> too_short;     // something held at it is so long, less than is safe by hand
    // Between the blade and the fence (of a crosscut the stop), as wide or long as that is set; and on the blade's other side. Nothing: the
    // blade takes all that is there.
    std::optional<CutSide> at_fence = {}, beyond = {};
};

// One board or sheet, and how it is cut up.
struct LaidPiece {
    std::size_t size = 0;  // its index among the sizes of the stock
    std::vector<LaidPart> parts;
    std::vector<LaidCut> cuts;  // in the order of the saw; of a board crosscuts
    std::vector<cutting::Rectangle> offcuts;
};

struct CutPlace {
    std::size_t piece = 0, cut = 0;
};

// All cuts that are made with the fence, or the stop, set once.
struct LaidSetting {
    cutting::CutDirection direction = cutting::CutDirection::rip;
    Length fence;
    std::vector<CutPlace> cuts;
};

struct LaidStock {
    std::string stock;
    bool is_in_sheets = true;  // two-dimensional; else boards as wide as their parts
    std::vector<LaidPiece> pieces;
    bool is_in_money = false;  // cost and least_cost are in hundredths, else pieces that are bought
    std::int64_t cost = 0, least_cost = 0;
    bool proved = false;
    double yield = 0;  // 0 to 1
    // The cuts of all pieces in an order that sets the fence as seldom as possible: no order needs fewer than `least_settings`.
    std::vector<LaidSetting> settings;
    std::size_t least_settings = 0;
    std::optional<Problem> cannot;  // at the stock's field: why there is no layout
};

// A part, and what was freed for it.
struct FreedOf {
    std::string part;
    Freed freed;
};

struct LayOut {
    std::vector<LaidStock> stocks;  // of those that have sizes and parts
    std::vector<std::string>
        without_size;  // names of stock that parts are cut from, of which no size is said
    std::vector<std::string>
        cut_already;  // parts that have been at a machine or are freed, and were not lost: left out
    std::vector<FreedOf> freed;  // of those, the ones that lie by themselves as told
    std::vector<FreedOf>
        too_small;  // parts that can't be made of what was freed for them, and are laid out once more
};

// What is still to be cut of the plan. Sizes grow by the job's allowances; grain runs along a part's length, and a part is turned only where its stock says so. The same job and
// plan have the same layout on every machine.
LayOut lay_out(const Job& job, const Plan& plan, const Standing& standing,
               const cutting::Effort& effort = {});

// Whether it is said of any stock in which sizes it can be had.
bool can_be_laid_out(const Job& job);

// What is counted is on hand, and is not bought.
bool is_here(const StockSize& size);

// What a blade takes: the job's own, or that of the widest ripping blade in the shop.
Length layout_kerf(const Job& job);

}  // namespace kw
