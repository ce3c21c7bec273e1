#include "checker/lines.h"

#include <cmath>
#include <limits>

namespace checker {
namespace {

constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();

}  // namespace

double first_wood_mm(const Solid& solid, int axis, const Point& line) {
    const auto wood = wood_along(solid, axis, line);
    return wood.empty() ? nowhere : wood.front().from;
}

double last_wood_mm(const Solid& solid, int axis, const Point& line) {
    const auto wood = wood_along(solid, axis, line);
    return wood.empty() ? nowhere : wood.back().to;
}

double gap_mm(const Solid& first, const Solid& second, int axis, const Point& line) {
    return first_wood_mm(second, axis, line) - last_wood_mm(first, axis, line);
}

double play_mm(const Solid& slotted, const Solid& tongue, int axis, const Point& line) {
    const double tongue_from = first_wood_mm(tongue, axis, line);
    const double tongue_to = last_wood_mm(tongue, axis, line);
    const double middle = (tongue_from + tongue_to) / 2;
    double wall_before = nowhere;
    double wall_after = nowhere;
    for (const Span& wall : wood_along(slotted, axis, line)) {
        const bool before = (wall.from + wall.to) / 2 < middle;
        if (before) wall_before = wall.to;
        if (!before && std::isnan(wall_after)) wall_after = wall.from;
    }
    return (tongue_from - wall_before) + (wall_after - tongue_to);
}

}  // namespace checker
