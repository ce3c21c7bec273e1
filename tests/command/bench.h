#pragma once
// A folder of its own with the sample job in it, and the command line.

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "command/run.h"
#include "sample_job.h"

namespace kw::tests {

struct Said {
    int status;
    std::string out, err;
};

// A folder of its own, with the sample job in it.
class Bench {
public:
    Bench() : folder_(std::filesystem::temp_directory_path() / ("kw-bench-" + std::to_string(getpid()))) {
        std::filesystem::create_directories(folder_);
        std::ofstream(job()) << file_text("seed_cabinet.json");
    }
    ~Bench() { std::filesystem::remove_all(folder_); }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    void write(const Json& job) const { std::ofstream(this->job()) << to_text(job); }
    Json read() const { return Json::parse(text()); }
    std::string text() const {
        std::ostringstream all;
        all << std::ifstream(job()).rdbuf();
        return all.str();
    }

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

// The first setup of the plan that does this.
inline std::string setup_of(const Bench& bench, const std::string& work) {
    std::istringstream plan(bench.run({"plan", bench.job()}).out);
    for (std::string line; std::getline(plan, line);)
        if (line.rfind("S", 0) == 0 && line.find("  " + work) != std::string::npos)
            return line.substr(0, line.find(' '));
    return {};
}

inline std::string side_dado(const Bench& bench) { return setup_of(bench, "locking rabbet: side dado"); }

inline const std::string left_side = "seeds.1.side_left";

// What the command says of the job for programs.
inline Json json_of(const Bench& bench, const std::string& command) {
    const Said said = bench.run({command, bench.job(), "--json"});
    REQUIRE(said.status == 0);
    return parse_json(said.out).value();
}

inline bool is_text_in(const std::string& text, const std::string& all) {
    return all.find(text) != std::string::npos;
}

}  // namespace kw::tests
