#pragma once
// Points where cuts can lie, sorted and with 0. Private to this folder.

#include <algorithm>
#include <cstddef>
#include <vector>

#include "cutting/packing.h"

namespace kw::cutting {

// The last point at or below `size`.
inline std::size_t index_below(const std::vector<Ticks>& points, Ticks size) {
    return static_cast<std::size_t>(std::upper_bound(points.begin(), points.end(), size) - points.begin()) -
           1;
}

// By the larger, then the lesser of two points: the point at or below what is left beside the lesser.
inline std::vector<std::vector<std::size_t>> rests_of(const std::vector<Ticks>& points) {
    std::vector<std::vector<std::size_t>> rests(points.size());
    for (std::size_t i = 0; i < points.size(); ++i)
        for (std::size_t k = 0; k <= i; ++k) rests[i].push_back(index_below(points, points[i] - points[k]));
    return rests;
}

}  // namespace kw::cutting
