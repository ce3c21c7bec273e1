#pragma once
// The moisture content that wood settles to in the air around it (its equilibrium moisture content).

#include <tl/expected.hpp>

#include "length/message.h"

namespace kw {

struct Air {
    double temperature_c = 20;
    double humidity_percent = 50;  // relative

    bool operator==(const Air&) const = default;
};

// USDA Wood Handbook (2021), eq. 4-5, its form for degrees Celsius. In percent of the dry wood's weight. The
// handbook derives it mainly from Sitka spruce and calls a tenth of a percent not meaningful. Refuses air
// beyond the part of table 4-2 that it is tested against, -1.1 to 48.9 C and up to 95 %, with the field
// `temperature` or `humidity`.
tl::expected<double, Refusal> equilibrium_moisture_percent(const Air& air);

}  // namespace kw
