// The cut list as a spreadsheet reads it: each cell through a reader that is not ours (the csv module of Python's library, which takes the
// format of RFC 4180).
#include <doctest/doctest.h>

#include <cstdio>
#include <string>

#include "command/bench.h"

using namespace kw;
using tests::Bench;

namespace {

// The rows as lists of texts.
Json read_by_python(const std::string& csv, const std::string& path) {
    std::ofstream(path, std::ios::binary) << csv;
    const std::string command =
        "/usr/bin/python3 -c 'import csv, json, sys; "
        "print(json.dumps(list(csv.reader(open(sys.argv[1], newline=\"\", encoding=\"utf-8\"), "
        "strict=True))))' '" +
        path + "'";
    std::FILE* const pipe = ::popen(command.c_str(), "r");
    REQUIRE(pipe);
    std::string out;
    for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) out += static_cast<char>(c);
    REQUIRE(::pclose(pipe) == 0);
    return Json::parse(out);
}

double number(const Json& cell) { return std::stod(cell.get<std::string>()); }

}  // namespace

TEST_CASE(
    "a spreadsheet reads every part with its finished and its rough size, whatever the drawer is called") {
    const Bench bench;
    Json job = bench.read();
    const std::string odd = "seeds, \"fine\"; 1 \u00bd";
    job["drawers"][0]["name"] = odd;
    job["stock"][1]["may_turn"] = true;
    job["stock"][0]["banding"] = {{"thickness", "1/32"}, {"edges", {"top", "left"}}};
    job["cutting"] = {{"over_length", "3/4"}, {"over_width", "3/16"}};
    bench.write(job);
    const Json plan = Json::parse(bench.run({"plan", bench.job(), "--json"}).out);
    const Json rows = read_by_python(bench.run({"parts", bench.job(), "--csv"}).out, bench.job() + ".csv");
    const Json heads = {
        "part",        "drawer",          "role",           "copy",         "length",       "width",
        "thickness",   "length_mm",       "width_mm",       "thickness_mm", "stock",        "rough_length",
        "rough_width", "rough_length_mm", "rough_width_mm", "grain",        "banded_edges", "band_mm"};
    REQUIRE(rows.size() == plan["parts"].size() + 1);
    CHECK(rows[0] == heads);
    for (std::size_t i = 0; i < plan["parts"].size(); ++i) {
        const Json& part = plan["parts"][i];
        const Json& row = rows[i + 1];
        CAPTURE(part["id"].get<std::string>());
        REQUIRE(row.size() == heads.size());
        CHECK(row[0] == part["id"]);
        CHECK(row[1] == odd);
        CHECK(row[2] == part["role"]);
        CHECK(row[3] == std::to_string(part["copy"].get<int>()));
        const double length = part["length_mm"], width = part["width_mm"], thickness = part["thickness_mm"];
        CHECK(number(row[7]) == doctest::Approx(length).epsilon(1e-9));
        CHECK(number(row[8]) == doctest::Approx(width).epsilon(1e-9));
        CHECK(number(row[9]) == doctest::Approx(thickness).epsilon(1e-9));
        CHECK(row[10] == part["stock"]);
        CHECK(number(row[13]) == doctest::Approx(length + 0.75 * 25.4).epsilon(1e-9));
        CHECK(number(row[14]) == doctest::Approx(width + 0.1875 * 25.4).epsilon(1e-9));
        CHECK(row[15] == (part["stock"] == "ply 6" ? "any" : "length"));
        CHECK(row[16] == (part["stock"] == "ply 6" ? "" : "top"));  // a box part's ends are joints
        CHECK(number(row[17]) == doctest::Approx(part["stock"] == "ply 6" ? 0.0 : 25.4 / 32));
        // What is to be read is what is to be computed with, to the reading's step (1/64 in, or 0.001 in), and has no sign that a
        // spreadsheet in another encoding would spoil.
        const std::size_t texts[] = {4, 5, 6, 11, 12}, as_mm[] = {7, 8, 9, 13, 14};
        for (std::size_t c = 0; c < 5; ++c) {
            const std::string text = row[texts[c]].get<std::string>();
            for (const char sign : text) CHECK(static_cast<unsigned char>(sign) < 128);
            const auto read = read_length(text, Unit::inch);
            REQUIRE(read);
            CHECK(read->mm() == doctest::Approx(number(row[as_mm[c]])).epsilon(0.1));
        }
    }
}

TEST_CASE("where edges are banded the list and the saw's setting say that theirs is the size to cut") {
    const Bench bench;
    CHECK(bench.run({"plan", bench.job()}).out.find("band") == std::string::npos);
    Json job = bench.read();
    job["stock"][0]["banding"] = {{"thickness", "1/32"}, {"edges", {"top"}}};
    bench.write(job);
    const std::string plan = bench.run({"plan", bench.job()}).out;
    CHECK(plan.find("size to cut, before the band") != std::string::npos);
    CHECK(plan.find("parts are cut 1/32 in smaller for each banded edge") != std::string::npos);
    CHECK(bench.run({"parts", bench.job()}).out.find("to cut; a band 0.031 in thick: top") !=
          std::string::npos);
    const Json parts = Json::parse(bench.run({"parts", bench.job(), "--json"}).out);
    CHECK(parts.dump().find("\"banded\":[\"top\"]") != std::string::npos);
}
