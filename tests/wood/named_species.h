#pragma once
// A species that must be known.

#include <doctest/doctest.h>

#include <string>

#include "wood/species.h"

namespace kw::tests {

inline const Species& species(std::string_view name) {
    const Species* found = find_species(name);
    REQUIRE_MESSAGE(found != nullptr, std::string(name));
    return *found;
}

}  // namespace kw::tests
