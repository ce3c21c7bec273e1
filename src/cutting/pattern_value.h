#pragma once
// The most valuable pattern of a sheet, each piece as often as one likes. Private to this folder.

#include <cstdint>
#include <vector>

#include "cutting/packing_tree.h"

namespace kw::cutting {

// Where cuts need to lie at all: from every sum of sizes (each as often as one likes) the largest sum that fits beside it (raster points:
// Scheithauer and Terno, Oper. Res. Lett. 19, 1996, from memory), with 0 and the size itself. Empty where the sums are more than `most`.
std::vector<Ticks> raster_points(const std::vector<Piece>& pieces, Ticks size, bool is_length,
                                 std::size_t most);

// Which cuts are tried. Only with all of them is a pattern's value the most that there is; the others take a fraction of the time.
enum class CutsTried {
    strips,     // in strips and columns as wide as a piece, beside a piece
    at_pieces,  // everywhere, beside a piece
    all,
};

// Gilmore and Gomory's recursion over those points, in whole numbers: they are kept as floats, which hold them exactly up to 2^24
// and of which four are added and compared at once.
class PatternValue {
public:
    PatternValue(const std::vector<Piece>& pieces, std::vector<Ticks> xs, std::vector<Ticks> ys);

    std::int64_t steps(CutsTried cuts) const;  // of one evaluation, more or less
    // `values`: by piece, zero or more; a pattern's may come to 2^24 at most.
    std::int64_t most(const std::vector<std::int32_t>& values, CutsTried cuts);
    // A pattern of that value.
    PackingTree pattern(const std::vector<std::int32_t>& values) const;

private:
    struct Way {  // a piece lying one way
        std::size_t piece = 0;
        bool is_turned = false;
        Region size;
        std::size_t x = 0;  // the first points that hold it
        std::size_t y = 0;
    };
    // One direction of the table: its points, and the ones among them that hold a piece.
    struct Axis {
        std::vector<std::vector<std::size_t>>
            rests;  // by the larger, then the lesser point: the point beside it
        std::vector<std::size_t> parts;
        std::vector<std::size_t> all;           // 1, 2, 3, ...
        std::vector<std::size_t> halves;        // by point: the last one that is no more than half of it
        std::vector<std::size_t> parts_before;  // by point: how many parts are less
        std::vector<char> is_part;              // the last point as well
    };
    using Values = std::vector<std::int32_t>;

    static Axis axis_of(const std::vector<Ticks>& points, std::vector<std::size_t> parts);
    std::size_t index(std::size_t x, std::size_t y) const {
        return is_by_x_ ? x * stride_ + y : y * stride_ + x;
    }
    float& value(std::size_t x, std::size_t y) { return values_[index(x, y)]; }
    float value(std::size_t x, std::size_t y) const { return values_[index(x, y)]; }
    const Axis& x_axis() const { return is_by_x_ ? rows_ : columns_; }
    const Axis& y_axis() const { return is_by_x_ ? columns_ : rows_; }
    float* row(std::size_t i) { return &values_[i * stride_]; }
    float* strip(std::size_t i) { return &in_strips_[i * strips_stride_]; }
    void cut_between_rows(std::size_t i, bool is_anywhere);
    void cut_within_row(std::size_t i, bool is_anywhere);
    void cut_strips(std::size_t i);
    void take_apart(std::size_t x, std::size_t y, const Values& values, PackingTree& tree, int group) const;
    bool take_piece(std::size_t x, std::size_t y, const Values& values, PackingTree& tree, int group) const;
    void take_part(std::size_t x, std::size_t y, const Values& values, PackingTree& tree, int group) const;

    std::vector<Ticks> xs_;
    std::vector<Ticks> ys_;
    std::vector<Way> ways_;
    bool is_by_x_ =
        true;  // a row of the table has all y of one x; rows are as many as the direction with more points has
    Axis rows_;
    Axis columns_;
    std::size_t stride_ = 0;
    std::vector<float> values_;
    std::vector<std::size_t> strips_;  // the columns that are parts
    std::size_t strips_stride_ = 0;
    std::vector<float> in_strips_;  // the values in these columns once more, beside each other
};

}  // namespace kw::cutting
