// What the window says in each language.
#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <regex>

#include "file/shop_file.h"
#include "no_english.h"
#include "window/every_page.h"
#include "window/maker.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

// The job and the shop of someone who reads this language.
struct Readers {
    fs::path job = fs::temp_directory_path() / ("kerfwright-language-" + std::to_string(getpid()) + ".json");
    fs::path shop = job;

    explicit Readers(Language language) {
        shop += ".shop";
        std::ofstream(job) << one_drawer;
        Preferences preferences;
        preferences.language = language;
        std::ofstream(shop) << to_text(with_preferences(Json::object(), preferences));
    }
    ~Readers() {
        fs::remove(job);
        fs::remove(shop);
    }
};

std::vector<std::string> texts_on(const WidgetLog& log) {
    std::vector<std::string> all;
    for (const LoggedWidget& widget : log.widgets) {
        all.push_back(widget.label);
        all.push_back(widget.value);
    }
    return all;
}

// All that is said on every page and at every step, each with where.
template <class Check>
void on_every_page(Language language, Check check) {
    const Readers readers(language);
    auto app = App::open(readers.job, readers.shop);
    REQUIRE_MESSAGE(app.has_value(), (app ? "" : app.error()));
    const Preferences preferences = app->state().preferences;
    REQUIRE(preferences.language == language);
    Hand hand({.title = "test", .width = 1280, .height = 800}, [&](Ui& ui) { app->frame(ui); });
    const auto look_at = [&](const Page& page, const std::string& step) {
        app->state() = state_at(page, step, preferences);
        hand.ui().animate();
        hand.settle();
        for (const std::string& text : texts_on(hand.log())) {
            INFO(std::string(page.name) << ", " << step);
            CAPTURE(text);
            check(text);
        }
    };
    for (const Page& page : every_page) look_at(page, tested_step(*app->session().work));
    for (const std::string& step : app->session().work->plan.sequence) look_at({"saw", Where::saw}, step);
}

}  // namespace

TEST_CASE("nothing English is left where a maker reads German") {
    on_every_page(Language::german,
                  [](const std::string& text) { CHECK_FALSE(tests::sounds_english(text)); });
}

TEST_CASE("a UK maker reads of rebates, housings and mitres, never of rabbets, dados and miters") {
    // The names in the UK: common practice, no source.
    static const std::regex american(R"(\b(rabbet|miter|dado(?! stack))s?\b)", std::regex::icase);
    bool says_rebate = false;
    on_every_page(Language::british, [&](const std::string& text) {
        CHECK_FALSE(std::regex_search(text, american));
        says_rebate = says_rebate || text.find("rebate") != std::string::npos;
    });
    CHECK(says_rebate);
}

TEST_CASE("no key of a text is shown in its stead") {
    static const std::regex key(R"(^[a-z_]+\.[a-z_.]+$)");
    on_every_page(Language::english,
                  [](const std::string& text) { CHECK_FALSE(std::regex_match(text, key)); });
}

TEST_CASE("another language is chosen: it is spoken at once, in what is planned too, and kept for all jobs") {
    const Readers readers(Language::english);
    auto app = App::open(readers.job, readers.shop);
    REQUIRE(app.has_value());
    Hand hand({.title = "test", .width = 1280, .height = 800}, [&](Ui& ui) { app->frame(ui); });
    hand.settle();
    hand.press("Options");
    hand.press("Deutsch");
    app->finish(hand.ui());
    hand.settle();
    CHECK(hand.sees("Optionen"));
    hand.press("Reihenfolge");
    hand.settle();
    CHECK(hand.sees("Gut zu wissen"));
    CHECK(app->session().work->job.locale.language == Language::german);
    CHECK(app->session().undo.empty());  // no change of the job
    const auto shop = parse_json(*read_file(readers.shop));
    REQUIRE(shop);
    CHECK(read_preferences(*shop).language == Language::german);
}

}  // namespace kw::window
