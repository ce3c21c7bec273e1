#pragma once
// Boxes on a sheet: how they lie to each other.

#include <algorithm>

#include "draw/layout.h"

namespace kw::draw {

inline bool meet(const PixelBox& a, const PixelBox& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

inline PixelBox padded(const PixelBox& box, double pad) {
    return {box.left - pad, box.top - pad, box.right + pad, box.bottom + pad};
}

inline PixelBox around(Pixel a, Pixel b) {
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

inline PixelBox both(const PixelBox& a, const PixelBox& b) {
    return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
            std::max(a.bottom, b.bottom)};
}

}  // namespace kw::draw
