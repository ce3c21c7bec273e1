#include "window/desk.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <thread>
#include <vector>

namespace kw::window {
namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

constexpr auto far_too_long = 60s;

// What the program counts, in the order of its counters.
enum Counted { frames, wake_ups, events };

pid_t start(const std::vector<std::string>& words, const std::vector<std::string>& environment,
            const fs::path& log, int handed_on = -1) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child > 0) return child;
    for (const std::string& one : environment) ::putenv(const_cast<char*>(one.c_str()));
    const int out = ::open(log.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    ::dup2(out, 1);
    ::dup2(out, 2);
    if (handed_on >= 0) ::dup2(handed_on, 3);
    std::vector<char*> arguments;
    for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    ::execvp(arguments[0], arguments.data());
    ::_exit(127);
}

void stop(pid_t child) {
    if (child <= 0) return;
    ::kill(child, SIGTERM);
    ::waitpid(child, nullptr, 0);
}

template <class Condition>
void await(const char* what, Condition condition) {
    const auto give_up = std::chrono::steady_clock::now() + far_too_long;
    while (!condition()) {
        REQUIRE_MESSAGE(std::chrono::steady_clock::now() < give_up, "waited in vain: ", what);
        std::this_thread::sleep_for(10ms);
    }
}

}  // namespace

Desk::Desk(const fs::path& folder, const fs::path& job, int width, int height) : stats_(folder / "stats") {
    // The server writes the number of its display to a file as soon as it listens.
    const fs::path number = folder / "display";
    const int told = ::open(number.c_str(), O_RDWR | O_CREAT | O_TRUNC, 0600);
    const std::string screen = std::to_string(width) + "x" + std::to_string(height) + "x24";
    server_ = start({"Xvfb", "-displayfd", "3", "-screen", "0", screen, "-nolisten", "tcp", "-noreset"}, {},
                    folder / "server.log", told);
    ::close(told);
    await("the X server", [&] { return fs::file_size(number) > 1; });
    std::getline(std::ifstream(number) >> std::ws, display_);
    display_ = ":" + display_;
    program_ = start(
        {KW_PROGRAM, job.string()},
        {"DISPLAY=" + display_, "KERFWRIGHT_DATA=" + folder.string(), "KERFWRIGHT_STATS=" + stats_.string()},
        folder / "program.log");
    await("the first frame", [&] { return counter(frames) > 0; });
    settle(0);
}

Desk::~Desk() {
    stop(program_);
    stop(server_);
}

std::uint64_t Desk::counter(int index) const {
    std::uint64_t value = 0;
    std::ifstream in(stats_, std::ios::binary);
    in.seekg(index * static_cast<int>(sizeof value));
    in.read(reinterpret_cast<char*>(&value), sizeof value);
    return in ? value : 0;
}

// It rests when no frame has been drawn for longer than any that it still owes could take.
void Desk::settle(std::uint64_t events_before) {
    constexpr int still = 7;
    await("input to be taken", [&] { return counter(events) > events_before || events_before == 0; });
    std::uint64_t last = counter(frames);
    int unchanged = 0;
    await("the program to rest", [&] {
        const std::uint64_t now = counter(frames);
        unchanged = now == last ? unchanged + 1 : 0;
        last = now;
        return unchanged > still;
    });
}

void Desk::wait_for(const std::function<bool()>& condition) {
    await("what comes of it", condition);
    settle(0);
}

void Desk::input(const std::string& xdotool_words) {
    const std::uint64_t before = counter(events);
    REQUIRE(std::system(("DISPLAY=" + display_ + " xdotool " + xdotool_words).c_str()) == 0);
    settle(before);
}

void Desk::press_at(double x, double y) { put_finger_at(x, y, "0.03"); }
void Desk::hold_at(double x, double y) { put_finger_at(x, y, "1.2"); }

void Desk::put_finger_at(double x, double y, const char* for_seconds) {
    // The pointer's own event comes first: a press is somewhere else than what was pressed last.
    const std::string at = std::to_string(std::lround(x)) + " " + std::to_string(std::lround(y));
    const std::uint64_t before = counter(events);
    REQUIRE(std::system(("DISPLAY=" + display_ + " xdotool mousemove " + at + " mousedown 1 sleep " +
                         for_seconds + " mouseup 1")
                            .c_str()) == 0);
    await("press and release", [&] { return counter(events) >= before + 2; });
    settle(before);
}

void Desk::wheel_at(double x, double y, int notches) {
    input("mousemove " + std::to_string(std::lround(x)) + " " + std::to_string(std::lround(y)) +
          " click --repeat " + std::to_string(std::abs(notches)) + (notches > 0 ? " 4" : " 5"));
}

void Desk::type(const std::string& ascii) { input("type --delay 30 '" + ascii + "'"); }
void Desk::key(const std::string& name) { input("key " + name); }

}  // namespace kw::window
