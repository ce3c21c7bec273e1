#pragma once
// Where things stand in the picture of an indexing jig, in millimetres from the pin's side toward the cutter (x = 0) and from the
// table (y = 0). The board has been set over `sockets_before` times; socket 0 is the one at the bottom edge.

#include "draw/setup_parts.h"

namespace kw::draw::jig {

// The first socket where there is a spacer on the pin, else one that has another over the pin and one beyond it.
int sockets_before(const SetupScene& scene);

// From one socket to the next: what pin and cutter make of it.
inline double pitch_mm(const SetupScene& scene) { return scene.far().mm(); }
// The board's bottom edge, when so many sockets have been cut.
double edge_mm(const SetupScene& scene, int before);
// The near side of a socket, when so many have been cut. The one that is cut now is where the cutter is.
double socket_mm(const SetupScene& scene, int socket, int before);

double pin_width_mm(const SetupScene& scene);
double pin_top_mm(const SetupScene& scene);
double board_top_mm(const SetupScene& scene);  // where it is broken off
double wall_top_mm(const SetupScene& scene);   // of the jig's fence, in what is drawn of it
double slab_mm(const SetupScene& scene);
Reach reach_of(const SetupScene& scene);
// The board's right side in what is drawn: its top edge, or where it is broken off.
double board_right_mm(const SetupScene& scene, int before, const Reach& reach);

}  // namespace kw::draw::jig
