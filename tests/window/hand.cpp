#include "window/hand.h"

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>
#include <imgui_impl_glfw.h>
#include <imgui_internal.h>

#include <algorithm>

#include "window/platform.h"

namespace kw::window {

Hand::Hand(const WindowOptions& options, FrameFunction frame) : frame_(std::move(frame)) {
    auto opened = Window::open(options);
    REQUIRE_MESSAGE(opened, (opened ? "" : opened.error()));
    window_ = std::move(*opened);
    window_->ui().log = &log_;
    ImGui_ImplGlfw_CursorEnterCallback(window_->handle(), 1);
    settle();
}

const LoggedWidget& Hand::find(std::string_view label) {
    const LoggedWidget* widget = log_.find(label);
    REQUIRE_MESSAGE(widget, "no widget with the label ", std::string(label), " in:\n", dump(log_));
    REQUIRE_MESSAGE(widget->seen.right > widget->seen.left, std::string(label), " is out of sight");
    return *widget;
}

void Hand::press(std::string_view label) {
    const draw::PixelBox box = find(label).seen;
    press_at((box.left + box.right) / 2, (box.top + box.bottom) / 2);
}

void Hand::press_at(double x, double y) {
    move(x, y);
    button(true);
    button(false);
    settle();
}

void Hand::hold_at(double x, double y) {
    move(x, y);
    button(true);
    hold_on();
    button(false);
    settle();
}

void Hand::tap_key(int glfw_key) {
    ImGui_ImplGlfw_KeyCallback(window_->handle(), glfw_key, 0, GLFW_PRESS, 0);
    window_->draw(frame_);
    ImGui_ImplGlfw_KeyCallback(window_->handle(), glfw_key, 0, GLFW_RELEASE, 0);
    settle();
}

void Hand::hold_key(int glfw_key) {
    ImGui_ImplGlfw_KeyCallback(window_->handle(), glfw_key, 0, GLFW_PRESS, 0);
    hold_on();
    ImGui_ImplGlfw_KeyCallback(window_->handle(), glfw_key, 0, GLFW_RELEASE, 0);
    settle();
}

// What is held is active, and lets go by itself when it was held for long enough.
void Hand::hold_on() {
    constexpr int far_too_many = 1000;
    bool was_active = false;
    for (int i = 0; i < far_too_many; ++i) {
        window_->draw(frame_);
        const bool is_active = ImGui::GetCurrentContext()->ActiveId != 0;
        if (was_active && !is_active) return;
        was_active = is_active;
        glfwWaitEventsTimeout(0.005);
    }
    FAIL("nothing here that has enough of being held");
}

void Hand::move(double x, double y) { ImGui_ImplGlfw_CursorPosCallback(window_->handle(), x, y); }

void Hand::button(bool down) {
    ImGui_ImplGlfw_MouseButtonCallback(window_->handle(), GLFW_MOUSE_BUTTON_LEFT,
                                       down ? GLFW_PRESS : GLFW_RELEASE, 0);
}

void Hand::drag(double x, double y, double to_x, double to_y, int steps) {
    move(x, y);
    button(true);
    settle();
    for (int i = 1; i <= steps; ++i) {
        move(x + (to_x - x) * i / steps, y + (to_y - y) * i / steps);
        // The last step comes together with the release, as it does from a quick finger.
        if (i < steps) window_->draw(frame_);
    }
    button(false);
    settle();
}

void Hand::wheel(double notches) {
    ImGui_ImplGlfw_ScrollCallback(window_->handle(), 0, notches);
    settle();
}

void Hand::type(std::string_view ascii) {
    for (const char c : ascii) ImGui_ImplGlfw_CharCallback(window_->handle(), static_cast<unsigned char>(c));
    settle();
}

void Hand::key(int glfw_key) {
    ImGui_ImplGlfw_KeyCallback(window_->handle(), glfw_key, 0, GLFW_PRESS, 0);
    settle();
    ImGui_ImplGlfw_KeyCallback(window_->handle(), glfw_key, 0, GLFW_RELEASE, 0);
    settle();
}

int Hand::settle() {
    constexpr int far_too_many = 2000;
    const std::uint64_t before = platform::counters().frames;
    for (int i = 0; i < far_too_many; ++i) {
        const double wait_s = window_->step(frame_);
        // Only a caret, a hover or an event can come now. Or the answer from aside.
        if (window_->at_rest()) return static_cast<int>(platform::counters().frames - before);
        glfwWaitEventsTimeout(std::clamp(wait_s, 1e-4, 0.1));
    }
    FAIL("the window does not come to rest");
    return far_too_many;
}

Pixels Hand::picture() { return window_->capture(frame_); }

}  // namespace kw::window
