// What is worked out aside comes to the same as one thing after another, and nothing that was asked for is lost.
#include "window/aside.h"
#include "session/asked_on.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <random>

#include "effort.h"
#include "window/app.h"
#include "window/hand.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

// All that drawing needs, and no window.
struct NoWindow {
    Fonts fonts;
    Pictures pictures;
    Pacer pacer;
    Ui ui{fonts, pictures, pacer};
};

Json demo() {
    std::ifstream in(fs::path(KW_ASSET_DIR) / "demo.json");
    return Json::parse(in);
}

struct FileOfJob {
    fs::path path;
    explicit FileOfJob(const Json& job)
        : path(fs::temp_directory_path() / ("kerfwright-aside-" + std::to_string(getpid()) + ".json")) {
        std::ofstream(path) << job.dump();
    }
    ~FileOfJob() { fs::remove(path); }
    FileOfJob(const FileOfJob&) = delete;
    FileOfJob& operator=(const FileOfJob&) = delete;
    Json read() const {
        std::ifstream in(path);
        return Json::parse(in);
    }
};

App opened(const FileOfJob& file, App::Aside aside) {
    auto app = App::open(file.path, {}, aside);
    REQUIRE_MESSAGE(app.has_value(), (app ? "" : app.error()));
    return std::move(*app);
}

// Everything that hangs on when an entry was logged is left out.
Json without_times(Json document) {
    for (Json& entry : document["log"]) entry.erase("time");
    return document;
}

// What a plan says, in a text.
std::string said_by(const Work& work) {
    std::string text = std::to_string(work.plan.seconds) + " " +
                       std::to_string(work.plan.lower_bound_seconds) + " " +
                       std::to_string(work.rest.seconds) + "\n";
    for (const std::string& step : work.plan.sequence) text += step + " ";
    for (const Part& part : work.plan.parts)
        text += "\n" + part.id + " " + std::to_string(part.size.length.ticks()) + " " +
                std::to_string(part.size.width.ticks());
    for (const Setup& setup : work.plan.setups)
        text += "\n" + setup.id + " " + setup.work + " " + std::to_string(setup.fence.ticks()) + " " +
                std::to_string(setup.height.value_or(Length{}).ticks()) + " " +
                std::to_string(setup.passes.size()) + (is_locked(work, setup) ? " locked" : "");
    for (const RestStep& step : work.rest.steps) text += "\n" + step.step + " " + std::to_string(step.ends);
    return text;
}

class Dice {
public:
    explicit Dice(unsigned seed) : random_(seed) {}
    int upto(int most) { return static_cast<int>(random_() % static_cast<unsigned>(most + 1)); }

private:
    std::mt19937 random_;
};

std::string a_width(Dice& dice) {
    // Some leave no box, and some can't be read at all.
    static const char* const widths[] = {"11 1/16", "12 3/8",  "10", "1",  "14 1/2", "wide",
                                         "23",      "11 5/64", "12", "13", "14",     "15"};
    return widths[dice.upto(11)];
}

Action a_test_or_lock(const Session& session, Dice& dice) {
    TestCut cut;
    cut.setup = "S" + std::to_string(12 + dice.upto(12));
    if (dice.upto(1) == 0 || !session.work) return LockGroup{cut};
    const Setup* setup = session.work->plan.setup_with_id(cut.setup);
    for (const std::string& name : reading_names(*session.work, cut.setup))
        if (setup && setup->height && (name == "depth" || name == "dado_depth"))
            cut.readings.push_back({name, *setup->height + Length::micrometres(50 * dice.upto(4) - 100)});
    return SaveTest{cut};
}

Action an_action(const Session& session, Dice& dice) {
    const int drawer = dice.upto(2);
    switch (dice.upto(11)) {
        case 0: return AddDrawer{std::size_t(drawer)};
        case 1: return RemoveDrawer{std::size_t(drawer)};
        case 2:
        case 3: return Undo{};
        case 4: return Redo{};
        case 5: return MarkRun{"S" + std::to_string(1 + dice.upto(11)), {0}, dice.upto(3) > 0};
        case 6: return MarkLost{"twine.1.back"};
        case 7: return a_test_or_lock(session, dice);
        case 8: return SetField{"/drawers/0/count", Json(1 + dice.upto(2))};
        default:
            return SetField{"/drawers/" + std::to_string(drawer % 2) + "/opening/width", Json(a_width(dice))};
    }
}

void same(const Session& shown, const Session& expected) {
    CHECK(without_times(shown.document) == without_times(expected.document));
    CHECK(shown.problems.size() == expected.problems.size());
    CHECK(shown.undo.size() == expected.undo.size());
    CHECK(shown.redo.size() == expected.redo.size());
    CHECK(shown.refused == expected.refused);
    CHECK(shown.memory.lessons.size() == expected.memory.lessons.size());
    REQUIRE(bool(shown.work) == bool(expected.work));
    if (shown.work) CHECK(said_by(*shown.work) == said_by(*expected.work));
}

std::string today() {
    const std::time_t now = std::time(nullptr);
    char text[32];
    return {text, std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", std::gmtime(&now))};
}

}  // namespace

TEST_CASE("tasks aside are done in their order, each once, and all before it ends") {
    for (const bool in_a_thread : {true, false}) {
        std::vector<int> done;
        {
            Aside aside(in_a_thread);
            for (int i = 0; i < 100; ++i) {
                aside.post([&done, i] { done.push_back(i); });
                if (i == 50) aside.finish();
                if (i % 7 == 0) aside.turn();
            }
        }
        REQUIRE(done.size() == 100);
        for (int i = 0; i < 100; ++i) CHECK(done[std::size_t(i)] == i);
    }
}

TEST_CASE("random actions end as they do one after another, however they come together") {
    int locks = 0, refusals = 0, not_to_be_made = 0, worked = 0;
    for (const App::Aside how : {App::Aside::thread, App::Aside::between_frames})
        for (unsigned seed = 1; seed <= static_cast<unsigned>(tests::cases(4)); ++seed) {
            CAPTURE(seed);
            CAPTURE(int(how));
            // With nothing to choose a plan is there soon.
            Json job = demo();
            for (Json& cutter : job["cutters"])
                for (const char* pieces : {"spare_chippers", "spare_shims"}) cutter.erase(pieces);
            const FileOfJob file(job);
            NoWindow none;
            App app = opened(file, how);
            Session expected = app.session();
            Dice dice(seed);
            for (int i = 0; i < 25; ++i) {
                const Action action = an_action(expected, dice);
                // What is pressed is what was shown then.
                const auto asked = asked_on(action, app.session().work->plan, expected.work->plan);
                app.act(none.ui, action);
                const auto work = expected.work;
                if (asked) expected = apply(expected, *asked, today());
                refusals += expected.refused.empty() ? 0 : 1;
                not_to_be_made += expected.problems.empty() ? 0 : 1;
                worked += expected.work != work ? 1 : 0;
                locks += std::holds_alternative<LockGroup>(action) && expected.refused.empty() ? 1 : 0;
                if (dice.upto(3) == 0) {
                    app.finish(none.ui);
                    same(app.session(), expected);
                }
            }
            app.finish(none.ui);
            CHECK(app.is_idle());
            same(app.session(), expected);
            CHECK(without_times(file.read()) == without_times(expected.document));
        }
    if (tests::is_sanitized) return;
    // They were of every kind.
    CHECK(locks > 2);
    CHECK(refusals > 5);
    CHECK(not_to_be_made > 5);
    CHECK(worked > 50);
}

TEST_CASE("a search that is watched tells how far its best may be from the least, and finds the same plan") {
    const Session before = open_session(demo());
    const Action typed = SetField{"/drawers/0/opening/width", "12 3/8"};
    int told = 0;
    const Session watched = apply(before, typed, today(), [&](std::int64_t best_s, std::int64_t bound_s) {
        ++told;
        CHECK(bound_s > 0);
        CHECK(best_s >= bound_s);
        return SearchMore::yes;
    });
    CHECK(told > 0);
    CHECK(said_by(*watched.work) == said_by(*apply(before, typed, today()).work));
}

TEST_CASE("what is typed is seen at once, and what follows from it when it has been worked out") {
    const FileOfJob file(demo());
    NoWindow none;
    App app = opened(file, App::Aside::between_frames);
    const auto before = app.session().work;
    app.act(none.ui, SetField{"/drawers/0/opening/width", "12 3/8"});
    CHECK(app.session().document["drawers"][0]["opening"]["width"] == "12 3/8");
    CHECK(app.session().work == before);
    CHECK_FALSE(app.is_idle());
    app.finish(none.ui);
    CHECK(app.is_idle());
    CHECK(app.session().work->plan.boxes[0].size.width ==
          before->plan.boxes[0].size.width + Length::inches(21, 16));
}

TEST_CASE(
    "of edits that come together the last that can be made is shown, and the last of all is said to be "
    "wrong") {
    const FileOfJob file(demo());
    NoWindow none;
    App app = opened(file, App::Aside::between_frames);
    const Length before = app.session().work->plan.boxes[0].size.width;
    for (const char* width : {"12 1/16", "13 1/16", "1", "wide"})
        app.act(none.ui, SetField{"/drawers/0/opening/width", width});
    app.finish(none.ui);
    CHECK(app.session().work->plan.boxes[0].size.width == before + Length::inches(2));
    CHECK_FALSE(app.session().problems.empty());
    CHECK(file.read()["drawers"][0]["opening"]["width"] == "wide");
}

TEST_CASE("an edit after a lock that is still being worked out stays, with the lock behind it") {
    const FileOfJob file(demo());
    NoWindow none;
    App app = opened(file, App::Aside::thread);
    std::string tested;
    for (const Setup& setup : app.session().work->plan.setups)
        if (setup.test_cut && tested.empty()) tested = setup.id;
    TestCut cut;
    cut.setup = tested;
    app.act(none.ui, LockGroup{cut});
    app.act(none.ui, SetField{"/name", "Shed"});
    CHECK(app.session().document["name"] == "Shed");
    app.finish(none.ui);
    CHECK(app.session().document["name"] == "Shed");
    CHECK(app.session().document["log"].size() == 1);
    CHECK(is_locked(*app.session().work, *app.session().work->plan.setup_with_id(tested)));
    app.act(none.ui, Undo{});
    app.act(none.ui, Undo{});
    app.finish(none.ui);
    CHECK(app.session().document == demo());
}

TEST_CASE("a job that is opened is shown at once, its plan follows, and what is typed meanwhile stays") {
    const FileOfJob file(demo());
    for (const App::Aside how : {App::Aside::between_frames, App::Aside::thread}) {
        auto app = App::open(file.path, {}, how, App::Plan::follows);
        REQUIRE(app.has_value());
        if (how == App::Aside::between_frames) CHECK_FALSE(app->session().work);
        CHECK_FALSE(app->is_idle());
        Hand hand({}, [&](Ui& ui) { app->frame(ui); });
        hand.window().draw([&](Ui& ui) {
            app->act(ui, SetField{"/name", "Shed"});
            app->frame(ui);
        });
        hand.settle();
        CHECK(app->is_idle());
        CHECK(app->session().document["name"] == "Shed");
        CHECK(said_by(*app->session().work) == said_by(*open_session(file.read(), {}, today()).work));
    }
}

TEST_CASE(
    "what is pressed while the order is made anew is done to the step that was shown, whatever its number is "
    "then") {
    const FileOfJob file(demo());
    NoWindow none;
    App app = opened(file, App::Aside::between_frames);
    const Plan& shown = app.session().work->plan;
    const Setup &first = shown.setups.front(), &last = *shown.setup_with_id(shown.sequence.back());
    const Setup joint = *std::find_if(shown.setups.begin(), shown.setups.end(),
                                      [](const Setup& setup) { return setup.test_cut; });
    const std::string group = shown.group_with_id(joint.group)->key, ticked = first.passes[0].part,
                      id = first.id, tested = joint.id;
    TestCut cut;
    cut.setup = tested;
    app.act(none.ui, PinSetup{last.id, Pinned::first});
    app.act(none.ui, MarkRun{id, {0}, true});
    app.act(none.ui, LockGroup{cut});
    app.finish(none.ui);
    CHECK(app.session().work->plan.setup_with_id(tested)->work != joint.work);  // they were numbered anew
    const Json log = file.read()["log"];
    REQUIRE(log.size() == 2);
    CHECK(log[0]["part"] == ticked);
    CHECK(log[1]["key"].get<std::string>().rfind(group, 0) == 0);
}

TEST_CASE("closing the program loses nothing of what was asked for") {
    const FileOfJob file(demo());
    {
        NoWindow none;
        App app = opened(file, App::Aside::thread);
        app.act(none.ui, SetField{"/drawers/0/opening/width", "12 3/8"});
        app.act(none.ui, MarkRun{"S1", {0, 1}, true});
        app.act(none.ui, AddDrawer{0});
    }
    CHECK(file.read()["drawers"].size() == 4);
    CHECK(file.read()["log"].size() == 2);
    CHECK(file.read()["drawers"][3]["opening"]["width"] == "12 3/8");
}

TEST_CASE("a job of which the plan is not ready says so on the screen of the order, and then no more") {
    const FileOfJob file(demo());
    for (const App::Aside how : {App::Aside::between_frames, App::Aside::thread}) {
        App app = opened(file, how);
        app.state().place = Where::order;
        Hand hand({}, [&](Ui& ui) { app.frame(ui); });
        const auto before = app.session().work;
        hand.window().draw([&](Ui& ui) {
            app.act(ui, SetField{"/drawers/0/opening/width", "12 3/8"});
            app.frame(ui);
        });
        if (how == App::Aside::between_frames) {
            CHECK(hand.log().find("The order is still being searched: this is the last one"));
            CHECK(app.session().work == before);
        }
        hand.settle();
        CHECK(app.is_idle());
        CHECK(app.session().work != before);
        CHECK_FALSE(hand.log().find("The order is still being searched: this is the last one"));
    }
}

}  // namespace kw::window
