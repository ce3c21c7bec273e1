// What the commands print.
#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <numeric>
#include <sstream>

#include "command/bench.h"
#include "command/run.h"
#include "command/table.h"
#include "command/write.h"
#include "sample_job.h"

using namespace kw;
using tests::Said;

namespace {

Said run(std::vector<std::string> arguments) {
    std::ostringstream out, err;
    const auto no_window = [](const std::string&, const std::string&) { return 7; };
    const int status =
        run_command(std::move(arguments),
                    {out, err, no_window, [](const std::string&, const std::string&) { return 8; }, {}});
    return {status, out.str(), err.str()};
}

std::string sample_path() { return std::string(KW_TEST_DIR) + "/files/seed_cabinet.json"; }

}  // namespace

TEST_CASE("columns line up whatever characters stand in them") {
    Table table({Align::left, Align::right});
    table.row({"½ ply", "1"});
    table.row({"maple", "12 −"});
    CHECK(table.text(0) == "½ ply     1\nmaple  12 −\n");
}

TEST_CASE("plan, parts and check answer with status 0") {
    CHECK(run({"plan", sample_path()}).out.find("locking rabbet: side dado") != std::string::npos);
    CHECK(run({"parts", sample_path()}).out.find("seeds.2.side_right") != std::string::npos);
    const Said checked = run({"check", sample_path()});
    CHECK(checked.status == 0);
    CHECK(checked.out.empty());
}

TEST_CASE("plan --json is what the plan says, in millimetres") {
    const Json plan = Json::parse(run({"plan", sample_path(), "--json"}).out);
    CHECK(plan["format"] == "kerfwright-plan");
    CHECK(plan["version"] == 1);
    CHECK(plan["boxes"][0]["width_mm"].get<double>() == doctest::Approx(13.375 * 25.4));
    CHECK(plan["parts"].size() == 10);
    CHECK(plan["sequence"].size() == plan["setups"].size());
}

TEST_CASE("parts --csv has a line for each part, and fields with commas in quotes") {
    const std::string csv = run({"parts", sample_path(), "--csv"}).out;
    CHECK(std::count(csv.begin(), csv.end(), '\n') == 11);
    CHECK(csv.find("\"seeds.1.front\",\"seeds\",front,1,") != std::string::npos);
}

TEST_CASE("fit answers with a correction, and leaves the file alone without --save") {
    const std::string before = tests::file_text("seed_cabinet.json");
    const Json plan = Json::parse(run({"plan", sample_path(), "--json"}).out);
    std::string id;
    for (const Json& setup : plan["setups"])
        if (setup["work"] == "locking rabbet: side dado") id = setup["id"];
    const Said fit = run({"fit", sample_path(), "--setup", id, "--read", "fit=-0.3 mm", "--json"});
    CHECK(fit.err.empty());
    REQUIRE(fit.status == 0);
    const Json json = Json::parse(fit.out);
    CHECK(json["setup"] == id);
    CHECK(json["test"] == 1);
    CHECK(json["after"].contains("shoulder_gap_mm"));
    CHECK(tests::file_text("seed_cabinet.json") == before);
}

TEST_CASE("wrong usage is status 2, a bad job or reading is status 1, and each says why") {
    CHECK(run({"plan"}).status == 2);
    CHECK(run({"saw", sample_path()}).status == 2);
    CHECK(run({"fit", sample_path()}).status == 2);
    const Said missing = run({"plan", "no such file.json"});
    CHECK(missing.status == 1);
    CHECK(missing.err == "no such file.json: this file can't be read\n  look at its name and its rights\n");
    const Said setup = run({"fit", sample_path(), "--setup", "S99", "--felt", "slides"});
    CHECK(setup.status == 1);
    CHECK(setup.err.find("there is no setup `S99`") != std::string::npos);
    CHECK(run({"--help"}).status == 0);
    CHECK(run({"--version"}).out == "kerfwright 0.1.0\n");
    CHECK(run({}).status == 7);
    CHECK(run({"--shots", "folder"}).status == 8);
}

namespace {

// "15:20" as seconds.
std::int64_t seconds_of(const std::string& clock) {
    const std::size_t colon = clock.find(':');
    return 60 * std::stoll(clock.substr(0, colon)) + std::stoll(clock.substr(colon + 1));
}

bool is_clock(const std::string& word) {
    return word.find(':') != std::string::npos && std::isdigit(static_cast<unsigned char>(word.front())) &&
           std::isdigit(static_cast<unsigned char>(word.back()));
}

}  // namespace

TEST_CASE("plan --explain adds up: each line to its parts, all lines to the whole, and that to the plan") {
    const Said said = run({"plan", sample_path(), "--explain"});
    REQUIRE(said.status == 0);
    std::istringstream lines(said.out);
    std::int64_t sum = 0, of_kinds = 0, whole = -1;
    int steps = 0;
    for (std::string line; std::getline(lines, line);) {
        std::vector<std::int64_t> clocks;
        std::istringstream words(line);
        for (std::string word; words >> word;) {
            word.erase(std::remove(word.begin(), word.end(), ','), word.end());
            if (word.size() > 1 && word.ends_with(':')) word.pop_back();
            if (is_clock(word)) clocks.push_back(seconds_of(word));
        }
        if (line.rfind("  S", 0) == 0) {
            REQUIRE(clocks.size() > 1);
            CHECK(std::accumulate(clocks.begin() + 1, clocks.end(), std::int64_t{}) == clocks.front());
            sum += clocks.front();
            ++steps;
        } else if (line.rfind("In all", 0) == 0) {
            whole = clocks.front();
            of_kinds = std::accumulate(clocks.begin() + 1, clocks.end(), std::int64_t{});
        }
    }
    const Json plan = Json::parse(run({"plan", sample_path(), "--json"}).out);
    CHECK(steps == int(plan["setups"].size()));
    CHECK(sum == whole);
    CHECK(of_kinds == whole);
    CHECK(plan["seconds"] == whole);
}
