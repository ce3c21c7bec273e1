// The real window, worked as a maker works it: by pressing what is on the screen.

#include <doctest/doctest.h>

#include <algorithm>

#include "text_in.h"
#include "window/by_pressing.h"
#include "window/maker.h"

namespace kw::window {
namespace {

std::string demo_text() { return tests::text_in(KW_ASSET_DIR "/demo.json"); }

}  // namespace

TEST_CASE("an opening is put in on the keypad, and the box follows at once") {
    Maker maker(one_drawer);
    maker.press("Width");
    maker.key_in("11 3/16");
    CHECK(maker.on_disk()["drawers"][0]["opening"]["width"] == "11 3/16 in");
    // 1/2 in of slide on either side: common practice, no source.
    CHECK(maker.box_width() == Length::inches(163, 16));
    maker.hold("Undo");
    CHECK(maker.box_width() == Length::inches(214, 16));
    maker.press("Redo");
    CHECK(maker.box_width() == Length::inches(163, 16));
}

TEST_CASE("an opening that leaves no box is marked, and the last good plan stays") {
    Maker maker(one_drawer);
    const Length before = maker.box_width();
    maker.press("Width");
    maker.key_in("1");
    CHECK_FALSE(maker.app().session().problems.empty());
    CHECK(maker.box_width() == before);
    CHECK(maker.find("Show where"));
    CHECK(maker.hand().log().find("This can't be made as it is"));
    maker.hold("Undo");
    CHECK(maker.app().session().problems.empty());
    CHECK_FALSE(maker.find("Show where"));
}

TEST_CASE("a fraction over nothing is not taken, and stays in its field with the reason") {
    Maker maker(one_drawer);
    const Json before = maker.on_disk();
    maker.app().state().drafts["/drawers/0/opening/depth"] = {"18 3/0", "a fraction over zero"};
    maker.hand().window().ui().animate();
    maker.hand().settle();
    CHECK(maker.find("Depth")->value == "18 3/0");
    CHECK(maker.on_disk() == before);
    maker.press("Depth");
    maker.key_in("17 3/4");
    CHECK(maker.on_disk()["drawers"][0]["opening"]["depth"] == "17 3/4 in");
    CHECK(maker.app().state().drafts.empty());
}

TEST_CASE("a drawer is added like another, and goes only with a second press") {
    Maker maker(one_drawer);
    maker.press("Add one like this");
    CHECK(maker.work().plan.boxes.size() == 2);
    CHECK(maker.app().state().drawer == 1);
    maker.press("Remove this one");
    CHECK(maker.work().plan.boxes.size() == 2);
    maker.press("Press again to remove");
    CHECK(maker.work().plan.boxes.size() == 1);
}

TEST_CASE("a whole drawer is made by pressing alone: every step run, every joint tested and locked") {
    Maker maker(one_drawer);
    const Length front_designed = maker.length_of("string.1.front");
    const int locked = make_all(maker);
    CHECK(locked >= 3);  // the front's joint, the back's, the groove
    for (const Setup& setup : maker.work().plan.setups)
        for (const Pass& pass : setup.passes) CHECK(has_run(maker.work(), setup, pass));
    // A tongue that came out longer asks for a longer front, and the front was not yet cut to length.
    CHECK(maker.length_of("string.1.front") > front_designed);
    const Json log = maker.on_disk()["log"];
    const auto entries_of = [&](const char* kind) {
        return std::count_if(log.begin(), log.end(),
                             [&](const Json& entry) { return entry["kind"] == kind; });
    };
    CHECK(entries_of("test") == locked);
    CHECK(entries_of("lock") == locked);
    CHECK(entries_of("ran") > locked);
    const std::size_t last_passes = maker.setup().passes.size();
    maker.hold("Undo");
    CHECK(maker.on_disk()["log"].size() == log.size() - last_passes);
    maker.press("Redo");
    CHECK(maker.on_disk()["log"] == log);
    maker.press("Log");
    CHECK(maker.hand().log().find("Locked"));
}

TEST_CASE("a tap on a block of the order's picture opens its step at the saw, as its row does") {
    Maker maker(demo_text());
    for (const std::string step : {"S1", "S12", "S31"}) {
        maker.press("Order of work");
        maker.press(step);
        CHECK(maker.app().state().place == Where::saw);
        CHECK(maker.app().state().setup == step);
    }
}

TEST_CASE(
    "a setup is wanted first by two presses; the order is shown then, and what it takes; and any time "
    "again") {
    Maker maker(one_drawer);
    const auto sequence = maker.work().plan.sequence;
    const std::int64_t seconds = maker.work().plan.seconds;
    const auto open_last = [&] {
        maker.press("Order of work");
        maker.press(maker.work().plan.sequence.back());
    };
    open_last();
    const std::string work = maker.setup().work;
    maker.press("First");
    CHECK(maker.app().state().place == Where::order);
    CHECK(maker.work().plan.seconds == seconds + maker.work().plan.pins_s);
    CHECK(maker.work().plan.pins_s > 0);
    std::size_t at = 0;
    for (const std::string& step : maker.work().plan.sequence) {
        if (maker.work().plan.setup_with_id(step)->work == work) break;
        ++at;
    }
    REQUIRE(at + 1 < sequence.size());
    maker.press(maker.work().plan.sequence[at]);
    CHECK(maker.setup().work == work);
    maker.press("Any time");
    CHECK(maker.work().plan.sequence == sequence);
    CHECK(maker.work().plan.seconds == seconds);
}

TEST_CASE("what the estimator refuses is said at the test cut, and nothing is logged") {
    Maker maker(one_drawer);
    for (const Setup& setup : maker.work().plan.setups)
        if (setup.test_cut && setup.work.rfind("back dado", 0) == 0) maker.app().state().setup = setup.id;
    maker.press("At the saw");
    maker.press("Test cut");
    maker.press("Depth", true);
    maker.key_in("9");  // inches deep
    maker.press("Work it out");
    CHECK(maker.hand().log().find("Not taken"));
    CHECK(maker.on_disk()["log"].dump() == "[]");
}

TEST_CASE("what is seen on the closed joint is told by tapping its picture, and a second tap lets it go") {
    Maker maker(one_drawer);
    for (const Setup& setup : maker.work().plan.setups)
        if (setup.test_cut && setup.work.rfind("locking rabbet", 0) == 0)
            maker.app().state().setup = setup.id;
    maker.press("At the saw");
    maker.press("Test cut");
    maker.press("Say what is seen, without measuring");
    maker.press("Side a hair proud");
    maker.press("Shoulder closed");
    maker.press("Two sheets beside it");
    maker.press("Two sheets beside it");
    maker.press("Work it out");
    REQUIRE_MESSAGE(maker.app().session().refused.empty(), maker.app().session().refused);
    CHECK(maker.on_disk()["log"][0]["seen"].dump() == R"(["side a hair proud","shoulder closed"])");
}

TEST_CASE("a reading that contradicts the rest is asked again, and taken when the maker has looked again") {
    Maker maker(one_drawer);
    for (const Setup& setup : maker.work().plan.setups)
        if (setup.test_cut && setup.work.rfind("locking rabbet", 0) == 0)
            maker.app().state().setup = setup.id;
    const Group& group = *maker.work().plan.group_with_id(maker.setup().group);
    maker.press("At the saw");
    maker.press("Test cut");
    const Length tongue = group.work.insert_thickness - group.stands.height;
    const std::pair<const char*, Length> readings[] = {
        {"Dado width", group.stands.kerf},
        {"Tongue thickness", tongue},
        {"Fit", group.stands.kerf - tongue + Length::inches(12, 1000)}};
    for (const auto& [name, value] : readings) {
        maker.press(name, true);
        maker.key_in(decimals(value));
    }
    maker.press("Work it out");
    CHECK(maker.hand().log().find("Look again"));
    CHECK(maker.on_disk()["log"].dump() == "[]");
    maker.press("I looked again: it is right");
    CHECK(maker.on_disk()["log"].size() == 1);
}

TEST_CASE("what was moved instead of measured is told by a tap, and goes into the log as moved") {
    Maker maker(demo_text());
    for (const Setup& setup : maker.work().plan.setups)
        if (setup.work == "locking rabbet: side dado" && setup.passes[0].part.rfind("twine", 0) == 0)
            maker.app().state().setup = setup.id;
    maker.press("At the saw");
    maker.press("Test cut");
    const auto put_in = [&](const std::vector<std::pair<const char*, const char*>>& readings) {
        TestDraft& draft = maker.app().state().test;
        draft.setup = maker.setup().id;
        for (const auto& [name, value] : readings) draft.readings[name].text = value;
        maker.press("Test cut");  // draws what was put in
        maker.press("Work it out");
        REQUIRE_MESSAGE(maker.app().session().refused.empty(), maker.app().session().refused);
    };
    put_in({{"stock_thickness", "0.469"},
            {"dado_width", "0.250"},
            {"dado_depth", "0.211"},
            {"lip", "0.217"},
            {"tongue_length", "0.201"},
            {"fit", "-0.007"},
            {"face_step", "0.006"}});
    REQUIRE(fit_report(maker.work(), maker.setup().id)->advice == AdviceKind::measure);
    maker.press("I made these moves");
    put_in({{"fit", "0.004"}, {"face_step", "0"}, {"tongue_length", "0.207"}});
    const Json told = maker.on_disk()["log"];
    REQUIRE(told.size() == 2);
    CHECK(told[1]["moved"].size() == 2);
    CHECK(told[1]["moved"].contains("height"));
    CHECK(fit_report(maker.work(), maker.setup().id)->is_good());
}

TEST_CASE("where a scale is known to be off, what it is to be set to is the large number") {
    Maker maker(one_drawer);
    for (const Setup& setup : maker.work().plan.setups)
        if (setup.test_cut && setup.work.rfind("locking rabbet", 0) == 0)
            maker.app().state().setup = setup.id;
    maker.press("At the saw");
    CHECK(maker.find("Fence to near side", true));
    test_and_lock(maker);
    CHECK(maker.find("Set fence scale to", true));
    CHECK_FALSE(maker.find("Fence to near side", true));
}

TEST_CASE("what a lock has taught stands with the machines, and is forgotten by a second press") {
    Maker maker(one_drawer);
    for (const Setup& setup : maker.work().plan.setups)
        if (setup.test_cut && setup.work.rfind("back dado", 0) == 0) maker.app().state().setup = setup.id;
    maker.press("At the saw");
    test_and_lock(maker);
    const std::size_t learned = maker.app().session().memory.lessons.size();
    REQUIRE(learned > 0);
    maker.press("Drawers");
    maker.press("Machines");
    maker.press("Forget it", true);
    CHECK(maker.app().session().memory.lessons.size() == learned);
    maker.press("Forget it: ", true);
    CHECK(maker.app().session().memory.lessons.size() < learned);
}

}  // namespace kw::window
