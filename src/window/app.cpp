#include "window/app.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <utility>

#include "file/shop_file.h"
#include "session/asked_on.h"
#include "window/chime.h"
#include "window/platform.h"
#include "window/screen_words.h"

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
    return line;
}

bool is_there(const fs::path& path) {
    std::error_code error;
    return fs::exists(path, error);
}

// What is shipped is only ever read: the maker works on a copy.
struct JobToOpen {
    fs::path path;
    bool is_first_start = false;
    fs::path absent = {};  // the one that was open last, where it is not there now
};

JobToOpen job_to_open(const std::string& asked) {
    if (!asked.empty()) return {fs::absolute(asked)};
    const fs::path last = last_job();
    if (!last.empty() && is_there(last)) return {last};
    const fs::path own = platform::data_folder() / "first.json";
    if (is_there(own)) return {own, false, last};
    std::error_code error;
    fs::copy_file(platform::asset("first.json"), own, error);
    return {own, last.empty(), last};
}

draw::Theme theme_of(const Preferences& preferences) {
    return preferences.is_dark ? draw::Theme::dark : draw::Theme::light;
}

void remember_as_last(const fs::path& path) {
    // A job that can't be noted opens all the same.
    (void)save_file(note_of_last(), path.string() + "\n");
    platform::commit_data();
}

std::string title_of(const App& app) {
    const Json& document = app.session().document;
    const bool is_named = document.contains("name") && document["name"].is_string();
    return (is_named ? document["name"].get<std::string>() : app.path().filename().string()) +
           " \u2013 Kerfwright";
}

}  // namespace

namespace {

std::string wrong_shop(const fs::path& path, const Problem& problem) {
    return path.string() + ": " + problem.pointer + ": " + problem.why.text(Graduation::mm_0_01) + "; " +
           problem.remedy.text(Graduation::mm_0_01) + "\n";
}

}  // namespace

fs::path own_shop_file() { return platform::data_folder() / "shop.json"; }

tl::expected<App, std::string> App::open(const fs::path& path, const fs::path& shop,
                                         std::optional<Aside> aside, Plan plan) {
    const std::string name = path.string();
    const auto text = read_file(path);
    if (!text) return tl::unexpected(name + ": " + text.error().why.text({}) + "\n");
    auto json = parse_json(*text);
    if (!json) return tl::unexpected(report(name, *text, json.error()));
    App app;
    app.path_ = path;
    KeptJob kept{{path, *text, {}}, shop, {}, {}};
    auto shop_file = read_shop_file(shop);
    if (!shop_file) return tl::unexpected(report(shop.string(), {}, shop_file.error()));
    kept.shop = std::move(*shop_file);
    const auto memory = read_memory(kept.shop.json);
    if (!memory) return tl::unexpected(wrong_shop(shop, memory.error().front()));
    add_shop(*json, kept.shop.json);
    app.state_.preferences = read_preferences(kept.shop.json);
    // A file that is no job at all is not taken on; one with wrong fields is, so that they can be put right.
    const bool is_job = json->is_object() && json->contains("drawers");
    kept.file = {path, *text, *json};
    kept.session = unworked_session(std::move(*json), *memory, utc_now(), app.state_.preferences.language);
    kept.session.names = SetupNames::steps;
    app.is_beginning_ = is_job && plan == Plan::follows;
    if (!app.is_beginning_) kept.session = worked_out(std::move(kept.session));
    app.shown_ = kept.session;
    if (!is_job) {
        std::string all;
        for (const Problem& problem : app.shown_.problems)
            all += report(name, *text, to_file_error(problem, *text, Graduation::in_64));
        return tl::unexpected(all);
    }
    app.aside_ = aside.value_or(platform::has_threads() ? Aside::thread : Aside::between_frames);
    app.keeper_ =
        std::make_unique<JobKeeper>(std::move(kept), app.aside_ == Aside::thread, platform::post_wake_up);
    app.file_watch_ = platform::watch_file(path, [written = app.is_file_written_] {
        *written = true;
        platform::post_wake_up();
    });
    app.pages_ = std::make_unique<PagesAside>(app.aside_ == Aside::thread);
    if (app.is_beginning_) app.keeper_->begin();
    app.was_shown_ = !app.is_beginning_;
    return app;
}

// A press of what still shows an older state asks for nothing new.
bool App::is_asked_already(const Action& action) const {
    return std::any_of(asked_.begin(), asked_.end(), [&](const AskedAction& asked) {
        if (asked.action.index() != action.index()) return false;
        if (const auto* run = std::get_if<MarkRun>(&action)) {
            const auto& other = std::get<MarkRun>(asked.action);
            return other.setup == run->setup && other.passes == run->passes && other.done == run->done;
        }
        if (const auto* lost = std::get_if<MarkLost>(&action))
            return std::get<MarkLost>(asked.action).part == lost->part;
        if (const auto* lock = std::get_if<LockGroup>(&action))
            return std::get<LockGroup>(asked.action).cut.setup == lock->cut.setup;
        return std::holds_alternative<SaveTest>(action);
    });
}

void App::act(Ui& ui, const Action& action) {
    AskedAction asked{action, utc_now(), shown_.work};
    shown_ = edited(std::move(shown_), action, asked.time);
    if (asked_.empty()) asked_s_ = ui.now_s;
    was_shown_ = false;
    asked_.push_back(asked);
    keeper_->ask(std::move(asked));
    ui.pacer.request(Pacer::settle_frames);
}

// The maker stands at a setup, not at a number: setups are numbered anew with every order.
void App::follow_setup(const std::shared_ptr<const Work>& before) {
    if (!before || !shown_.work || before == shown_.work) return;
    const auto follow = [&](std::string& setup) {
        if (setup.empty()) return;
        const auto now = asked_on(PinSetup{setup}, before->plan, shown_.work->plan);
        setup = now ? std::get<PinSetup>(*now).setup : std::string();
    };
    for (std::string* step : {&state_.setup, &state_.late_at, &state_.spoilt_at, &state_.why_at})
        follow(*step);
    follow(state_.test.setup);
    follow(state_.shown_page.setup);
}

// The answer with the later actions on top.
void App::show(Session answered, std::size_t actions, bool is_of_file) {
    const auto before = shown_.work;
    const auto later = asked_.begin() + static_cast<std::ptrdiff_t>(actions);
    const bool was_shown = !is_of_file && std::all_of(asked_.begin(), later, [](const AskedAction& asked) {
        return can_be_shown(asked.action);
    });
    asked_.erase(asked_.begin(), later);
    if (was_shown && !asked_.empty()) {
        // The document that is shown is the same, with the later ones: doing those again would take a frame for each few of them.
        std::swap(shown_.work, answered.work);
        std::swap(shown_.problems, answered.problems);
        std::swap(shown_.memory, answered.memory);
    } else {
        for (const AskedAction& asked : asked_)
            answered = edited(std::move(answered), asked.action, asked.time);
        std::swap(shown_, answered);
    }
    follow_setup(before);
    keeper_->forget(std::move(answered));
}

void App::take_answers(Ui& ui) {
    while (auto answer = keeper_->answer()) {
        is_beginning_ = false;
        const auto* pin = answer->actions > 0 ? std::get_if<PinSetup>(&asked_.front().action) : nullptr;
        const std::optional<PinSetup> pinned = pin ? std::optional(*pin) : std::nullopt;
        const auto before = shown_.work;
        const bool is_taken = answer->session.refused.empty() && answer->session.problems.empty();
        show(std::move(answer->session), answer->actions, answer->file_taken);
        if (pinned && is_taken && before) ui.toast(pin_news(ui.words(), *before, *shown_.work, *pinned));
        asked_s_ = ui.now_s;
        // At the saw a refusal is said on the page, with what to do.
        const bool at_test = state_.place == Where::saw && state_.saw_tab == SawTab::test,
                   at_ends = state_.place == Where::saw && state_.saw_tab == SawTab::picture &&
                             (shown_.refused_field == "setup" || !shown_.refused_part.empty()) &&
                             !shown_.refused.empty();
        state_.refused_at = at_ends ? state_.setup : std::string();
        for (const Said& said : answer->said)
            if (!said.is_refusal || !(at_test || at_ends)) ui.toast(said.text, said.tone);
        if (answer->test_taken) state_.test = {};
        ui.pacer.request(Pacer::settle_frames);
    }
}

void App::note_search(Ui& ui) {
    constexpr double soon_s = 0.4, again_s = 0.25;
    state_.searching.reset();
    if (is_idle()) return;
    state_.searching = Searching{};
    const double due_s = asked_s_ + soon_s;
    if (const auto news = keeper_->search_news(); news && ui.now_s >= due_s)
        *state_.searching = {news->best_s - news->bound_s, aside_ == Aside::thread, news->is_ending};
    ui.pacer.wake_at(std::max(due_s, ui.now_s + again_s));
}

// Only where it is looked at.
void App::note_lay_out() {
    const bool is_shown = state_.place == Where::job ? state_.job_tab == JobTab::layout
                                                     : state_.place == Where::order && shown_.work &&
                                                           can_be_laid_out(shown_.work->job);
    if (is_shown && shown_.work && state_.lay_out.of != shown_.work)
        state_.lay_out = pages_->layout_of(shown_.work);
}

void App::note_printing(Ui& ui) {
    auto written = pages_->take_printed();
    if (printed_of_ != shown_.work) {
        // What was written is of another plan.
        if (printed_of_) state_.printed.clear();
        printed_of_ = shown_.work;
    }
    for (PagesAside::Done& done : written) {
        if (!done.printed.is_written) ui.toast(done.printed.said, Tone::wrong);
        else if (done.of != shown_.work)
            ui.toast(ui.text("print.of_before", done.printed.said), Tone::caution);
        if (done.of == shown_.work) state_.printed[done.what] = std::move(done.printed);
    }
    ask_for_pages(ui);
}

void App::ask_for_pages(Ui& ui) {
    if (!state_.to_print || !shown_.work || !is_idle()) return;
    const print::PagesOf what = *std::exchange(state_.to_print, std::nullopt);
    if (!shown_.problems.empty()) return ui.toast(ui.text("print.put_right_first"), Tone::wrong);
    const print::Paper paper = state_.paper.value_or(print::usual_paper(shown_.work->job));
    pages_->print(shown_.work, state_.preferences, what, paper, path_);
}

// Of steps that go by quickly only the first is heard.
void App::sound() {
    if (!sounds_) sounds_ = std::make_unique<kw::window::Aside>(aside_ == Aside::thread);
    if (is_sounding_->exchange(true)) return;
    sounds_->post([sounding = is_sounding_] {
        platform::play(chime_samples(), chime_rate_hz);
        *sounding = false;
    });
}

// At once in this window, and aside on the disk.
void App::keep_preferences(Ui& ui) {
    const Preferences& now = state_.preferences;
    if (applied_ == now) return;
    ui.theme = theme_of(now);
    ui.language = now.language;
    ui.user_scale = now.size_percent / 100.0;
    if (applied_) keeper_->keep(*applied_, now);
    if (applied_ && now.sounds && !applied_->sounds) sound();
    applied_ = now;
    ui.animate();
}

void App::finish(Ui& ui) {
    while (!is_idle()) {
        keeper_->finish();
        take_answers(ui);
    }
    ask_for_pages(ui);
    pages_->finish();
}

void App::frame(Ui& ui) {
    constexpr double look_again_s = 1;
    const bool is_written = is_file_written_->exchange(false);
    if (is_written || ui.now_s >= looked_s_ + look_again_s) {
        looked_s_ = ui.now_s;
        keeper_->look_at_file();
    }
    if (was_shown_) keeper_->turn();  // what was typed comes first
    was_shown_ = true;
    take_answers(ui);
    note_search(ui);
    note_lay_out();
    pages_->turn();
    const std::string step = state_.setup;
    const bool was_ending = is_search_ending();
    if (const auto action = draw_program(ui, shown_, state_); action && !is_asked_already(*action))
        act(ui, *action);
    if (!was_ending && is_search_ending()) keeper_->stop_searching();
    note_printing(ui);
    const bool is_another = state_.place == Where::saw && !step.empty() && state_.setup != step;
    if (is_another && state_.preferences.sounds) sound();
    if (sounds_) sounds_->turn();
    keep_preferences(ui);
    ui.is_waiting = !is_idle();
    if (ui.is_waiting && aside_ == Aside::between_frames) ui.animate();
}

int run_app(const AppOptions& options) {
    const JobToOpen to_open = job_to_open(options.job);
    auto app = App::open(to_open.path, options.shop.empty() ? own_shop_file() : fs::path(options.shop), {},
                         App::Plan::follows);
    if (!app) {
        std::fprintf(stderr, "kerfwright: %s", app.error().c_str());
        return 1;
    }
    // At the very first it asks for one drawer, a question at a time.
    if (to_open.is_first_start) app->state().first_question = 0;
    // A job on a stick that is not in stays the last one.
    if (to_open.absent.empty()) remember_as_last(to_open.path);
    const Words& words = words_in(app->state().preferences.language);
    std::vector<std::string> news;
    if (!to_open.absent.empty()) news.push_back(words("keep.absent", to_open.absent.string()));
    if (const auto unsaved = unsaved_of(to_open.path, platform::data_folder()))
        news.push_back(words("keep.unsaved_beside", unsaved->string()));
    WindowOptions window = options.window;
    window.title = title_of(*app);
    window.theme = theme_of(app->state().preferences);
    window.user_scale = app->state().preferences.size_percent / 100.0;
    const int status = run_window(window, [&](Ui& ui) {
        for (std::string& one : std::exchange(news, {})) ui.toast(std::move(one), Tone::caution);
        app->frame(ui);
    });
    const std::string unsaved = app->end(platform::data_folder());
    if (!unsaved.empty()) std::fprintf(stderr, "kerfwright: %s\n", unsaved.c_str());
    return unsaved.empty() ? status : 1;
}

}  // namespace kw::window
