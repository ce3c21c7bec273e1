#pragma once
// Other programs, run and timed, and a folder for the files that they read and write.

#include <stdlib.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace bench {

// A temporary folder; gone with all that is in it when this is.
class Folder {
public:
    Folder() : path_((std::filesystem::temp_directory_path() / "bench-XXXXXX").string()) {
        if (mkdtemp(path_.data()) == nullptr)
            throw std::filesystem::filesystem_error("no temporary folder", {});
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }

    void write(const std::string& name, const std::string& text) const {
        std::ofstream(path_ + "/" + name) << text;
    }
    // Empty where there is no such file.
    std::string read(const std::string& name) const {
        std::ostringstream text;
        text << std::ifstream(path_ + "/" + name).rdbuf();
        return text.str();
    }
    void remove(const std::string& name) const { std::filesystem::remove(path_ + "/" + name); }

    // Runs a shell's command in the folder, whatever becomes of it; what it prints goes to the file `printed`. Milliseconds.
    double run(const std::string& command) const {
        const auto before = std::chrono::steady_clock::now();
        [[maybe_unused]] const int status =
            std::system(("cd '" + path_ + "' && " + command + " >printed 2>&1").c_str());
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - before;
        return took.count();
    }

private:
    std::string path_;
};

inline bool is_installed(const std::string& program) {
    return std::system(("command -v " + program + " >/dev/null 2>&1").c_str()) == 0;
}

}  // namespace bench
