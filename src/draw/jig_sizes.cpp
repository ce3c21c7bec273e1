#include "draw/jig_sizes.h"

#include <algorithm>

namespace kw::draw::jig {
namespace {

// In pitches, beside what is cut.
constexpr double wall_share = 0.4;
constexpr double sockets_ahead = 2.1;

}  // namespace

int sockets_before(const SetupScene& scene) {
    return scene.spacer > Length{} ? 0 : std::clamp(scene.sockets - 1, 0, 2);
}

double edge_mm(const SetupScene& scene, int before) { return scene.spacer.mm() - before * pitch_mm(scene); }

double socket_mm(const SetupScene& scene, int socket, int before) {
    return scene.fence.mm() + (socket - before) * pitch_mm(scene);
}

// As wide as a finger: with the play that a finger has, it goes into a socket.
double pin_width_mm(const SetupScene& scene) { return std::min(scene.fence, scene.kerf).mm(); }

// Lower than any socket that it has to go into, those of a first pass among them.
double pin_top_mm(const SetupScene& scene) { return 0.72 * scene.first_height.mm(); }

double board_top_mm(const SetupScene& scene) {
    return scene.height.mm() + std::max(0.7 * scene.height.mm(), 0.65 * pitch_mm(scene));
}

double wall_top_mm(const SetupScene& scene) {
    return scene.height.mm() + 0.78 * (board_top_mm(scene) - scene.height.mm());
}

double slab_mm(const SetupScene& scene) { return -std::max(0.34 * scene.height.mm(), 4.5); }

Reach reach_of(const SetupScene& scene) {
    const double pitch = pitch_mm(scene), edge = edge_mm(scene, sockets_before(scene));
    const double right = std::min(edge + scene.end_height.mm(), scene.far().mm() + sockets_ahead * pitch);
    return {std::min(edge, -pin_width_mm(scene)) - wall_share * pitch, right + wall_share * pitch};
}

double board_right_mm(const SetupScene& scene, int before, const Reach& reach) {
    return std::min(edge_mm(scene, before) + scene.end_height.mm(),
                    reach.right_mm - wall_share * pitch_mm(scene));
}

}  // namespace kw::draw::jig
