#pragma once
// What is shown in the pictures of every screen, one after another: each begins where the one before it left the job.

#include <GLFW/glfw3.h>

#include <functional>
#include <string>
#include <vector>

#include "window/app.h"
#include "window/window.h"

namespace kw::window {

// The window with a job open in it.
struct Theatre {
    Window& window;
    App& app;

    void draw() {
        window.draw([&](Ui& ui) { app.frame(ui); });
    }
    void settle() {
        app.finish(window.ui());
        for (int i = 0; i < 6; ++i) {
            glfwPollEvents();
            draw();
        }
    }
    void act(const Action& action) {
        app.act(window.ui(), action);
        app.finish(window.ui());
    }
    const Work& work() const { return *app.session().work; }
    UiState& state() { return app.state(); }
};

using Prepare = std::function<void(Theatre&)>;

struct Shot {
    std::string name;
    Prepare prepare;
    draw::Theme theme = draw::Theme::light;
};

// None of a job that has not all that is shown: see what run_shots says.
std::vector<Shot> shots_of(const Work& work);

}  // namespace kw::window
