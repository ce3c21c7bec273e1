// The program's plan, as the contract has it (plan, version 1).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "checker/json.h"

namespace checker {

struct PlanBox {
    std::string drawer;
    double width_mm = 0;
    double height_mm = 0;
    double depth_mm = 0;
};

struct PlanPart {
    std::string id;
    std::string drawer;
    int copy = 0;
    std::string role;
    double length_mm = 0;
    double width_mm = 0;
    double thickness_mm = 0;
    std::string stock;
};

struct Pass {
    std::string part;
    std::string reference;
    std::string down;
    bool nibble = false;
    int cuts = 1;  // of a row
};

struct Setup {
    std::string id;
    std::string group;
    std::string work;
    std::string machine;
    std::string cutter;
    std::string guide;
    double kerf_mm = 0;
    double fence_mm = 0;
    std::optional<double> height_mm;  // none: the cut goes through
    std::vector<double> heights_mm;   // of its passes one above the other; none: all at once
    double spacer_mm = 0;
    bool sacrificial = false;
    std::optional<double> index_mm;  // from one cut of a row to the next: the board stands on its end
    std::vector<Pass> passes;

    bool through() const { return !height_mm; }
    double near_mm() const { return fence_mm - spacer_mm; }
    double far_mm() const { return near_mm() + kerf_mm; }
};

struct Plan {
    std::vector<PlanBox> boxes;
    std::vector<PlanPart> parts;
    std::vector<Setup> setups;
    std::vector<std::string> sequence;
    double seconds = 0;
    double lower_bound_seconds = 0;
    bool proved = false;
};

// Throws std::exception, saying what is missing or has the wrong type.
Plan read_plan(const Json& plan);

}  // namespace checker
