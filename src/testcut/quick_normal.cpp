#include "testcut/quick_normal.h"

#include "testcut/normal.h"

namespace kw {

QuickNormal::QuickNormal() {
    for (std::size_t i = 0; i < points; ++i) {
        const double z = -reach + double(i) / per_sigma;
        below_[i] = normal_below(z);
        density_[i] = normal_density(z);
        slope_[i] = -z * density_[i];
    }
}

const QuickNormal& quick_normal() {
    static const QuickNormal table;
    return table;
}

}  // namespace kw
