#include "window/screenshot.h"

#include <algorithm>

#define STB_IMAGE_WRITE_IMPLEMENTATION
#define STB_IMAGE_WRITE_STATIC
#include <stb_image_write.h>

#include "window/gl_api.h"

namespace kw::window {

Pixels read_pixels(int width, int height) {
    Pixels pixels{width, height, {}};
    const std::size_t row = static_cast<std::size_t>(width) * 3;
    pixels.rgb.resize(row * static_cast<std::size_t>(height));
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, width, height, GL_RGB, GL_UNSIGNED_BYTE, pixels.rgb.data());
    for (int y = 0; y < height / 2; ++y) {
        const auto top = pixels.rgb.begin() + static_cast<std::ptrdiff_t>(row) * y;
        const auto foot = pixels.rgb.begin() + static_cast<std::ptrdiff_t>(row) * (height - 1 - y);
        std::swap_ranges(top, top + static_cast<std::ptrdiff_t>(row), foot);
    }
    return pixels;
}

bool save_png(const Pixels& pixels, const std::string& path) {
    return stbi_write_png(path.c_str(), pixels.width, pixels.height, 3, pixels.rgb.data(),
                          pixels.width * 3) != 0;
}

}  // namespace kw::window
