#include <algorithm>

#include "draw/jig_sizes.h"
#include "draw/setup_parts.h"

namespace kw::draw {

double fence_top_mm(const SetupScene& scene) {
    if (scene.index) return jig::pin_top_mm(scene);
    const double t = scene.thickness.mm();
    return t + std::max(0.45 * t, 6.0);
}

double fence_left_mm(const SetupScene& scene) {
    if (scene.index) return -jig::pin_width_mm(scene);
    return -std::max(0.8 * scene.thickness.mm(), 9.0);
}

double spacer_top_mm(const SetupScene& scene) {
    return scene.index ? jig::pin_top_mm(scene) : 0.86 * scene.thickness.mm();
}

double slab_mm(const SetupScene& scene) {
    if (scene.index) return jig::slab_mm(scene);
    return -std::max(0.38 * scene.thickness.mm(), 4.5);
}

double drawn_top_mm(const SetupScene& scene) {
    return scene.index ? jig::board_top_mm(scene) : fence_top_mm(scene);
}

Reach reach_of(const SetupScene& scene) {
    if (scene.index) return jig::reach_of(scene);
    const double t = scene.thickness.mm(), cut_right = std::max(scene.far(), scene.spacer).mm();
    return {fence_left_mm(scene) - 0.3 * t, cut_right + std::max(3.5 * t, 42.0) + 0.3 * t};
}

}  // namespace kw::draw
