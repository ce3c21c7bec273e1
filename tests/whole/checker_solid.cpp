// Boards as blocks less blocks: volumes and lines against arithmetic that can be done by hand, and against a count of random points.
#include <doctest/doctest.h>

#include "checker/dice.h"
#include "checker/solid.h"

using checker::Block;
using checker::Point;
using checker::Solid;

namespace {

double volume(const std::vector<Block>& blocks) {
    double sum = 0;
    for (const Block& block : blocks) {
        sum +=
            (block.high[0] - block.low[0]) * (block.high[1] - block.low[1]) * (block.high[2] - block.low[2]);
    }
    return sum;
}

bool inside(const Block& block, const Point& point) {
    for (std::size_t i = 0; i < 3; ++i) {
        if (point[i] <= block.low[i] || point[i] >= block.high[i]) return false;
    }
    return true;
}

Block random_block(checker::Dice& dice, std::int64_t size) {
    Block block;
    for (std::size_t i = 0; i < 3; ++i) {
        const auto low = static_cast<double>(dice.between(-2, size));
        block.low[i] = low;
        block.high[i] = low + static_cast<double>(dice.between(1, size));
    }
    return block;
}

Solid random_solid(checker::Dice& dice) {
    Solid solid{{{0, 0, 0}, {10, 10, 10}}, {}};
    const std::int64_t cuts = dice.between(0, 6);
    for (std::int64_t i = 0; i < cuts; ++i) solid.cuts.push_back(random_block(dice, 8));
    return solid;
}

bool in_wood(const Solid& solid, const Point& point) {
    if (!inside(solid.hull, point)) return false;
    for (const Block& cut : solid.cuts) {
        if (inside(cut, point)) return false;
    }
    return true;
}

// The middle of a random cell of the unit grid on which all the test's blocks lie.
Point random_cell(checker::Dice& dice) {
    Point point;
    for (double& coordinate : point) coordinate = static_cast<double>(dice.between(0, 9)) + 0.5;
    return point;
}

}  // namespace

TEST_CASE("a block less its cuts has the volume of the cells that no cut covers") {
    checker::Dice dice(5);
    for (int i = 0; i < 200; ++i) {
        const Solid solid = random_solid(dice);
        double cells = 0;
        for (int x = 0; x < 10; ++x) {
            for (int y = 0; y < 10; ++y) {
                for (int z = 0; z < 10; ++z) cells += in_wood(solid, {x + 0.5, y + 0.5, z + 0.5}) ? 1 : 0;
            }
        }
        CHECK(volume(left_of(solid.hull, solid.cuts)) == doctest::Approx(cells));
    }
}

TEST_CASE("a line is in the wood where its points are") {
    checker::Dice dice(6);
    for (int i = 0; i < 2000; ++i) {
        const Solid solid = random_solid(dice);
        Point point = random_cell(dice);
        const int axis = static_cast<int>(dice.between(0, 2));
        const auto spans = wood_along(solid, axis, point);
        double& moving = point[static_cast<std::size_t>(axis)];
        for (moving = 0.5; moving < 10; moving += 1) {
            bool met = false;
            for (const checker::Span& span : spans) met = met || (span.from < moving && moving < span.to);
            CHECK(met == in_wood(solid, point));
        }
    }
}

TEST_CASE("two solids overlap by more than 0.9 where they share a cell of 1") {
    checker::Dice dice(7);
    int overlaps = 0;
    for (int i = 0; i < 500; ++i) {
        const Solid one = random_solid(dice);
        const Solid other{random_block(dice, 8), {random_block(dice, 4)}};
        bool share = false;
        for (int x = 0; x < 10; ++x) {
            for (int y = 0; y < 10; ++y) {
                for (int z = 0; z < 10; ++z) {
                    const Point cell{x + 0.5, y + 0.5, z + 0.5};
                    share = share || (in_wood(one, cell) && in_wood(other, cell));
                }
            }
        }
        overlaps += share ? 1 : 0;
        CHECK(overlap_more_than(one, other, 0.9) == share);
    }
    CHECK(overlaps > 100);
}

TEST_CASE("a skin of rounding is no wood, and a ridge of a hundredth is") {
    const Block board{{0, 0, 0}, {100, 50, 12}};
    for (const double ridge : {0.000001, 0.01}) {
        const Solid dado{board, {{{10, 0, 0}, {16, 50, 5}}, {{16 + ridge, 0, 0}, {22, 50, 5}}}};
        const Block slot{{10, 0, 0}, {22, 50, 5}};
        CHECK(leaves_more_than(slot, dado.cuts, 0.002) == (ridge > 0.002));
        CHECK(wood_along(dado, 0, {0, 25, 1}).size() == (ridge > 0.002 ? 3 : 2));
    }
}

TEST_CASE("a placed board has the wood of its points turned the same way") {
    checker::Dice dice(8);
    const checker::Placing placing{{1, 2, 0}, {false, false, true}, {40, 3, 5}};
    for (int i = 0; i < 500; ++i) {
        const Solid solid = random_solid(dice);
        const Solid turned = placed(solid, placing);
        const Point point = random_cell(dice);
        CHECK(in_wood(solid, point) == in_wood(turned, {40 - point[2], 3 + point[0], 5 + point[1]}));
    }
}
