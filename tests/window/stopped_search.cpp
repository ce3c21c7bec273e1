// The maker ends a search that takes too long, where it is said that it goes on.
#include <doctest/doctest.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <thread>

#include "window/app.h"
#include "window/hand.h"

namespace kw::window {
namespace {

constexpr const char* stop_button = "Stop searching, take this one";

struct DemoFile {
    std::filesystem::path path =
        std::filesystem::temp_directory_path() / ("kerfwright-stopped-" + std::to_string(getpid()) + ".json");
    DemoFile() { std::filesystem::copy_file(std::filesystem::path(KW_ASSET_DIR) / "demo.json", path); }
    ~DemoFile() { std::filesystem::remove(path); }
    DemoFile(const DemoFile&) = delete;
    DemoFile& operator=(const DemoFile&) = delete;
};

App opened(const DemoFile& file, App::Aside aside) {
    auto app = App::open(file.path, {}, aside);
    REQUIRE_MESSAGE(app.has_value(), (app ? "" : app.error()));
    return std::move(*app);
}

const LoggedWidget* told(const Hand& hand) {
    for (const LoggedWidget& widget : hand.log().widgets)
        if (widget.label.rfind("The order is still being searched: at most", 0) == 0) return &widget;
    return nullptr;
}

}  // namespace

TEST_CASE("a long search can be stopped where it is told of, and the best that was found is taken") {
    const DemoFile file;
    App app = opened(file, App::Aside::thread);
    std::atomic<bool> has_had_enough = false, goes_on = false;
    std::atomic<int> asked = 0;
    // A check that fails must not leave it searching for ever.
    struct LetGo {
        std::atomic<bool>& goes_on;
        ~LetGo() { goes_on = true; }
    } const let_go{goes_on};
    // As long as nobody stops it the search does not come to its end.
    app.watch_with([&](std::int64_t, std::int64_t) {
        ++asked;
        while (!has_had_enough && !goes_on) std::this_thread::sleep_for(std::chrono::milliseconds(1));
        return SearchMore::yes;
    });
    app.state().place = Where::order;
    const auto frame = [&](Ui& ui) {
        app.frame(ui);
        if (app.state().searching && app.state().searching->is_ending) has_had_enough = true;
    };
    Hand hand({}, frame);
    CHECK_FALSE(hand.sees(stop_button));
    const auto before = app.session().work;
    hand.window().draw([&](Ui& ui) {
        app.act(ui, SetField{"/drawers/0/opening/width", "12 3/8"});
        app.frame(ui);
    });
    CHECK_FALSE(hand.sees(stop_button));  // most searches have ended before anyone could press it
    for (int i = 0; i < 2000 && !hand.sees(stop_button); ++i) {
        hand.window().step(frame);
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    REQUIRE(hand.sees(stop_button));
    CHECK(told(hand));
    CHECK(app.session().work == before);
    CHECK(asked == 1);
    hand.press(stop_button);
    CHECK(app.is_idle());
    CHECK(app.session().work != before);
    CHECK(app.session().problems.empty());
    const Plan& plan = app.session().work->plan;
    CHECK(plan.lower_bound_seconds < plan.seconds);
    CHECK_FALSE(plan.proved);
    CHECK_FALSE(hand.sees(stop_button));
    CHECK_FALSE(told(hand));
    // What is asked for afterwards is searched to its end.
    goes_on = true;
    has_had_enough = false;
    const int until_then = asked;
    hand.window().draw([&](Ui& ui) {
        app.act(ui, SetField{"/drawers/0/opening/width", "12 1/2"});
        app.frame(ui);
    });
    hand.settle();
    const Session whole = open_session(app.session().document, {}, app.session().day);
    CHECK(app.session().work->plan.sequence == whole.work->plan.sequence);
    CHECK(app.session().work->plan.lower_bound_seconds == whole.work->plan.lower_bound_seconds);
    CHECK(asked - until_then > until_then);
}

TEST_CASE("where nothing can be pressed while it is searched, nothing is offered to press") {
    const DemoFile file;
    App app = opened(file, App::Aside::between_frames);
    app.state().place = Where::order;
    bool seen = false;
    Hand hand({}, [&](Ui& ui) {
        app.frame(ui);
        seen = seen || (app.state().searching && app.state().searching->can_be_ended);
    });
    hand.window().draw([&](Ui& ui) {
        app.act(ui, SetField{"/drawers/0/opening/width", "12 3/8"});
        app.frame(ui);
    });
    hand.settle();
    CHECK(app.is_idle());
    CHECK_FALSE(seen);
}

TEST_CASE(
    "a program that is closed keeps what was asked for, and searches no longer for an order that nobody "
    "sees") {
    const auto asks = [](bool waits) {
        const DemoFile file;
        int asked = 0;
        {
            Fonts fonts;
            Pictures pictures;
            Pacer pacer;
            Ui ui{fonts, pictures, pacer};
            App app = opened(file, App::Aside::between_frames);
            app.watch_with([&](std::int64_t, std::int64_t) {
                ++asked;
                return SearchMore::yes;
            });
            app.act(ui, SetField{"/drawers/0/opening/width", "12 3/8"});
            app.act(ui, SetField{"/name", "Shed"});
            if (waits) app.finish(ui);
        }
        std::ifstream in(file.path);
        const Json kept = Json::parse(in);
        CHECK(kept["drawers"][0]["opening"]["width"] == "12 3/8");
        CHECK(kept["name"] == "Shed");
        return asked;
    };
    CHECK(asks(false) * 2 < asks(true));
}

}  // namespace kw::window
