#pragma once
// The program with its window: the open job, kept on disk, and the screens that change it.

#include <atomic>
#include <deque>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "window/job_keeper.h"
#include "window/pages_aside.h"
#include "window/platform.h"
#include "window/screen.h"
#include "window/window.h"

namespace kw::window {

struct AppOptions {
    std::string job =
        {};  // path; empty: the one that was open last, and at the very first one drawer, asked for step by step
    std::string shop = {};  // path of the shop's file; empty: the user's own
    WindowOptions window = {};
};

// The open job as it is shown: what was typed at once, and what follows from it as soon as it has been worked out aside.
class App {
public:
    // Whether there is a thread to work things out in; without one that is done between frames.
    enum class Aside { thread, between_frames };
    // Whether it has been worked out when `open` returns, or what was read is shown at once and the plan follows.
    enum class Plan { waited_for, follows };

    // The message says what is wrong with the file, with line and column. Without a shop nothing that is learned outlives the App.
    static tl::expected<App, std::string> open(const std::filesystem::path& path,
                                               const std::filesystem::path& shop = {},
                                               std::optional<Aside> aside = {}, Plan plan = Plan::waited_for);

    void frame(Ui& ui);
    // Actions are taken in the order in which they come here, each on what those before it have left.
    void act(Ui& ui, const Action& action);
    // Waits until all is worked out and saved, laid out and written.
    void finish(Ui& ui);
    // The window is closed: see JobKeeper::end.
    std::string end(const std::filesystem::path& other_folder) { return keeper_->end(other_folder); }
    // Is told of every search for an order, aside, and may end it. To be set before anything is asked for.
    void watch_with(Watch watch) { keeper_->watch_with(std::move(watch)); }
    bool is_idle() const { return asked_.empty() && !is_beginning_; }

    // The document as it was typed; its work may still be that of an older one.
    const Session& session() const { return shown_; }
    UiState& state() { return state_; }
    const std::filesystem::path& path() const { return path_; }

private:
    void show(Session answered, std::size_t actions, bool is_of_file);
    void follow_setup(const std::shared_ptr<const Work>& before);
    void take_answers(Ui& ui);
    void note_search(Ui& ui);
    void note_lay_out();
    void note_printing(Ui& ui);
    void ask_for_pages(Ui& ui);
    bool is_search_ending() const { return state_.searching && state_.searching->is_ending; }
    void keep_preferences(Ui& ui);
    void sound();
    bool is_asked_already(const Action& action) const;

    std::filesystem::path path_;
    Aside aside_ = Aside::thread;
    Session shown_;
    std::deque<AskedAction> asked_;  // and not answered yet
    double asked_s_ = 0;             // when the first of them was
    double looked_s_ = 0;            // whether others have changed the job's file
    bool was_shown_ = true;          // since the last was asked
    bool is_beginning_ = false;      // the plan of the job as it was opened is not there yet
    std::unique_ptr<JobKeeper> keeper_;
    std::optional<Preferences> applied_;  // to the window
    std::shared_ptr<std::atomic<bool>> is_sounding_ = std::make_shared<std::atomic<bool>>(false);
    std::unique_ptr<kw::window::Aside> sounds_;  // begins with the first sound
    std::unique_ptr<PagesAside> pages_;
    std::shared_ptr<const Work> printed_of_;  // what was written and is still shown as such
    UiState state_;
    std::shared_ptr<std::atomic<bool>> is_file_written_ = std::make_shared<std::atomic<bool>>(false);
    std::shared_ptr<platform::FileWatch> file_watch_;  // an idle window takes up what others write, too
};

// Where the user's own shop keeps what it learns.
std::filesystem::path own_shop_file();

// Opens the window and stays until it is closed. Returns the program's exit status; messages go to standard error.
int run_app(const AppOptions& options);

// Every screen, in several sizes, as PNG files in `folder`. Works on a copy of the job.
int run_shots(const std::filesystem::path& folder, const std::string& job);

}  // namespace kw::window
