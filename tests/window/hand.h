#pragma once
// A hand at the real window: presses, drags and types where a widget with a given label is, through the same callbacks that
// the window system calls, and lets the event loop draw as it would.

#include <imgui.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "window/window.h"

namespace kw::window {

class Hand {
public:
    // Opens a window and draws until it rests. Fails the test if there is no display.
    Hand(const WindowOptions& options, FrameFunction frame);

    Ui& ui() { return window_->ui(); }
    Window& window() { return *window_; }
    const WidgetLog& log() const { return log_; }
    // The widget with this label; fails the test if there is none in sight.
    const LoggedWidget& find(std::string_view label);
    bool sees(std::string_view label) const { return log_.find(label) != nullptr; }

    void press(std::string_view label);
    void press_at(double x, double y);
    // A key let go as soon as it was seen; key() leaves it down as long as anything moves.
    void tap_key(int glfw_key);
    // Held down until what is there has had enough.
    void hold_at(double x, double y);
    // The same with a key, on what the keyboard is on.
    void hold_key(int glfw_key);
    void move(double x, double y);
    void button(bool down);
    void drag(double x, double y, double to_x, double to_y, int steps = 8);
    void wheel(double notches);
    void type(std::string_view ascii);
    void key(int glfw_key);
    // Lets the loop run until nothing is left to draw; returns how many frames it drew.
    int settle();
    Pixels picture();

private:
    void hold_on();

    std::unique_ptr<Window> window_;
    FrameFunction frame_;
    WidgetLog log_;
};

// How much two stretches have in common; less than nothing is the gap between them.
inline double common(double a_low, double a_high, double b_low, double b_high) {
    return std::min(a_high, b_high) - std::max(a_low, b_low);
}

}  // namespace kw::window
