#include "length/length.h"

#include <cmath>

namespace kw {

Length Length::nearest_mm(double mm) {
    return from_ticks(std::llround(mm * static_cast<double>(ticks_per_mm)));
}

}  // namespace kw
