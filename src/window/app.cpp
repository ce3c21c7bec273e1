#include "window/app.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <fstream>

#include "window/platform.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

std::string utc_now() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm utc{};
    gmtime_r(&now, &utc);
    char text[32];
    return {text, std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &utc)};
}

fs::path note_of_last() { return platform::data_folder() / "last-job"; }

fs::path last_job() {
    std::ifstream in(note_of_last());
    std::string line;
    std::getline(in, line);
    std::error_code error;
    return !line.empty() && fs::exists(line, error) ? fs::path(line) : fs::path();
}

// The shipped demo is only ever read: the maker works on a copy.
fs::path own_demo() {
    const fs::path copy = platform::data_folder() / "demo.json";
    std::error_code error;
    if (!fs::exists(copy, error)) fs::copy_file(platform::asset("demo.json"), copy, error);
    return copy;
}

fs::path job_to_open(const std::string& asked) {
    if (!asked.empty()) return fs::absolute(asked);
    const fs::path last = last_job();
    return last.empty() ? own_demo() : last;
}

void remember_as_last(const fs::path& path) {
    // A job that can't be noted opens all the same.
    (void)save_file(note_of_last(), path.string() + "\n");
    platform::commit_data();
}

std::string title_of(const App& app) {
    const auto& work = app.session().work;
    return (work ? work->job.name : app.path().filename().string()) + " \u2013 Kerfwright";
}

}  // namespace

namespace {

std::string wrong_shop(const fs::path& path, const Problem& problem) {
    return path.string() + ": " + problem.pointer + ": " + problem.why.text(Graduation::mm_0_01) + "; " +
           problem.remedy.text(Graduation::mm_0_01) + "\n";
}

}  // namespace

fs::path own_shop_file() { return platform::data_folder() / "shop.json"; }

tl::expected<App, std::string> App::open(const fs::path& path, const fs::path& shop) {
    const std::string name = path.string();
    const auto text = read_file(path);
    if (!text) return tl::unexpected(name + ": " + text.error().why + "\n");
    auto json = parse_json(*text);
    if (!json) return tl::unexpected(report(name, *text, json.error()));
    App app;
    app.path_ = path;
    app.shop_path_ = shop;
    std::error_code error;
    if (!shop.empty() && fs::exists(shop, error)) {
        const auto shop_text = read_file(shop);
        if (!shop_text) return tl::unexpected(shop.string() + ": " + shop_text.error().why + "\n");
        auto shop_json = parse_json(*shop_text);
        if (!shop_json) return tl::unexpected(report(shop.string(), *shop_text, shop_json.error()));
        app.shop_ = std::move(*shop_json);
    }
    const auto memory = read_memory(app.shop_);
    if (!memory) return tl::unexpected(wrong_shop(shop, memory.error().front()));
    add_shop(*json, app.shop_);
    app.session_ = open_session(std::move(*json), *memory, utc_now());
    if (app.session_.work) return app;
    std::string all;
    for (const Problem& problem : app.session_.problems)
        all += report(name, *text, to_file_error(problem, *text, Graduation::in_64));
    // A file that is no job at all is not taken on; one with wrong fields is, so that they can be put right.
    if (!app.session_.document.is_object() || !app.session_.document.contains("drawers"))
        return tl::unexpected(all);
    return app;
}

namespace {

// What the longer log has that the shorter has not: "lock at S29". Anything else is a change of the job.
std::string difference(const Json& shorter, const Json& longer) {
    const auto entries = [](const Json& document) {
        return document.contains("log") && document["log"].is_array() ? document["log"].size() : 0;
    };
    if (entries(longer) <= entries(shorter)) return "a change of the job";
    std::size_t last = longer["log"].size() - 1;  // what was lost by a lock is logged behind it
    while (last > entries(shorter) && longer["log"][last].value("kind", "") == "lost") --last;
    const Json& entry = longer["log"][last];
    const std::string kind = entry.value("kind", "");
    const std::string setup = entry.value("setup", "");
    return (kind == "test" ? "test cut at " : kind == "lock" ? "lock at " : "parts run at ") + setup;
}

}  // namespace

void App::act(Ui& ui, const Action& action) {
    Session after = apply(session_, action, utc_now());
    const Memory known = session_.memory;
    const bool learned = after.memory != known;
    const Json before = session_.document;
    const bool changed = after.document != before;
    session_ = std::move(after);
    ui.pacer.request(Pacer::settle_frames);
    if (!session_.refused.empty()) {
        const bool said_there = state_.place == Where::saw && state_.saw_tab == SawTab::test;
        if (!said_there) ui.toast(session_.refused, Tone::wrong);
        return;
    }
    if (std::holds_alternative<Undo>(action) && changed)
        ui.toast("Undone: " + difference(session_.document, before), Tone::plain);
    if (std::holds_alternative<Redo>(action) && changed)
        ui.toast("Done again: " + difference(before, session_.document), Tone::plain);
    if (std::holds_alternative<SaveTest>(action)) state_.test = {};
    if (learned) keep_memory(ui, known);
    if (!changed) return;
    if (const auto saved = save_file(path_, to_text(session_.document)); !saved)
        ui.toast("Not saved: " + saved.error().why, Tone::wrong);
    platform::commit_data();
}

void App::keep_memory(Ui& ui, const Memory& before) {
    if (shop_path_.empty()) return;
    // The file may have been taught by someone else meanwhile: that stays.
    Memory memory = session_.memory;
    const auto text = read_file(shop_path_);
    auto json = text ? parse_json(*text) : tl::expected<Json, FileError>(shop_);
    const auto there = json ? read_memory(*json) : tl::expected<Memory, std::vector<Problem>>(Memory{});
    if (text && json && there) shop_ = std::move(*json);
    for (const Lesson& lesson : there ? there->lessons : std::vector<Lesson>{}) {
        const auto holds = [&](const Memory& all) {
            return std::find(all.lessons.begin(), all.lessons.end(), lesson) != all.lessons.end();
        };
        if (text && !holds(before) && !holds(memory)) memory.lessons.push_back(lesson);
    }
    shop_ = with_memory(std::move(shop_), memory);
    if (const auto saved = save_file(shop_path_, to_text(shop_)); !saved)
        ui.toast("What was learned is not saved: " + saved.error().why, Tone::wrong);
    platform::commit_data();
}

void App::frame(Ui& ui) {
    if (const auto action = draw_program(ui, session_, state_)) act(ui, *action);
}

int run_app(const AppOptions& options) {
    const fs::path path = job_to_open(options.job);
    auto app = App::open(path, options.shop.empty() ? own_shop_file() : fs::path(options.shop));
    if (!app) {
        std::fprintf(stderr, "kerfwright: %s", app.error().c_str());
        return 1;
    }
    remember_as_last(path);
    WindowOptions window = options.window;
    window.title = title_of(*app);
    return run_window(window, [&](Ui& ui) { app->frame(ui); });
}

}  // namespace kw::window
