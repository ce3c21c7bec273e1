#pragma once
// The move that brings a joint into tolerance: which controls, and by how much, in steps that a maker can
// make.

#include <cstddef>
#include <vector>

#include "testcut/model.h"

namespace kw {

struct MoveOptions {
    // Chance of fit given up to save one unit of effort. Common practice, no source.
    double effort_price = 0.01;
    // Chance of fit given up to cut the same test ends again instead of fresh ones. Common practice, no source.
    double fresh_end_price = 0.0;
    std::size_t most_moves = 3;  // controls moved at once
};

struct BestMove {
    std::vector<Move> moves;    // in the order of the controls; empty where standing still is as good
    double chance_after = 0.0;  // in tolerance, after these moves, with the spread that they add
};

// The move of at most `most_moves` movable controls, each by a whole number of its resolution, with the
// highest chance_after - effort_price * effort - fresh_end_price (where fresh ends are needed). Starts for every choice of controls from the least squares
// toward the outcomes' targets, weighted by their tolerances, and the roundings about it; then goes on from
// the best in single and double steps while they help. Between moves of the same chance the one that ends
// nearer the targets is taken.
BestMove best_move(const Model& model, const Belief& belief, const MoveOptions& options = {});

}  // namespace kw
