#pragma once
// Dragging a step along the order's picture. Private to the order's screen.

#include "window/press.h"
#include "window/screen.h"

namespace kw::window {

struct PictureOnScreen {
    const draw::OrderView& view;
    ImVec2 zero;  // where the drawing's (0, 0) lies, device pixels

    draw::Point point_at(const Ui& ui, ImVec2 at) const {
        return {(at.x - zero.x) / ui.pixel_ratio, (zero.y - at.y) / ui.pixel_ratio};
    }
    ImRect on_screen(const Ui& ui, const draw::Box& box) const {
        return {{zero.x + ui.px(box.left_mm), zero.y - ui.px(box.top_mm)},
                {zero.x + ui.px(box.right_mm), zero.y - ui.px(box.bottom_mm)}};
    }
};

// Follows the finger that pressed the picture, draws what it drags, and says what letting go would do. Sets `screen.done` when a step
// was let go at another place. True while something is dragged and when it is let go: then the press is no tap.
bool drag_step(Screen& screen, const Press& press, const PictureOnScreen& picture);

}  // namespace kw::window
