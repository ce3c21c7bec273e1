#pragma once
// The parts as a page to work through at the bench: equal ones together, a box to tick for each piece.

#include "job/work.h"
#include "print/page.h"

namespace kw::print {

// Parts of one drawer that are cut alike: of one size and stock.
struct EqualParts {
    std::string drawer;
    std::vector<Role> roles;  // each once: left and right side are alike
    PartSize size;            // of the first
    std::string stock;
    int count = 0;
    Length band = {};
    std::vector<BandedEdge> banded = {};
};

// In the order of the plan's parts.
std::vector<EqualParts> equal_parts(const Plan& plan);

std::vector<Page> part_list(const Work& work, Paper paper);

}  // namespace kw::print
