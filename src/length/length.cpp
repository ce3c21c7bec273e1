#include "length/length.h"

#include <cassert>
#include <cmath>

namespace kw {

Length Length::nearest_mm(double mm) {
    const double ticks = mm * static_cast<double>(ticks_per_mm);
    assert(std::abs(ticks) < 9e18);  // false for what is not a number, too
    return from_ticks(std::llround(ticks));
}

}  // namespace kw
