// The shop of a random job: what it owns, and how it likes its joints.
#pragma once

#include <string>
#include <vector>

#include "checker/amount.h"
#include "checker/dice.h"
#include "checker/json.h"

namespace checker {

struct ShopStock {
    std::string name;
    double thickness_mm = 0;
    bool solid = false;
};

struct ShopCutter {
    std::string name;
    double kerf_mm = 0;
};

// The JSON is what goes into the job; the numbers beside it are what the drawers have to respect.
struct Shop {
    Unit unit = Unit::millimetre;
    Json fit;
    Json stock = Json::array();
    Json machines = Json::array();
    Json cutters = Json::array();
    double clearance_mm = 0;
    double groove_clearance_mm = 0;
    std::vector<ShopStock> boards;          // for sides, fronts, backs, faces: 9 to 19 mm
    std::vector<ShopStock> panels;          // for bottoms: 5 to 9 mm
    std::vector<ShopCutter> joint_cutters;  // stacks that the arbor takes, and bits
};

Shop random_shop(Unit unit, Dice& dice);

}  // namespace checker
