// What must not happen by a slip wants to be held down: by a finger or by a key.
#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

#include <algorithm>

#include "window/in_sight.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {
TEST_CASE("a part is spoilt by a press and a hold; a tap loses nothing") {
    Maker maker(one_drawer);
    maker.press("At the saw");
    maker.press("Tick all");
    const std::size_t told = maker.on_disk()["log"].size();
    maker.press("A part is spoilt");
    const Pass pass = maker.setup().passes.front();
    const std::string part = part_words(words_in(Language::english), maker.work().plan, pass.part);
    maker.press(part);
    CHECK(maker.on_disk()["log"].size() == told);
    maker.hold(part);
    REQUIRE(maker.on_disk()["log"].size() == told + 1);
    CHECK(maker.on_disk()["log"].back()["kind"] == "lost");
    CHECK(maker.on_disk()["log"].back()["part"] == pass.part);
}

TEST_CASE("a tick is taken away by holding it down, and a tap says so") {
    Maker maker(one_drawer);
    maker.press("At the saw");
    const std::string part =
        part_words(words_in(Language::english), maker.work().plan, maker.setup().passes.front().part);
    maker.press(part);
    REQUIRE(maker.on_disk()["log"].size() == 1);
    maker.press(part);
    CHECK(maker.on_disk()["log"].size() == 1);
    REQUIRE(toast_in(maker.hand().log()));
    CHECK(toast_in(maker.hand().log())->label == "Hold it down to take the tick away");
    maker.hold(part);
    CHECK(maker.on_disk()["log"].empty());
}

TEST_CASE("hold to undo says what it takes back, and takes it") {
    Maker maker(one_drawer);
    maker.press("At the saw");
    maker.press("Tick all");
    const std::size_t passes = maker.setup().passes.size();
    const std::string what =
        (passes == 1 ? "the tick" : std::to_string(passes) + " ticks") + std::string(" at step 1");
    CHECK(last_words(words_in(Language::english), maker.work()) == what);
    maker.press("Hold to undo");  // a tap
    CHECK(maker.on_disk()["log"].size() == passes);
    maker.hold("Hold to undo");
    CHECK(maker.on_disk()["log"].empty());
    CHECK_FALSE(maker.find("Hold to undo"));
}

TEST_CASE("a joint that was not tested is locked by no number of taps, and by holding") {
    Maker maker(one_drawer);
    go_to_test(maker);
    maker.press("Test cut first");
    const LoggedWidget* lock = maker.find("Hold to lock");
    REQUIRE(lock);
    CHECK(lock->value.rfind("not tested: ", 0) == 0);
    for (int tap = 0; tap < 3; ++tap) maker.press("Hold to lock");
    CHECK(maker.on_disk()["log"].empty());
    maker.hold("Hold to lock");
    REQUIRE(maker.on_disk()["log"].size() == 1);
    CHECK(maker.on_disk()["log"][0]["kind"] == "lock");
}

TEST_CASE(
    "on a low panel the readings stand beside the advice, and both the entry and the answer are in sight") {
    Maker maker(one_drawer, 1024, 600);
    go_to_test(maker);
    maker.press("Test cut first");
    const LoggedWidget *work_out = maker.find("Work it out"), *lock = maker.find("Hold to lock"),
                       *reading = nullptr;
    for (const LoggedWidget& widget : maker.hand().log().widgets)
        if (widget.kind == "length field" && !reading) reading = &widget;
    REQUIRE(reading);
    REQUIRE(work_out);
    CHECK(whole_in_sight(*reading));
    CHECK(whole_in_sight(*work_out));
    // It comes first, as one reads.
    CHECK((!lock || reading->box.left < lock->box.left));
    CHECK((!lock || reading->box.top < lock->box.top));
}

TEST_CASE("undo in the head wants to be held, says what it has taken back, and redo does it again") {
    Maker maker(one_drawer);
    maker.press("At the saw");
    const std::string part =
        part_words(words_in(Language::english), maker.work().plan, maker.setup().passes.front().part);
    maker.press("A part is spoilt");
    maker.hold(part);
    REQUIRE(maker.on_disk()["log"].size() == 1);
    maker.press("Undo");
    CHECK(maker.on_disk()["log"].size() == 1);
    REQUIRE(toast_in(maker.hand().log()));
    CHECK(maker.hand().ui().toasts.back().text == "Hold it down to undo");
    maker.hold("Undo");
    CHECK(maker.on_disk()["log"].empty());
    CHECK(maker.hand().ui().toasts.back().text == "Undone: part lost: " + part);
    maker.press("Redo");
    CHECK(maker.on_disk()["log"].size() == 1);
}

TEST_CASE(
    "a part that was lost is to be made again, and what has gone through of the new piece is not lost") {
    Maker maker(one_drawer);
    maker.press("At the saw");
    maker.press("Tick all");
    const std::string part =
        part_words(words_in(Language::english), maker.work().plan, maker.setup().passes.front().part);
    maker.press("A part is spoilt");
    maker.hold(part);
    const auto says = [&] { return maker.find(part)->value; };
    CHECK(says().ends_with(", to be made again"));
    maker.press(part);  // the new piece has gone through
    CHECK(maker.find(part)->chosen);
    CHECK(says().find("lost") == std::string::npos);
    CHECK(says().find("again") == std::string::npos);
}

namespace {

// Which step it is, by its name; it is shown.
std::string torn_down_in(Maker& maker) {
    // The first joint is locked, and the saw is used for something else before its parts are told.
    std::string torn;
    const auto act = [&](const Action& action) {
        maker.app().act(maker.hand().ui(), action);
        maker.app().finish(maker.hand().ui());
        CHECK(maker.app().session().refused == "");
    };
    for (const std::string& step : std::vector<std::string>(maker.work().plan.sequence)) {
        const Setup* setup = setup_of_step(maker.work().plan, step);
        if (setup->stage != Stage::joint) {
            std::vector<std::size_t> all(setup->passes.size());
            for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
            if (torn.empty()) act(MarkRun{setup->id, all, true});
        } else if (setup->test_cut) {
            TestCut lock;
            lock.setup = setup->id;
            if (torn.empty()) torn = step;
            act(LockGroup{lock});
            if (is_torn_down(maker.work(), *setup_of_step(maker.work().plan, torn))) break;
        }
    }
    REQUIRE(is_torn_down(maker.work(), *setup_of_step(maker.work().plan, torn)));
    maker.app().state().place = Where::saw;
    maker.app().state().setup = torn;
    maker.redraw();
    return torn;
}

}  // namespace

TEST_CASE("ends that ran before a setup was torn down are ticked afterwards, where that is said") {
    Maker maker(one_drawer);
    torn_down_in(maker);
    const std::size_t told = maker.on_disk()["log"].size();
    maker.press("Tick all");
    CHECK(maker.on_disk()["log"].size() == told);  // as if they ran now: refused
    maker.press("They ran before it was torn down");
    maker.press("Tick all");
    CHECK(maker.on_disk()["log"].size() > told);
    CHECK_FALSE(is_torn_down(maker.work(), maker.setup()));
    CHECK(maker.on_disk()["log"].back().contains("late"));
}

TEST_CASE("a part that ran before its setup was torn down is told by key as by hand") {
    Maker maker(one_drawer);
    const std::string torn = torn_down_in(maker);
    maker.press("They ran before it was torn down");
    maker.hand().key(GLFW_KEY_R);
    CHECK(maker.app().session().refused == "");
    CHECK(maker.on_disk()["log"].back().contains("late"));
}

TEST_CASE("that ends are told late stays with the setup when the order is numbered anew") {
    Maker maker(one_drawer);
    const std::string torn = torn_down_in(maker);
    maker.press("They ran before it was torn down");
    // Another drawer's setups come before.
    maker.app().act(maker.hand().ui(), AddDrawer{0});
    maker.app().finish(maker.hand().ui());
    maker.app().act(maker.hand().ui(), SetField{"/drawers/1/opening/depth", "16"});
    maker.app().finish(maker.hand().ui());
    maker.redraw();
    REQUIRE(maker.setup().id != torn.substr(0, torn.find('#')));
    CHECK(maker.app().state().late_at == maker.app().state().setup);
    CHECK(maker.find("They ran before it was torn down")->chosen);
}

TEST_CASE("holding by key takes as long as holding by hand: one press of a key takes nothing back") {
    Maker maker(one_drawer);
    maker.press("At the saw");
    maker.press("Tick all");
    const std::size_t told = maker.on_disk()["log"].size();
    const auto reach = [&] {
        // The keyboard goes to what was pressed last.
        maker.press("Hold to undo");
        maker.hand().key(GLFW_KEY_DOWN);
        maker.hand().key(GLFW_KEY_UP);
    };
    for (const int key : {GLFW_KEY_SPACE, GLFW_KEY_ENTER}) {
        reach();
        maker.hand().tap_key(key);
        CHECK(maker.on_disk()["log"].size() == told);
    }
    reach();
    maker.hand().hold_key(GLFW_KEY_SPACE);
    CHECK(maker.on_disk()["log"].empty());
}

}  // namespace kw::window
