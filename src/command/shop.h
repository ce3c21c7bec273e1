#pragma once
// `kerfwright shop`: what the shop has learned, and what the maker knows better.

#include <optional>
#include <string>

#include "command/run.h"
#include "file/shop_file.h"

namespace kw {

struct ShopAsked {
    std::string file;          // where the shop's file is, or will be
    int forget = 0;            // a number of the list; 0: nothing
    std::string correct;       // NUMBER=LENGTH; empty: nothing
    std::optional<Unit> unit;  // empty: lengths are shown in both, and read as millimetres
};

// Changes what is asked, saves it, and lists what is believed then. Returns the exit status.
int run_shop(const ShopAsked& asked, const ShopFile& shop, const CommandIo& io, const std::string& now);

// Says what is wrong with a shop's file. Returns 1.
int refuse_shop(const std::string& file, const Problem& problem, const CommandIo& io,
                Unit unit = Unit::millimetre);

}  // namespace kw
