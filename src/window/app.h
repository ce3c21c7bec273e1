#pragma once
// The program with its window: the open job, kept on disk, and the screens that change it.

#include <filesystem>
#include <string>
#include <tl/expected.hpp>

#include "file/shop_file.h"
#include "window/screen.h"
#include "window/window.h"

namespace kw::window {

struct AppOptions {
    std::string job = {};   // path; empty: the one that was open last, and at the very first the demo
    std::string shop = {};  // path of the shop's file; empty: the user's own
    WindowOptions window = {};
};

// The open job. Each action that is taken is on the disk before the next frame.
class App {
public:
    // The message says what is wrong with the file, with line and column. Without a shop nothing that is learned outlives the App.
    static tl::expected<App, std::string> open(const std::filesystem::path& path,
                                               const std::filesystem::path& shop = {});

    void frame(Ui& ui);
    void act(Ui& ui, const Action& action);

    const Session& session() const { return session_; }
    UiState& state() { return state_; }
    const std::filesystem::path& path() const { return path_; }

private:
    void keep_memory(Ui& ui, const Memory& before);

    std::filesystem::path path_, shop_path_;
    Json shop_ = Json::object();  // the shop's file as it was read or written last
    Session session_;
    UiState state_;
};

// Where the user's own shop keeps what it learns.
std::filesystem::path own_shop_file();

// Opens the window and stays until it is closed. Returns the program's exit status; messages go to standard error.
int run_app(const AppOptions& options);

// Every screen, in several sizes, as PNG files in `folder`. Works on a copy of the job.
int run_shots(const std::filesystem::path& folder, const std::string& job);

}  // namespace kw::window
