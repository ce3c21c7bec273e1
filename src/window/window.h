#pragma once
// The window itself: opens it, decides when to draw, and hands each frame to the screens.

#include <functional>
#include <memory>
#include <string>
#include <tl/expected.hpp>

#include "window/screenshot.h"
#include "window/ui.h"

struct GLFWwindow;

namespace kw::window {

struct WindowOptions {
    std::string title = "Kerfwright";
    int width = 1280;
    int height = 800;
    draw::Theme theme = draw::Theme::light;
    double user_scale = 1;   // on top of the system's
    double pixel_ratio = 0;  // instead of the system's, if not 0
};

// Draws one frame of the program: called between the toolkit's begin and end, with the cursor at the upper left of the page.
using FrameFunction = std::function<void(Ui&)>;

class Window {
public:
    static tl::expected<std::unique_ptr<Window>, std::string> open(const WindowOptions& options);
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;

    Ui& ui();
    // Draws if something may have changed; returns how long to wait for events before the next call.
    double step(const FrameFunction& frame);
    // Draws now, whether or not anything changed.
    void draw(const FrameFunction& frame);
    // Nothing left to draw until an event or a wake-up.
    bool at_rest() const;
    // Draws now and reads back what is on the screen.
    Pixels capture(const FrameFunction& frame);
    void resize(int width, int height);
    void close();
    GLFWwindow* handle() const;

private:
    Window();
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

// Opens a window and draws frames until it is closed. Returns the program's exit status; a message goes to standard error.
int run_window(const WindowOptions& options, const FrameFunction& frame);

}  // namespace kw::window
