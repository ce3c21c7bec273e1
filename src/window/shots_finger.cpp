#include "window/shots_finger.h"

#include <imgui_impl_glfw.h>

#include <cstdio>

namespace kw::window {

void press(Theatre& stage, const std::string& label) {
    WidgetLog log;
    stage.window.ui().log = &log;
    stage.draw();
    const LoggedWidget* widget = log.find(label);
    stage.window.ui().log = nullptr;
    if (!widget) {
        std::fprintf(stderr, "kerfwright: no picture of what `%s` opens: it is not in sight\n",
                     label.c_str());
        return;
    }
    GLFWwindow* window = stage.window.handle();
    // As the window system calls it: without the pointer in the window, its real place would win.
    ImGui_ImplGlfw_CursorEnterCallback(window, 1);
    ImGui_ImplGlfw_CursorPosCallback(window, (widget->seen.left + widget->seen.right) / 2,
                                     (widget->seen.top + widget->seen.bottom) / 2);
    stage.draw();
    for (const int action : {GLFW_PRESS, GLFW_RELEASE}) {
        ImGui_ImplGlfw_MouseButtonCallback(window, GLFW_MOUSE_BUTTON_LEFT, action, 0);
        stage.draw();
    }
    ImGui_ImplGlfw_CursorEnterCallback(window, 0);
}

void drag_last_to_beginning(Theatre& stage) {
    WidgetLog log;
    stage.window.ui().log = &log;
    stage.draw();
    stage.window.ui().log = nullptr;
    const LoggedWidget* block = log.find(stage.work().plan.sequence.back());
    if (!block || block->kind != "block") return;
    GLFWwindow* window = stage.window.handle();
    const double x = (block->box.left + block->box.right) / 2, y = (block->box.top + block->box.bottom) / 2;
    ImGui_ImplGlfw_CursorEnterCallback(window, 1);
    ImGui_ImplGlfw_CursorPosCallback(window, x, y);
    stage.draw();
    ImGui_ImplGlfw_MouseButtonCallback(window, GLFW_MOUSE_BUTTON_LEFT, GLFW_PRESS, 0);
    for (const double share : {0.3, 0.6, 1.0}) {
        stage.draw();
        ImGui_ImplGlfw_CursorPosCallback(window, x + share * (60 - x), y);
    }
}

void let_go_nowhere(Theatre& stage) {
    GLFWwindow* window = stage.window.handle();
    ImGui_ImplGlfw_KeyCallback(window, GLFW_KEY_ESCAPE, 0, GLFW_PRESS, 0);
    stage.draw();
    ImGui_ImplGlfw_KeyCallback(window, GLFW_KEY_ESCAPE, 0, GLFW_RELEASE, 0);
    ImGui_ImplGlfw_MouseButtonCallback(window, GLFW_MOUSE_BUTTON_LEFT, GLFW_RELEASE, 0);
    stage.draw();
    ImGui_ImplGlfw_CursorEnterCallback(window, 0);
}

}  // namespace kw::window
