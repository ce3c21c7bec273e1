#pragma once
#include <imgui.h>

namespace kw::window {

// The one finger that may be dragging a scroll region, and the swing that it left there.
struct ScrollState {
    ImGuiID region = 0;  // under the finger, or still swinging
    float pressed_x = 0, pressed_y = 0;
    bool may_move_across = false;  // what was pressed goes with the finger if that moves mostly sideways
    float last_y = 0;
    double last_s = 0;
    float speed = 0;  // device pixels per second, downwards positive
    bool down = false;
    bool dragging = false;
};

}  // namespace kw::window
