// What README shows is what the program prints.
#include <doctest/doctest.h>

#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include "text_in.h"
#include "whole/plan_seam.h"

namespace {

namespace fs = std::filesystem;

struct Shown {
    std::vector<std::string> words;   // of the command, without the program's name
    std::vector<std::string> output;  // "..." stands for any lines
};

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::vector<std::string> words_of(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> words;
    for (std::string word; in >> word;) words.push_back(word);
    return words;
}

// The blocks that begin with "$ kerfwright".
std::vector<Shown> shown_in(const std::vector<std::string>& readme) {
    const std::string prompt = "$ kerfwright ";
    std::vector<Shown> all;
    bool inside = false;
    for (const std::string& line : readme) {
        if (line.rfind("```", 0) == 0) {
            inside = false;
        } else if (line.rfind(prompt, 0) == 0) {
            all.push_back({words_of(line.substr(prompt.size())), {}});
            inside = true;
        } else if (inside) {
            all.back().output.push_back(line);
        }
    }
    return all;
}

// The job that README writes out.
std::string job_in(const std::vector<std::string>& readme) {
    std::string job;
    bool inside = false;
    for (const std::string& line : readme) {
        if (inside && line == "```") break;
        if (inside) job += line + "\n";
        inside = inside || line == "```json";
    }
    return job;
}

// The first line shown that was not printed where it should be; empty where all were.
std::string first_not_printed(const std::vector<std::string>& shown,
                              const std::vector<std::string>& printed) {
    std::size_t at = 0;
    bool anywhere = false;
    for (const std::string& line : shown) {
        if (line == "...") {
            anywhere = true;
            continue;
        }
        while (anywhere && at < printed.size() && printed[at] != line) ++at;
        if (at == printed.size() || printed[at] != line) return line;
        ++at;
        anywhere = false;
    }
    return anywhere || at == printed.size() ? "" : "(more was printed: " + printed[at] + ")";
}

}  // namespace

TEST_CASE(
    "README's walk through a drawer prints what it shows, with the demo job and the one that it writes out, "
    "one command after another") {
    whole::forget_everything();
    const std::vector<std::string> readme =
        lines_of(kw::tests::text_in(fs::path(KW_TEST_DIR) / ".." / "README.md"));
    const whole::JobFile job(kw::tests::text_in(fs::path(KW_ASSET_DIR) / "demo.json")), tray(job_in(readme));
    const std::vector<Shown> walk = shown_in(readme);
    CHECK(walk.size() >= 12);
    for (const Shown& step : walk) {
        std::vector<std::string> words = step.words;
        for (std::string& word : words)
            word = word == "demo.json" ? job.path() : word == "tray.json" ? tray.path() : word;
        const whole::Run run = whole::run_program(words);
        CAPTURE(step.words.front());
        CHECK(run.status == 0);
        CHECK(first_not_printed(step.output, lines_of(run.out)) == "");
    }
}

TEST_CASE("a joint that was tested and is out is not locked by a slip, and the file stays as it was") {
    whole::forget_everything();
    const whole::JobFile job(kw::tests::text_in(fs::path(KW_ASSET_DIR) / "demo.json"));
    // Tight by three hundredths of a millimetre times ten, and nothing else known: no move can be sure.
    const std::string dado = whole::setup_of(job.path(), "locking rabbet: side dado", "twine");
    REQUIRE(
        whole::run_program({"fit", job.path(), "--setup", dado, "--read", "fit=-0.3 mm", "--save"}).status ==
        0);
    const std::string tested = job.text();
    const whole::Run slip = whole::run_program({"lock", job.path(), "--setup", dado});
    CHECK(slip.status == 1);
    CHECK(slip.err.find("--anyway") != std::string::npos);
    CHECK(job.text() == tested);
    CHECK(whole::run_program({"lock", job.path(), "--setup", dado, "--anyway"}).status == 0);
    CHECK(job.text() != tested);
}
