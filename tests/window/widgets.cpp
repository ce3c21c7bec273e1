// Every widget, pressed, typed into and measured in the real window. 44 px for what a finger presses: WCAG 2.2, 2.5.5.
// Contrast: WCAG 2.2, 1.4.3 (4.5:1), 1.4.6 (7:1, asked here of the large numbers).
#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

#include <cmath>

#include "window/hand.h"
#include "window/platform.h"
#include "window/sample_page.h"

using namespace kw::window;

namespace {

bool meet(const kw::draw::PixelBox& a, const kw::draw::PixelBox& b) {
    return a.left + 0.5 < b.right && b.left + 0.5 < a.right && a.top + 0.5 < b.bottom &&
           b.top + 0.5 < a.bottom;
}

void check_layout(const WidgetLog& log, double ratio) {
    for (const LoggedWidget& w : log.widgets) {
        CAPTURE(w.kind);
        CAPTURE(w.label);
        CHECK_FALSE(w.cut_off);
        if (w.pressable) {
            CHECK(w.box.bottom - w.box.top >= size::least_target * ratio - 0.5);
            CHECK(w.box.right - w.box.left >= size::least_target * ratio - 0.5);
        }
        if (w.text_px > 0) CHECK(w.text_px >= 18.0 - 0.01);
        if (w.contrast > 0) CHECK(w.contrast >= (w.kind == "number" ? 7 : 4.5));
    }
}

void check_apart(const WidgetLog& log) {
    for (std::size_t i = 0; i < log.widgets.size(); ++i) {
        for (std::size_t j = i + 1; j < log.widgets.size(); ++j) {
            const LoggedWidget &a = log.widgets[i], &b = log.widgets[j];
            if (!a.pressable || !b.pressable) continue;
            CHECK_MESSAGE(!meet(a.seen, b.seen), a.label, " and ", b.label);
        }
    }
}

struct Look {
    int width, height;
    double ratio;
    kw::draw::Theme theme;
};

}  // namespace

TEST_CASE("at every size, scale and theme targets are large enough, apart, and their words can be read") {
    using kw::draw::Theme;
    for (const Look& look : {Look{1280, 800, 1, Theme::light},
                             {800, 1280, 1, Theme::dark},
                             {1920, 1080, 1, Theme::light},
                             {1024, 600, 1, Theme::dark},
                             {2560, 1600, 2, Theme::light},
                             {1800, 1125, 1.4, Theme::light}}) {
        CAPTURE(look.width);
        SamplePage page;
        Hand hand(
            {.width = look.width, .height = look.height, .theme = look.theme, .pixel_ratio = look.ratio},
            std::ref(page));
        check_layout(hand.log(), look.ratio);
        check_apart(hand.log());
        hand.press(hand.sees("Dado width") && hand.log().find("Dado width")->seen.right > 0 ? "Dado width"
                                                                                            : "Back");
        check_layout(hand.log(), look.ratio);
    }
}

TEST_CASE("each widget does what its press says") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Next setup");
    hand.press("Next setup");
    CHECK(page.nexts == 2);
    hand.press("Back");
    CHECK(page.backs == 1);
    hand.press("Right side");
    CHECK(page.second);
    hand.press("Left side");
    CHECK_FALSE(page.first);
    hand.press("Sound on the next step");
    CHECK(page.sound);
    hand.press("tight");
    CHECK(page.feel == 1);
    hand.press("Work");
    CHECK(page.place == 1);
    hand.press("Fence");
    hand.press("The joint closed");
    hand.press("last value");
    CHECK(page.figures == 3);
}

TEST_CASE("a fast move and press before anything is drawn still presses") {
    SamplePage page;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    hand.move(5, 5);
    hand.settle();
    for (int i = 1; i <= 5; ++i) {
        const auto box = hand.find("Next setup").box;
        hand.move(5, 5);
        hand.move((box.left + box.right) / 2, (box.top + box.bottom) / 2);
        hand.button(true);
        hand.button(false);
        hand.settle();
        CHECK(page.nexts == i);
    }
}

TEST_CASE("what cannot be used now does not answer") {
    SamplePage page;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    const LoggedWidget off = hand.find("Not now");
    CHECK_FALSE(off.enabled);
    hand.press("Not now");
    CHECK(page.nexts + page.backs == 0);
}

TEST_CASE("nothing is lost in one press: a second is asked for, in other words") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Mark as lost");
    CHECK(page.lost == 0);
    CHECK_FALSE(hand.sees("Mark as lost"));
    hand.press("Press again: it is lost");
    CHECK(page.lost == 1);
    CHECK(hand.sees("Mark as lost"));
}

TEST_CASE("undo wants to be held") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Hold to undo");
    const int after_a_tap = page.undone;
    const auto box = hand.find("Hold to undo").box;
    hand.move((box.left + box.right) / 2, (box.top + box.bottom) / 2);
    hand.button(true);
    for (int i = 0; i < 200 && page.undone == after_a_tap; ++i) {
        glfwWaitEventsTimeout(0.005);
        hand.window().step(std::ref(page));
    }
    hand.button(false);
    hand.settle();
    CHECK(after_a_tap == 0);
    CHECK(page.undone == 1);
}

TEST_CASE("a length is entered by touch alone") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Dado width");
    REQUIRE(hand.sees("/16"));
    for (const char* key : {"9", "/16", "3", "Use 9 3/16 in"}) hand.press(key);
    CHECK(page.dado == "9 3/16 in");
    CHECK_FALSE(hand.sees("/16"));
}

TEST_CASE("a length is entered by keyboard alone, and Escape leaves the old one") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Dado width");
    hand.type("12.7m");
    hand.key(GLFW_KEY_ENTER);
    CHECK(page.dado == "12.7 mm");
    hand.press("Dado width");
    hand.type("5");
    hand.key(GLFW_KEY_ESCAPE);
    CHECK(page.dado == "12.7 mm");
    CHECK_FALSE(hand.sees("/16"));
}

TEST_CASE("a sum and a step by touch, and by the keyboard's arrows") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Dado width");
    for (const char* key : {"9", "/2", "1", "\u2212", "/4", "1", "Use 9 1/4 in"}) hand.press(key);
    CHECK(page.dado == "9 1/4 in");
    hand.press("Dado width");
    for (const char* key : {"1/64 more", "1/64 more", "1/64 less", "Use 9 17/64 in"}) hand.press(key);
    CHECK(page.dado == "9 17/64 in");
    hand.press("Dado width");
    ImGui::GetIO().KeyRepeatDelay = 1e6f;  // a slow machine must not make two steps of one press
    hand.key(GLFW_KEY_DOWN);
    hand.type("+1/2");
    hand.key(GLFW_KEY_ENTER);
    CHECK(page.dado == "9 3/4 in");
}

TEST_CASE("a step that is held down goes on") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Dado width");
    const auto box = hand.find("1/64 more").box;
    hand.move((box.left + box.right) / 2, (box.top + box.bottom) / 2);
    hand.button(true);
    for (int i = 0; i < 400 && !hand.sees("Use 10 1/8 in"); ++i) {
        glfwWaitEventsTimeout(0.005);
        hand.window().step(std::ref(page));
    }
    CHECK(hand.sees("Use 10 1/8 in"));  // four steps past 10 1/16
    hand.button(false);
    hand.settle();
}

TEST_CASE("a value used lately is one press away") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Dado width");
    hand.press("12.7 mm");
    CHECK(page.dado == "12.7 mm");
}

TEST_CASE("half a fraction cannot be used") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Dado width");
    for (const char* key : {"2", "0", "/16"}) hand.press(key);
    CHECK_FALSE(hand.find("Use \u2026").enabled);
    hand.key(GLFW_KEY_ENTER);
    CHECK(page.dado == "10 1/16 in");
}

TEST_CASE("text is typed into a field, with letters that are rare in English") {
    SamplePage page;
    page.name.clear();
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    hand.press("Name");
    hand.type("Seeds");
    CHECK(page.name == "Seeds");
    page.name = "\u0160upl\u00edky \u0151\u0171";
    hand.settle();
    hand.window().draw(std::ref(page));
    hand.window().draw(std::ref(page));
    CHECK(hand.ui().font(TypeSize::body).font->FindGlyphNoFallback(0x0160) != nullptr);
}

TEST_CASE("the keyboard reaches and presses widgets, and shows where it is") {
    SamplePage page;
    Hand hand({.width = 1600, .height = 1500, .pixel_ratio = 1}, std::ref(page));
    const Pixels before = hand.picture();
    hand.key(GLFW_KEY_TAB);
    hand.key(GLFW_KEY_TAB);
    CHECK(before.rgb != hand.picture().rgb);
    bool worked = false;
    for (int i = 0; i < 60 && !(worked && page.second && page.nexts > 0); ++i) {
        hand.key(GLFW_KEY_SPACE);
        if (hand.sees("/16")) {
            hand.key(GLFW_KEY_ESCAPE);
            hand.key(GLFW_KEY_TAB);  // shows where the keyboard is again
        }
        worked = worked || page.place == 1;
        hand.key(GLFW_KEY_TAB);
    }
    CHECK(worked);
    CHECK(page.second);  // within a region that scrolls
    CHECK(page.nexts > 0);
}

TEST_CASE("a finger scrolls a region, presses nothing on the way, and its last step counts") {
    SamplePage page;
    Hand hand({.width = 1280, .height = 800, .pixel_ratio = 1}, std::ref(page));
    const auto row = hand.find("Left side").box;
    const double x = (row.left + row.right) / 2, y = (row.top + row.bottom) / 2;
    const bool ticked = page.first;
    hand.move(x, y);
    hand.button(true);
    hand.settle();
    hand.move(x, y - 40);
    hand.window().draw(std::ref(page));
    // The last step and the release come before the next frame.
    hand.move(x, y - 60);
    hand.button(false);
    hand.window().draw(std::ref(page));
    CHECK(static_cast<double>(hand.ui().scroll.last_y) ==
          doctest::Approx(std::floor(y - 60)));  // the back end hands on whole pixels
    hand.settle();
    const double moved = row.top - hand.log().find("Left side")->box.top;
    CHECK(moved >= 59.5);
    CHECK(page.first == ticked);
}

TEST_CASE("a toast tells and goes, and then the window rests") {
    SamplePage page;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    hand.ui().toast("Saved", Tone::good);
    hand.settle();
    CHECK(hand.sees("Saved"));
    hand.ui().toasts.front().until_s = 0;
    hand.window().draw(std::ref(page));
    CHECK_FALSE(hand.sees("Saved"));
}
