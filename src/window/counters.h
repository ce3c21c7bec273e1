#pragma once
// What a benchmark wants to know of a running window. With KERFWRIGHT_STATS=FILE the counters lie in that file, mapped
// into memory, so that reading them does not wake the program. Layout of the file: these four, native byte order.

#include <cstdint>

namespace kw::window {

struct Counters {
    std::uint64_t frames = 0;    // drawn
    std::uint64_t wake_ups = 0;  // returns from waiting
    std::uint64_t events = 0;    // from the window system
    std::uint64_t pictures = 0;  // drawings rendered anew
};

}  // namespace kw::window
