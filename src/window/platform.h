#pragma once
// The one seam between kinds of machine. Everything that a desktop and a browser do in different ways is here, and
// platform_*.cpp and sound_*.cpp say how.

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "window/counters.h"

struct GLFWwindow;

namespace kw::window::platform {

// The line that every shader starts with, and the precision that goes with it.
const char* shader_header();
// What the toolkit's own GL back end wants to hear.
const char* toolkit_shader_header();

void set_window_hints();
bool load_gl();
double pixel_ratio(GLFWwindow* window);

// A folder that std::fstream can write to: KERFWRIGHT_DATA, or the user's data folder. Made if it is not there.
std::filesystem::path data_folder();
// What was written to the data folder must outlive the program: nothing to do on a desktop.
void commit_data();

// Where fonts and the demo job lie.
std::filesystem::path asset(const std::string& name);

// Calls step again and again until the window closes. step returns how many seconds to wait for events before the next
// call. On a desktop this returns when the window has closed; in a browser at once.
void run_loop(GLFWwindow* window, const std::function<double()>& step, Counters& counters);

// Whether work can be done aside in a thread.
bool has_threads();
// The calling thread leaves the processor to those that draw.
void step_back();

// Plays samples of one channel, and returns when they have been heard. False where there is no sound to be had.
bool play(const std::vector<std::int16_t>& samples, int rate_hz);

// Calls `written`, from a thread of its own, whenever another program or this one has written the file or put it in place; until the
// watch goes. Null where that can't be known: then it is seen when the window draws next.
class FileWatch;
std::shared_ptr<FileWatch> watch_file(const std::filesystem::path& path, std::function<void()> written);

// Ends a wait from any thread, and has a frame drawn.
void post_wake_up();
// Whether that was called since this was last asked.
bool take_wake_up();

// The counters of KERFWRIGHT_STATS, or ordinary memory.
Counters& counters();

}  // namespace kw::window::platform
