// The job's file belongs to others as well: what they write into it while the window is open is never lost.
#include <chrono>
#include <thread>

#include "window/maker.h"
#include "window/platform.h"

namespace kw::window {
namespace {

Json lost(const std::string& part) {
    return {{"kind", "lost"}, {"time", "2026-03-01T09:00:00Z"}, {"part", part}};
}

void write(const Maker& maker, const std::string& text) { std::ofstream(maker.path()) << text; }

// As `kerfwright lost` does.
void lose_outside(const Maker& maker, const std::string& part) {
    Json job = maker.on_disk();
    job["log"].push_back(lost(part));
    write(maker, job.dump());
}

void act(Maker& maker, const Action& action) {
    maker.app().act(maker.hand().ui(), action);
    maker.app().finish(maker.hand().ui());
}

// Where nothing has to be written as long as the job's own folder can be.
std::filesystem::path elsewhere() { return std::filesystem::temp_directory_path() / "kw-elsewhere"; }

std::string said_last(Maker& maker) {
    return maker.hand().ui().toasts.empty() ? "" : maker.hand().ui().toasts.back().text;
}

std::string part(const Maker& maker, std::size_t index) { return maker.work().plan.parts.at(index).id; }

}  // namespace

TEST_CASE("what the command line wrote while the window was open is in the file after the window's own") {
    Maker maker(one_drawer);
    lose_outside(maker, part(maker, 0));
    act(maker, MarkLost{part(maker, 1)});
    REQUIRE(maker.on_disk()["log"].size() == 2);
    CHECK(maker.on_disk()["log"][0] == lost(part(maker, 0)));
    CHECK(maker.on_disk()["log"][1]["part"] == part(maker, 1));
    CHECK(maker.work().standing.lost.size() == 2);
    CHECK(said_last(maker) == "The job's file was changed outside this window: this is how it stands now.");
    // An edit of a field too.
    lose_outside(maker, part(maker, 2));
    act(maker, SetField{"/name", "Renamed"});
    CHECK(maker.on_disk()["log"].size() == 3);
    CHECK(maker.on_disk()["name"] == "Renamed");
    CHECK(maker.work().standing.lost.size() == 3);
}

TEST_CASE("a window that is only looked at takes up what the command line wrote") {
    Maker maker(one_drawer);
    lose_outside(maker, part(maker, 0));
    // It looks now and then, when it draws.
    constexpr int far_too_many = 3000;
    for (int i = 0; i < far_too_many && maker.app().session().document["log"].empty(); ++i) {
        maker.hand().move(100 + i % 7, 300);
        maker.step();
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    REQUIRE(maker.app().session().document["log"].size() == 1);
    CHECK(maker.work().standing.lost.size() == 1);
    CHECK(said_last(maker) == "The job's file was changed outside this window: this is how it stands now.");
}

TEST_CASE(
    "a window that nobody touches is woken by what the command line writes, in place or by a new file") {
    Maker maker(one_drawer);
    const auto is_woken = [&] {
        using namespace std::chrono_literals;
        for (int i = 0; i < 2000; ++i) {
            if (platform::take_wake_up()) {
                platform::post_wake_up();  // asked for here only: the window is to have it
                return true;
            }
            std::this_thread::sleep_for(5ms);
        }
        return false;
    };
    // Shows what came of it, and comes to rest.
    const auto shows = [&](std::size_t entries) {
        const auto in_log = [&] { return maker.app().session().document["log"].size(); };
        for (int i = 0; i < 400 && in_log() < entries; ++i) {
            maker.step();
            std::this_thread::sleep_for(std::chrono::milliseconds(5));
        }
        maker.app().finish(maker.hand().ui());
        maker.step();
        platform::take_wake_up();
        return in_log() == entries;
    };
    REQUIRE(shows(0));
    lose_outside(maker, part(maker, 0));
    CHECK(is_woken());
    CHECK(shows(1));
    Json job = maker.on_disk();
    job["log"].push_back(lost(part(maker, 1)));
    const std::filesystem::path other = maker.path().string() + ".new";
    std::ofstream(other) << job.dump();
    std::filesystem::rename(other, maker.path());
    CHECK(is_woken());
    CHECK(shows(2));
}

TEST_CASE("undo takes back what was done in the window, and keeps what the command line wrote") {
    Maker maker(one_drawer);
    act(maker, SetField{"/name", "Renamed"});
    act(maker, MarkLost{part(maker, 1)});
    lose_outside(maker, part(maker, 0));
    act(maker, Undo{});
    CHECK(maker.on_disk()["log"] == Json::array({lost(part(maker, 0))}));
    act(maker, Undo{});
    CHECK(maker.on_disk()["log"] == Json::array({lost(part(maker, 0))}));
    CHECK(maker.on_disk()["name"] == "One drawer");
}

TEST_CASE("a field changed both here and in the file is written over in neither, until it is undone here") {
    Maker maker(one_drawer);
    Json job = maker.on_disk();
    job["drawers"][0]["count"] = 3;
    write(maker, job.dump());
    act(maker, SetField{"/drawers/0/count", 2});
    CHECK(maker.on_disk()["drawers"][0]["count"] == 3);
    CHECK(maker.app().session().document["drawers"][0]["count"] == 2);
    CHECK(said_last(maker) ==
          "Not saved: /drawers/0/count was changed here, and otherwise in the job's file. Undo it here to "
          "take what the file says.");
    act(maker, Undo{});
    CHECK(maker.app().session().document["drawers"][0]["count"] == 3);
    CHECK(maker.on_disk()["drawers"][0]["count"] == 3);
}

TEST_CASE(
    "what could not be saved when the window is closed is written beside the job, and named at the next "
    "start") {
    Maker maker(one_drawer);
    CHECK_FALSE(unsaved_of(maker.path(), elsewhere()));
    Json job = maker.on_disk();
    job["drawers"][0]["count"] = 3;
    write(maker, job.dump());
    act(maker, SetField{"/drawers/0/count", 2});
    const std::string said = maker.app().end(elsewhere());
    const auto beside = unsaved_of(maker.path(), elsewhere());
    REQUIRE(beside);
    CHECK(said.find("/drawers/0/count") != std::string::npos);
    CHECK(said.find(beside->string()) != std::string::npos);
    CHECK(parse_json(*read_file(*beside)).value()["drawers"][0]["count"] == 2);
    CHECK(maker.on_disk()["drawers"][0]["count"] == 3);
    // The newest of several is named, whichever of them was removed.
    const std::filesystem::path newer =
        beside->parent_path() / (maker.path().stem().string() + ".unsaved 3.json");
    std::filesystem::copy_file(*beside, newer);
    std::filesystem::remove(*beside);
    CHECK(unsaved_of(maker.path(), elsewhere()) == newer);
    std::filesystem::remove(newer);
}

TEST_CASE(
    "where the job's own folder is gone, what could not be saved is written elsewhere, and found again") {
    const std::filesystem::path folder = std::filesystem::temp_directory_path() / "kw-pulled-stick";
    std::filesystem::create_directories(elsewhere());
    std::filesystem::remove_all(folder);
    JobFile file(folder / "kitchen.json", "", Json::object());
    const auto written = file.write_beside(Json{{"name", "kitchen"}}, elsewhere());
    REQUIRE(written);
    CHECK(written->parent_path() == elsewhere());
    CHECK(unsaved_of(folder / "kitchen.json", elsewhere()) == *written);
    // It is not taken for that of another job of the same name.
    CHECK_FALSE(unsaved_of(folder / "other" / "kitchen.json", elsewhere()));
    std::filesystem::remove_all(elsewhere());
}

TEST_CASE("what is asked for just before the window is closed is in the file, and nothing is beside it") {
    Maker maker(one_drawer);
    maker.app().act(maker.hand().ui(), SetField{"/name", "Closed at once"});
    CHECK(maker.app().end(elsewhere()) == "");
    CHECK(maker.on_disk()["name"] == "Closed at once");
    CHECK_FALSE(unsaved_of(maker.path(), elsewhere()));
}

TEST_CASE("a file that can't be read meanwhile is not written over, and what was done waits until it can") {
    Maker maker(one_drawer);
    const Json before = maker.on_disk();
    const std::string spoilt = "{ \"drawers\": [ half a";
    write(maker, spoilt);
    act(maker, MarkLost{part(maker, 0)});
    std::ifstream in(maker.path());
    CHECK(std::string(std::istreambuf_iterator<char>(in), {}) == spoilt);
    CHECK(said_last(maker).rfind("The job's file was changed outside this window and can't be read now.",
                                 0) == 0);
    Json mended = before;
    mended["name"] = "Renamed outside";
    write(maker, mended.dump());
    act(maker, MarkLost{part(maker, 1)});
    CHECK(maker.on_disk()["log"].size() == 2);
    CHECK(maker.on_disk()["name"] == "Renamed outside");
}

TEST_CASE("a file whose log was spoilt outside is not taken up, and work goes on in the window") {
    for (const char* spoilt :
         {R"({})", R"("x")", R"([7])", R"([{"key": 5}])", R"([{"kind": "ran", "together": "x"}])"}) {
        Maker maker(one_drawer);
        Json job = maker.on_disk();
        job["log"] = Json::parse(spoilt);
        const std::string text = job.dump();
        write(maker, text);
        act(maker, MarkLost{part(maker, 0)});
        CAPTURE(spoilt);
        CHECK(maker.work().standing.lost.size() == 1);
        CHECK(said_last(maker).find("can't be read now") != std::string::npos);
        CHECK(maker.on_disk() == job);
    }
}

}  // namespace kw::window
