// A step of the order's picture is dragged by the hand at the real window.
#include <GLFW/glfw3.h>
#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "window/app.h"
#include "window/hand.h"
#include "window/screen_next.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

struct Place {
    double x = 0, y = 0;
};

// The demo with nothing to choose, so that its plan is there soon, and its order on the screen.
class Dragging {
public:
    explicit Dragging(int width = 1280, int height = 800)
        : path_(fs::temp_directory_path() / ("kerfwright-drag-" + std::to_string(getpid()) + ".json")),
          app_(opened()),
          hand_({.title = "test", .width = width, .height = height}, [this](Ui& ui) { app_.frame(ui); }) {
        app_.state().place = Where::order;
        hand_.ui().animate();
        hand_.settle();
    }
    ~Dragging() { fs::remove(path_); }

    App& app() { return app_; }
    Hand& hand() { return hand_; }
    const Work& work() const { return *app_.session().work; }
    Json on_disk() const {
        std::ifstream in(path_);
        return Json::parse(in);
    }
    draw::PixelBox block(const std::string& step) const {
        for (const LoggedWidget& widget : hand_.log().widgets)
            if (widget.kind == "block" && widget.label == step) return widget.box;
        FAIL("no block " << step);
        return {};
    }
    Place middle(const std::string& step) const {
        const draw::PixelBox box = block(step);
        return {(box.left + box.right) / 2, (box.top + box.bottom) / 2};
    }
    // What is said while something is dragged; empty where nothing is.
    std::string said() const {
        for (const LoggedWidget& widget : hand_.log().widgets)
            if (widget.kind == "drag") return widget.label + ". " + widget.value;
        return {};
    }
    void take_up_and_carry(Place from, Place to) {
        hand_.move(from.x, from.y);
        hand_.button(true);
        hand_.settle();
        for (const double share : {0.25, 0.5, 0.75, 1.0}) {
            hand_.move(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));
            hand_.settle();
        }
    }
    void let_go() {
        hand_.button(false);
        hand_.settle();
    }
    std::string step_of(const std::string& pin) const {
        for (const std::string& step : work().plan.sequence)
            if (pin_name(*setup_of_step(work().plan, step), work().design) == pin) return step;
        return {};
    }
    std::string name_of(const std::string& step) const {
        return pin_name(*setup_of_step(work().plan, step), work().design);
    }

private:
    App opened() const {
        std::ifstream in(fs::path(KW_ASSET_DIR) / "demo.json");
        Json job = Json::parse(in);
        for (Json& cutter : job["cutters"]) cutter.erase("spare_chippers");
        std::ofstream(path_) << job.dump();
        auto app = App::open(path_);
        REQUIRE_MESSAGE(app.has_value(), (app ? "" : app.error()));
        return std::move(*app);
    }

    fs::path path_;
    App app_;
    Hand hand_;
};

constexpr double gutter_x = 60;  // over the machine's name, before the time begins

}  // namespace

TEST_CASE("a step dragged to the beginning of its lane is pinned first, and what that takes is said") {
    Dragging page;
    const auto before = page.app().session().work;
    const std::string step = before->plan.sequence.back(), name = page.name_of(step);
    const Place from = page.middle(step);
    page.take_up_and_carry(from, {gutter_x, from.y});
    CHECK(page.said() ==
          step_name(words_in(Language::english), before->plan, step) +
              " first, before all that it does not need itself. Let go: the order is made anew, "
              "and what that takes is said");
    CHECK(page.app().session().work == before);
    page.let_go();
    CHECK(page.said().empty());
    CHECK(page.app().state().place == Where::order);
    CHECK(page.on_disk()["pins"].dump() == R"({"first":[")" + name + R"("]})");
    const std::string now_called = page.step_of(name);
    CHECK(pinned(page.work(), *setup_of_step(page.work().plan, now_called)) == Pinned::first);
    const std::string news = pin_news(words_in(Language::english), *before, page.work(),
                                      {setup_of_step(before->plan, step)->id, Pinned::first});
    CHECK_MESSAGE(page.hand().sees(news), news);

    // Among the others it is let go again.
    const Place pinned_at = page.middle(now_called);
    page.take_up_and_carry(pinned_at,
                           page.middle(page.work().plan.sequence[page.work().plan.sequence.size() / 2]));
    CHECK(page.said() == step_name(words_in(Language::english), page.work().plan, now_called) +
                             " any time, wherever it fits best. Let go: it is no longer wanted first");
    page.let_go();
    CHECK_FALSE(page.on_disk().contains("pins"));
    CHECK(page.work().plan.sequence == before->plan.sequence);
}

TEST_CASE("a step dragged to the end is pinned last, by a finger that is quick, too") {
    Dragging page;
    const std::string step = page.work().plan.sequence[1], name = page.name_of(step);
    const Place from = page.middle(step);
    page.hand().drag(from.x, from.y, 1275, from.y, 1);
    CHECK(page.on_disk()["pins"].dump() == R"({"last":[")" + name + R"("]})");
}

TEST_CASE("a drag that goes back, or that Escape ends, asks for nothing, and is no tap") {
    Dragging page;
    const std::string step = page.work().plan.sequence.back();
    const Place from = page.middle(step);
    page.take_up_and_carry(from, {gutter_x, from.y});
    page.hand().move(from.x, from.y);
    page.hand().settle();
    CHECK(page.said() == step_name(words_in(Language::english), page.work().plan, step) +
                             " stays where it is. To the beginning: done first. To the end: done last");
    page.let_go();
    CHECK(page.app().state().place == Where::order);
    page.take_up_and_carry(from, {gutter_x, from.y});
    page.hand().key(GLFW_KEY_ESCAPE);
    CHECK(page.said().empty());
    page.let_go();
    CHECK(page.app().state().place == Where::order);
    CHECK_FALSE(page.on_disk().contains("pins"));
    page.hand().press_at(from.x, from.y);
    CHECK(page.app().state().place == Where::saw);
    CHECK(page.app().state().setup == step);
}

TEST_CASE(
    "on a page that scrolls a finger that goes up from a block scrolls, and one that goes sideways drags") {
    Dragging page(800, 1280);
    const std::string step = page.work().plan.sequence.back();
    const Place from = page.middle(step);
    page.take_up_and_carry(from, {from.x + 20, from.y - 300});
    CHECK(page.said().empty());
    page.let_go();  // and the page swings on until it rests
    const Place scrolled = page.middle(step);
    CHECK(scrolled.y < from.y - 100);
    CHECK_FALSE(page.on_disk().contains("pins"));
    page.take_up_and_carry(scrolled, {gutter_x, scrolled.y + 40});
    CHECK_FALSE(page.said().empty());
    CHECK(page.middle(step).y == doctest::Approx(scrolled.y));
    page.let_go();
    CHECK(page.on_disk().contains("pins"));
}

TEST_CASE("while a newer document is worked out the status says so, and afterwards how good the order is") {
    Dragging page;
    CHECK(page.hand().sees(proof_words(words_in(Language::english), page.work().plan)));
    bool was_said = false;
    for (const char* width : {"12 3/8", "13 1/16"}) {
        page.hand().window().draw([&](Ui& ui) {
            page.app().act(ui, SetField{"/drawers/0/opening/width", width});
            page.app().frame(ui);
            if (!page.app().is_idle()) {
                was_said = true;
                // After a while, which a slow machine may take between two frames, with how much better it can be.
                REQUIRE(page.app().state().searching.has_value());
                CHECK(page.hand().sees(search_words(words_in(Language::english),
                                                    page.app().state().searching->at_most_better_s)));
                CHECK_FALSE(page.hand().sees(proof_words(words_in(Language::english), page.work().plan)));
            }
        });
    }
    CHECK(was_said);
    page.hand().settle();
    CHECK(page.app().is_idle());
    CHECK_FALSE(page.hand().sees(search_words(words_in(Language::english), {})));
    CHECK(page.hand().sees(proof_words(words_in(Language::english), page.work().plan)));
}

TEST_CASE("how much better the order can be at most stands on the screen as it was told while searching") {
    Dragging page;
    for (const std::int64_t seconds : {std::int64_t{1}, std::int64_t{59}, std::int64_t{61}}) {
        page.hand().window().draw([&](Ui& ui) {
            UiState state;
            state.place = Where::order;
            state.searching = Searching{seconds};
            draw_program(ui, page.app().session(), state);
        });
        CHECK(page.hand().sees(search_words(words_in(Language::english), seconds)));
        CHECK_FALSE(page.hand().sees(proof_words(words_in(Language::english), page.work().plan)));
    }
}

}  // namespace kw::window
