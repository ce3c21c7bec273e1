#pragma once
// What no layout costs less than, by patterns. Private to this folder.

#include <functional>
#include <optional>

#include "cutting/covering.h"
#include "cutting/effort.h"
#include "cutting/packing_tree.h"
#include "cutting/pattern_value.h"

namespace kw::cutting {

// Asked now and then, with the bound so far in sheets, whether the search goes on.
using BoundWatch = std::function<Searching(std::int64_t sheets)>;

// Patterns for one kind of sheet, the best for prices that the covering asks for (Gilmore and Gomory's linear program by columns, Oper. Res. 9,
// 1961). Quick ways to price come first, the exact one last. From one pricing to the next the prices go only part of the way from the ones
// with the best bound (Wentges, Int. Trans. Oper. Res. 4, 1997). All from memory.
class Patterns {
public:
    // Nothing: more than one kind of sheet, one with defects, or sizes with more sums than a table holds.
    static std::optional<Patterns> of(const Packing& packing);

    // With prices for the pieces such that no pattern of a sheet is worth more than the sheet, all pieces together cost no more than the
    // sheets (Farley, Oper. Res. 38, 1990, from memory). In sheets; ends when `enough` is reached. Zero: `looks` didn't last.
    // After a stop it is the bound so far.
    std::int64_t least_sheets(std::int64_t enough, std::int64_t looks, const BoundWatch& watch = {});

    // Sheets by rounding: as often as the linear program uses a pattern in whole numbers, then the one it uses most, and again for what is
    // left (diving), until few sheets are left to lay out. There may be more pieces on them than are wanted.
    std::vector<PackingTree> round(std::int64_t looks, double few, const BoundWatch& watch = {});

    std::int64_t looks() const { return steps_ / steps_a_look; }

private:
    static constexpr std::int64_t steps_a_look = 16;  // in the time of one

    Patterns(const Packing& packing, std::vector<Ticks> xs, std::vector<Ticks> ys);
    void price(Covering& covering, const std::vector<double>& demand, CutsTried last, std::int64_t enough,
               std::int64_t until, const BoundWatch& watch);
    bool is_to_end(const BoundWatch& watch);
    double take_pattern(const std::vector<std::int32_t>& prices, const std::vector<double>& at);
    std::vector<std::int32_t> whole_prices(const std::vector<double>& prices) const;

    std::vector<Piece> pieces_;
    Region sheet_;
    PatternValue values_;
    std::vector<double> alone_;
    std::vector<PackingTree> trees_;
    std::vector<Counts> counts_;
    std::int64_t steps_ = 0;
    std::int64_t bound_ = 0;
    std::int64_t next_ask_ = 0;  // in steps
    bool is_stopped_ = false;
};

}  // namespace kw::cutting
