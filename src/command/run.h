#pragma once
// The command line. Results go to `out`, messages to `err`; exit status 0 done, 1 the job can't be read or made as
// asked, 2 wrong usage.

#include <functional>
#include <ostream>
#include <string>
#include <vector>

namespace kw {

struct CommandIo {
    std::ostream& out;
    std::ostream& err;
    // Opens the window on a job (empty: the last one), with a shop's file, and returns the exit status.
    std::function<int(const std::string& job, const std::string& shop)> open_window;
    // Writes pictures of every screen into a folder.
    std::function<int(const std::string& folder, const std::string& job)> take_shots;
    std::string shop_file;  // the user's own, where no other is named
    // Where a file that came with the program lies: its fonts.
    std::function<std::string(const std::string& name)> asset = {};
};

int run_command(std::vector<std::string> arguments, const CommandIo& io);

}  // namespace kw
