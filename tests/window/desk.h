#pragma once
// The program itself on an X server of its own, worked by real X input (xdotool): what no callback can stand in for.

#include <sys/types.h>

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>

namespace kw::window {

class Desk {
public:
    // Starts both, and waits until the program rests. `folder` holds the maker's data and what the desk itself needs.
    Desk(const std::filesystem::path& folder, const std::filesystem::path& job, int width, int height);
    ~Desk();
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    // In pixels of the window. Each returns when the program has taken the input and rests again.
    void press_at(double x, double y);
    void hold_at(double x, double y);                // for longer than any button wants to be held
    void wheel_at(double x, double y, int notches);  // + up
    void type(const std::string& ascii);
    // As xdotool names it: "Return".
    void key(const std::string& name);

    // For what comes of it aside; then until the program rests.
    void wait_for(const std::function<bool()>& condition);

private:
    void put_finger_at(double x, double y, const char* for_seconds);
    void input(const std::string& xdotool_words);
    void settle(std::uint64_t events_before);
    std::uint64_t counter(int index) const;

    std::filesystem::path stats_;
    std::string display_;
    pid_t server_ = 0;
    pid_t program_ = 0;
};

}  // namespace kw::window
