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

// Gilmore and Gomory's recursion over those points, whole numbers throughout.
class PatternValue {
public:
    PatternValue(const std::vector<Piece>& pieces, std::vector<Ticks> xs, std::vector<Ticks> ys);

    std::int64_t steps() const;  // of one evaluation, more or less
    // `values`: by piece, zero or more.
    std::int64_t most(const std::vector<std::int32_t>& values);
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
    using Values = std::vector<std::int32_t>;

    std::int32_t& value(std::size_t x, std::size_t y) { return values_[x * ys_.size() + y]; }
    std::int32_t value(std::size_t x, std::size_t y) const { return values_[x * ys_.size() + y]; }
    void cut_across(std::size_t x);
    void cut_along(std::size_t x);
    void take_apart(std::size_t x, std::size_t y, const Values& values, PackingTree& tree, int group) const;
    bool take_piece(std::size_t x, std::size_t y, const Values& values, PackingTree& tree, int group) const;
    void take_part(std::size_t x, std::size_t y, const Values& values, PackingTree& tree, int group) const;

    std::vector<Ticks> xs_;
    std::vector<Ticks> ys_;
    std::vector<Way> ways_;
    std::vector<std::vector<std::size_t>>
        x_rests_;  // by the larger, then the lesser point: the point that is left beside it
    std::vector<std::vector<std::size_t>> y_rests_;
    std::vector<std::int32_t> values_;
};

}  // namespace kw::cutting
