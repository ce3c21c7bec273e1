// The program itself, under an X server, worked with real X input: a whole drawer, and the file that comes of it.
#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "window/by_pressing.h"
#include "window/desk.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

struct Folder {
    fs::path path = fs::temp_directory_path() / ("kerfwright-desk-" + std::to_string(getpid()));
    Folder() { fs::create_directories(path); }
    ~Folder() { fs::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
};

// What is in the file but for when things were done.
Json without_times(const fs::path& path) {
    std::ifstream in(path);
    Json job = Json::parse(in);
    for (Json& entry : job["log"]) entry.erase("time");
    return job;
}

// Two makers who do the same: one in the window of the test, where it can be seen what stands where, and one at the desk.
class Twins {
public:
    explicit Twins(const std::string& text)
        : maker_(text, width, height), job_(written(text)), desk_(folder_.path, job_, width, height) {
        maker_.on_input = [this](const Maker::Input& input) {
            if (input.wheel != 0) desk_.wheel_at(input.x, input.y, input.wheel);
            else if (input.is_held) desk_.hold_at(input.x, input.y);
            else desk_.press_at(input.x, input.y);
            desk_.wait_for([this] { return at_the_desk() == in_the_test(); });
        };
    }

    Maker& maker() { return maker_; }
    Json at_the_desk() const { return without_times(job_); }
    Json in_the_test() const { return without_times(maker_.path()); }

private:
    static constexpr int width = 1280, height = 800;

    fs::path written(const std::string& text) const {
        const fs::path path = folder_.path / "job.json";
        std::ofstream(path) << text;
        return path;
    }

    Folder folder_;
    Maker maker_;
    fs::path job_;
    Desk desk_;
};

}  // namespace

TEST_CASE(
    "a whole drawer made on the program with X input leaves the same file as the one made in the test's "
    "window") {
    Twins twins(one_drawer);
    CHECK(make_all(twins.maker()) >= 3);
    CHECK(twins.maker().work().rest.steps.empty());
    CHECK(twins.at_the_desk() == twins.in_the_test());
}

}  // namespace kw::window
