#pragma once
// What a part of a panel can be worth at most. Private to this folder.

#include <vector>

#include "cutting/points.h"

namespace kw::cutting {

// All sums of pieces' sizes up to the panel's, each piece no oftener than it is wanted, with 0 and the panel's own: where cuts can lie
// (Herz, IBM J. Res. Dev. 16, 1972: canonical dissections). Empty where there are more than `most`.
std::vector<Ticks> cut_points(const std::vector<Piece>& pieces, Ticks size, bool is_length, std::size_t most);

// The values by Gilmore and Gomory's recursion over all first cuts, as if every piece were wanted without end (Oper. Res. 13, 1965;
// over cut points: Beasley, J. Opl Res. Soc. 36, 1985; from memory).
class PanelBound {
public:
    PanelBound(const Packing& panel, std::vector<Ticks> xs, std::vector<Ticks> ys);

    // Of a rectangle that is free: no less than any layout of it.
    std::int64_t within(Ticks length, Ticks width) const {
        return within_[at(index_below(xs_, length), index_below(ys_, width))];
    }
    // Of the panel around a rectangle that is cut from its corner. Its sides must be cut points.
    std::int64_t around(Ticks length, Ticks width) const {
        return around_[at(index_below(xs_, length), index_below(ys_, width))];
    }

private:
    std::size_t at(std::size_t x, std::size_t y) const { return x * ys_.size() + y; }
    void place_single(const Packing& panel);
    void fill_within();
    void fill_around();

    std::vector<Ticks> xs_;
    std::vector<Ticks> ys_;
    std::vector<std::vector<std::size_t>>
        x_rests_;  // by the larger, then the lesser point: the point that is left beside it
    std::vector<std::vector<std::size_t>> y_rests_;
    std::vector<std::int64_t> within_;
    std::vector<std::int64_t> around_;
};

// What still fits by area alone, of what is still wanted: pieces in parts, the most valuable for their area first (Dantzig 1957).
class AreaBound {
public:
    explicit AreaBound(const Packing& panel);
    // `used`: by piece.
    std::int64_t of(double area, const std::vector<int>& used) const;

private:
    struct Dense {
        std::size_t piece = 0;
        int count = 0;
        double area = 0;
        std::int64_t value = 0;
    };
    std::vector<Dense> pieces_;
};

}  // namespace kw::cutting
