// The first start: one drawer, from the opening to the first setup, by pressing alone.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

#include "window/maker.h"

namespace kw::window {
namespace {

std::string first_job() {
    std::ifstream in(std::filesystem::path(KW_ASSET_DIR) / "first.json");
    return {std::istreambuf_iterator<char>(in), {}};
}

// A maker who counts.
struct Beginner {
    Maker maker;
    int presses = 0;

    explicit Beginner(int width = 1280, int height = 800) : maker(first_job(), width, height) {
        maker.app().state().first_question = 0;
        maker.redraw();
    }
    void press(const std::string& label) {
        maker.press(label);
        ++presses;
    }
    void put_in(const std::string& length) {
        press("Press to put it in");
        maker.key_in(length);
        presses += static_cast<int>(length.size()) + 1;
    }
};

}  // namespace

TEST_CASE("from nothing to the first setup at the saw, by few presses") {
    for (const auto& [width, height] : {std::pair{1280, 800}, std::pair{800, 1280}, std::pair{1024, 600}}) {
        Beginner beginner(width, height);
        beginner.press("Inches");
        for (const char* length : {"15", "6", "19"}) beginner.put_in(length);
        beginner.press("Undermount");
        for (const char* length : {"0.47", "0.22"}) beginner.put_in(length);
        beginner.press("To the first setup at the saw");
        CHECK(beginner.maker.app().state().place == Where::saw);
        CHECK(beginner.maker.app().state().setup == beginner.maker.work().plan.sequence.front());
        const Json job = beginner.maker.on_disk();
        CHECK(job["drawers"][0]["opening"]["width"] == "15 in");
        CHECK(job["drawers"][0]["slide"]["kind"] == "undermount");
        CHECK(job["stock"][1]["thickness"] == "0.22 in");
        // A press a second leaves a minute to measure.
        CHECK(beginner.presses < 40);
    }
}

TEST_CASE("what the plan has to tell of the first drawer is told before the first setup") {
    Beginner beginner;
    for (int i = 0; i < 7; ++i) beginner.press("Go on");
    const auto& notes = beginner.maker.work().plan.notes;
    REQUIRE_FALSE(notes.empty());
    CHECK(beginner.maker.hand().log().find("To know"));
    const Locale& locale = beginner.maker.work().job.locale;
    for (const Note& note : notes) {
        const std::string words = note.text.text(locale);
        CHECK_MESSAGE(dump(beginner.maker.hand().log()).find(words.substr(1)) != std::string::npos, words);
    }
}

TEST_CASE("every question can be skipped, and what is left out has a value that was said") {
    Beginner beginner;
    for (int i = 0; i < 7; ++i) beginner.press("Go on");
    CHECK(beginner.maker.app().session().problems.empty());
    beginner.press("To the first setup at the saw");
    CHECK(beginner.maker.on_disk() == Json::parse(first_job()));
}

TEST_CASE("an opening that leaves no drawer is said at once, and the way back puts it right") {
    Beginner beginner;
    beginner.press("Inches");
    beginner.put_in("1");
    CHECK(beginner.maker.hand().log().find("How high is the opening?"));
    CHECK_FALSE(beginner.maker.app().session().problems.empty());
    for (int i = 0; i < 5; ++i) beginner.press("Go on");
    CHECK_FALSE(beginner.maker.find("To the first setup at the saw"));
    for (int i = 0; i < 6; ++i) beginner.press("Back");
    beginner.put_in("15");
    for (int i = 0; i < 5; ++i) beginner.press("Go on");
    CHECK(beginner.maker.find("To the first setup at the saw"));
}

TEST_CASE("on a panel of 1024 x 600 the whole keypad is in sight") {
    Beginner beginner(1024, 600);
    beginner.press("Inches");
    beginner.press("Press to put it in");
    int keys = 0;
    for (const LoggedWidget& widget : beginner.maker.hand().log().widgets) {
        if (widget.kind != "key" && widget.label != "Cancel") continue;
        ++keys;
        INFO(widget.label);
        CHECK(widget.box.top >= 0);
        CHECK(widget.box.bottom <= 600);
        CHECK(widget.box.left >= 0);
        CHECK(widget.box.right <= 1024);
        CHECK(widget.box.bottom - widget.box.top >= 44);
    }
    CHECK(keys == 24);
}

TEST_CASE("in millimetres what is put in and shown is millimetres") {
    Beginner beginner;
    beginner.press("Millimetres");
    beginner.put_in("380");
    CHECK(beginner.maker.on_disk()["drawers"][0]["opening"]["width"] == "380 mm");
    CHECK(unit_of(beginner.maker.work().job.locale) != Unit::inch);
}

}  // namespace kw::window
