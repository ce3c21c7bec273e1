#pragma once
// The sample job and a shop's file in a folder of their own, and commands run on them.

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "command/run.h"
#include "sample_job.h"

namespace command_tests {

using namespace kw;

struct Said {
    int status;
    std::string out, err;
};

// A folder of its own, with the sample job in it.
class Bench {
public:
    Bench() : folder_(std::filesystem::temp_directory_path() / ("kw-shop-" + std::to_string(getpid()))) {
        std::filesystem::create_directories(folder_);
        std::ofstream(job()) << tests::file_text("seed_cabinet.json");
    }
    ~Bench() { std::filesystem::remove_all(folder_); }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    std::string job() const { return (folder_ / "job.json").string(); }
    std::string shop() const { return (folder_ / "shop.json").string(); }

    Said run(std::vector<std::string> arguments) const {
        std::ostringstream out, err;
        const auto window = [](const std::string&, const std::string&) { return 7; };
        arguments.insert(arguments.end(), {"--shop", shop()});
        const int status = run_command(std::move(arguments), {out, err, window, window, {}});
        return {status, out.str(), err.str()};
    }

private:
    std::filesystem::path folder_;
};

}  // namespace command_tests
