#pragma once
// Looking into drawings.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "draw/drawing.h"
#include "draw/layout.h"

namespace shapes_of {

template <class Kind>
std::vector<Kind> all(const kw::draw::Drawing& drawing) {
    std::vector<Kind> found;
    for (const kw::draw::Shape& shape : drawing.shapes)
        if (const auto* kind = std::get_if<Kind>(&shape)) found.push_back(*kind);
    return found;
}

inline std::vector<kw::draw::Fill> fills(const kw::draw::Drawing& drawing, kw::draw::Material material) {
    std::vector<kw::draw::Fill> found;
    for (const kw::draw::Fill& fill : all<kw::draw::Fill>(drawing))
        if (fill.material == material) found.push_back(fill);
    return found;
}

inline std::vector<kw::draw::Line> lines(const kw::draw::Drawing& drawing, kw::draw::Stroke stroke) {
    std::vector<kw::draw::Line> found;
    for (const kw::draw::Line& line : all<kw::draw::Line>(drawing))
        if (line.stroke == stroke) found.push_back(line);
    return found;
}

inline bool is_wood(const kw::draw::Fill& fill) {
    using kw::draw::Material;
    return fill.material == Material::plywood || fill.material == Material::long_grain ||
           fill.material == Material::end_grain;
}

inline std::vector<kw::draw::Fill> wood_in(const kw::draw::Drawing& drawing) {
    std::vector<kw::draw::Fill> wood;
    for (const kw::draw::Fill& fill : all<kw::draw::Fill>(drawing))
        if (is_wood(fill)) wood.push_back(fill);
    return wood;
}

// Of rings that none lies in another.
inline double area_mm2(const std::vector<kw::draw::Fill>& fills) {
    double sum = 0;
    for (const kw::draw::Fill& fill : fills)
        for (const kw::draw::Ring& ring : fill.rings) {
            double twice = 0;
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const kw::draw::Point a = ring[i], b = ring[(i + 1) % ring.size()];
                twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
            }
            sum += std::abs(twice) / 2;
        }
    return sum;
}

// Even-odd, by counting the edges to the right.
inline bool covers(const kw::draw::Fill& fill, kw::draw::Point p) {
    bool inside = false;
    for (const kw::draw::Ring& ring : fill.rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const kw::draw::Point a = ring[i], b = ring[(i + 1) % ring.size()];
            if ((a.y_mm > p.y_mm) == (b.y_mm > p.y_mm)) continue;
            const double x = a.x_mm + (p.y_mm - a.y_mm) / (b.y_mm - a.y_mm) * (b.x_mm - a.x_mm);
            if (x > p.x_mm) inside = !inside;
        }
    return inside;
}

inline kw::draw::Box box_of(const kw::draw::Fill& fill) {
    kw::draw::Drawing alone;
    alone.shapes = {fill};
    return kw::draw::bounds(alone);
}

inline bool meet(const kw::draw::PixelBox& a, const kw::draw::PixelBox& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

inline const kw::draw::Dimension* dimension(const std::vector<kw::draw::Dimension>& from,
                                            const std::string& word) {
    const auto found = std::find_if(from.begin(), from.end(), [&](const kw::draw::Dimension& d) {
        return d.text.compare(0, word.size() + 1, word + " ") == 0;
    });
    return found == from.end() ? nullptr : &*found;
}

inline bool says(const kw::draw::Drawing& drawing, const std::string& words) {
    const auto labels = all<kw::draw::Label>(drawing);
    return std::any_of(labels.begin(), labels.end(), [&](const kw::draw::Label& label) {
        return label.text.find(words) != std::string::npos;
    });
}

}  // namespace shapes_of
