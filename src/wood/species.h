#pragma once
// How much each wood moves across its grain as its moisture changes.

#include <string>
#include <string_view>
#include <vector>

namespace kw {

// Change per unit of width for each 1 % of moisture content: radial (across a quartersawn board) and
// tangential (across a flatsawn one). They hold between 6 and 14 % and are of the width at 10 %.
struct Species {
    std::string_view name;
    std::string_view trade_name;  // as lumber yards have it; empty where it is the same
    double radial_per_percent;
    double tangential_per_percent;
};

const std::vector<Species>& known_species();

// By either name, in any case; nullptr if it is not among them. The result lives as long as the program.
const Species* find_species(std::string_view name);

// "american basswood, american beech, ...": for messages.
std::string species_names();

}  // namespace kw
