// Pictures of every screen, for whoever judges how it looks.

#include <cstdio>

#include "window/app.h"
#include "window/platform.h"
#include "window/screenshot.h"
#include "window/shots.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

struct Size {
    int width, height;
};

bool take(Window& window, App& app, const fs::path& folder, Size size) {
    window.resize(size.width, size.height);
    Theatre stage{window, app};
    stage.settle();
    const std::string suffix = "-" + std::to_string(size.width) + "x" + std::to_string(size.height) + ".png";
    for (const Shot& shot : shots_of(stage.work())) {
        shot.prepare(stage);
        window.ui().toasts.clear();
        window.ui().theme = shot.theme;
        stage.settle();
        const Pixels pixels = window.capture([&](Ui& ui) { app.frame(ui); });
        if (!save_png(pixels, (folder / (shot.name + suffix)).string())) return false;
    }
    return true;
}

}  // namespace

int run_shots(const fs::path& folder, const std::string& job) {
    std::error_code error;
    fs::create_directories(folder, error);
    const fs::path copy = folder / "shots-job.json";
    const auto refuse = [](const std::string& why) {
        std::fprintf(stderr, "kerfwright: %s\n", why.c_str());
        return 1;
    };
    auto window = Window::open({});
    if (!window) return refuse(window.error());
    for (const Size size : {Size{1280, 800}, Size{1920, 1080}, Size{800, 1280}, Size{1024, 600}}) {
        // Each size begins with the job as it was.
        if (!fs::copy_file(job.empty() ? platform::asset("demo.json") : fs::path(job), copy,
                           fs::copy_options::overwrite_existing, error))
            return refuse("the job could not be copied to " + copy.string());
        auto app = App::open(copy);
        if (!app) return refuse(app.error());
        if (!app->session().work) return refuse("the job can't be made as it is: there is nothing to show");
        if (shots_of(*app->session().work).empty())
            return refuse(
                "pictures are taken of a job like the demo: with locking rabbets in stock of two "
                "thicknesses, a groove, rips, and crosscuts against a stop");
        if (!take(**window, *app, folder, size))
            return refuse("no picture could be written to " + folder.string());
    }
    fs::remove(copy, error);
    return 0;
}

}  // namespace kw::window
