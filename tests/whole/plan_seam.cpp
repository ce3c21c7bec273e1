#include "whole/plan_seam.h"

#include <sys/wait.h>
#include <unistd.h>

#include <nlohmann/json.hpp>

#include <array>
#include <atomic>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace whole {
namespace {

std::string unused_path(const std::string& ending) {
    static std::atomic<int> count{0};
    const std::string name =
        "kerfwright-test-" + std::to_string(getpid()) + "-" + std::to_string(++count) + ending;
    return (std::filesystem::temp_directory_path() / name).string();
}

std::string content_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream content;
    content << file.rdbuf();
    return content.str();
}

std::string quoted(const std::string& argument) {
    std::string result = "'";
    for (const char c : argument) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return result + "'";
}

std::string read_all(std::FILE* pipe) {
    std::string out;
    std::array<char, 65536> buffer{};
    for (std::size_t got = 0; (got = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;)
        out.append(buffer.data(), got);
    return out;
}

}  // namespace

JobFile::JobFile(const std::string& text) : path_(unused_path(".json")) {
    std::ofstream(path_, std::ios::binary) << text;
}

JobFile::~JobFile() {
    std::error_code ignored;
    std::filesystem::remove(path_, ignored);
}

std::string JobFile::text() const { return content_of(path_); }

std::string data_folder() {
    return (std::filesystem::temp_directory_path() / ("kw-data-" + std::to_string(getpid()))).string();
}

void forget_everything() { std::filesystem::remove_all(data_folder()); }

Run run_program(const std::vector<std::string>& arguments) {
    const JobFile errors("");
    // What one test's locks teach is none of another's business, nor the user's own shop of any.
    std::string command = "KERFWRIGHT_DATA=" + quoted(data_folder()) + " " + quoted(KW_PROGRAM);
    for (const std::string& argument : arguments) command += " " + quoted(argument);
    std::FILE* pipe = popen((command + " 2>" + quoted(errors.path())).c_str(), "r");
    if (pipe == nullptr) throw std::runtime_error("no process for " + command);
    Run run;
    run.out = read_all(pipe);
    const int status = pclose(pipe);
    run.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    run.err = errors.text();
    return run;
}

// The shop's memory is a file of its own per run, so that what one maker's machine has learned does not change another's test.
std::string plan_json(const std::string& job_text, std::string& error) {
    const JobFile job(job_text);
    const JobFile shop("");
    std::filesystem::remove(shop.path());
    const Run run = run_program({"plan", job.path(), "--json", "--shop", shop.path()});
    error = run.err;
    if (run.status == 0) return run.out;
    if (error.empty()) error = "exit status " + std::to_string(run.status) + " and no message";
    return "";
}

std::string setup_of(const std::string& job_path, const std::string& work, const std::string& drawer) {
    const auto plan = nlohmann::json::parse(run_program({"plan", job_path, "--json"}).out);
    for (const auto& setup : plan["setups"])
        if (setup["work"] == work &&
            setup["passes"][0]["part"].get<std::string>().rfind(drawer + ".", 0) == 0)
            return setup["id"];
    throw std::runtime_error("no setup " + work);
}

}  // namespace whole
