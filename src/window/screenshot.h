#pragma once
#include <cstdint>
#include <string>
#include <vector>

namespace kw::window {

struct Pixels {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgb;  // rows from the top
};

// What the bound framebuffer holds. Call before the buffers are swapped.
Pixels read_pixels(int width, int height);
// False if the file could not be written.
bool save_png(const Pixels& pixels, const std::string& path);

}  // namespace kw::window
