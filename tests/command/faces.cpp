// The faces of a bank on the command line: one tape from the bottom up.
#include <doctest/doctest.h>

#include "bank_job.h"
#include "command/bench.h"

namespace bank_on_the_command_line {

using namespace kw;
using tests::Bench, tests::Said;

// In a frameless case.
Json bank_job() {
    return tests::bank_job(
        Json{{"case", {{"left", "3/4"}, {"right", "3/4"}, {"top", "3/4"}, {"bottom", "3/4"}}},
             {"bottom", "3/4"},
             {"heights", "given"},
             {"face_heights", {"6", "6", nullptr}},
             {"handles", {{"centres", "96 mm"}}}});
}

TEST_CASE("`faces` says where each face begins and ends on one tape, worked by hand") {
    // 22 in of opening, 5/8 in covered above (3/4 in less the reveal) and 3/4 in below: 23 3/8 in, less two reveals and two faces of 6 in
    // 11 1/8 in for the lowest. From the case's lower end: 0 to 11 1/8, 11 1/4 to 17 1/4, 17 3/8 to 23 3/8 in.
    // The slides' middles: boxes 4 3/8 and 9 3/8 in high, 1/4 in above the floor of what lies behind their faces.
    const Bench bench;
    bench.write(bank_job());
    const Said said = bench.run({"faces", bench.job()});
    CHECK(said.err == "");
    CHECK(
        said.out ==
        "left column: 3 overlay faces 16 1/4 in wide before an opening 22 in high, with one reveal of 1/8 "
        "in\n"
        "  Heights as given; measured up from the lower end of the case:\n"
        "           lower edge  upper edge    high   holes     slide  covers below, above  room for the box\n"
        "  seeds 1      17 3/8      23 3/8       6  20 3/8  19 13/16               0, 5/8  17 3/8 to 22 3/4\n"
        "  seeds 2      11 1/4      17 1/4       6  14 1/4  13 11/16                 0, 0  11 1/4 to 17 1/4\n"
        "  tools             0      11 1/8  11 1/8  5 9/16   5 11/16               3/4, 0     3/4 to 11 1/8\n"
        "  seeds: drill its handle's holes 6 15/64 in and 10 1/64 in from the face's left end, 3 in up "
        "from its bottom "
        "edge\n"
        "  tools: drill its handle's holes 6 15/64 in and 10 1/64 in from the face's left end, 5 9/16 in "
        "up from its "
        "bottom edge\n");
}

TEST_CASE("what a bank's drawers are made to follows from it, and parts have their faces") {
    const Bench bench;
    Json job = bank_job();
    job["drawers"][0]["face"] = {{"stock", "ply 12"}};
    bench.write(job);
    const Json plan = Json::parse(bench.run({"plan", bench.job(), "--json"}).out);
    // Of two alike boxes the one with less behind its face says how high both are: 5 3/8 in less 1 in of slide.
    for (const Json& box : plan["boxes"])
        if (box["drawer"] == "seeds") CHECK(box["height_mm"].get<double>() == doctest::Approx(4.375 * 25.4));
    int faces = 0;
    for (const Json& part : plan["parts"])
        if (part["role"] == "face") {
            ++faces;
            CHECK(part["width_mm"].get<double>() == doctest::Approx(6 * 25.4));
            CHECK(part["length_mm"].get<double>() == doctest::Approx(16.25 * 25.4));
        }
    CHECK(faces == 2);
    const Json told = Json::parse(bench.run({"faces", bench.job(), "--json"}).out);
    CHECK(told["banks"][0]["faces"][2]["height_mm"].get<double>() == doctest::Approx(11.125 * 25.4));
    CHECK(told["banks"][0]["faces"][0]["lower_mm"].get<double>() == doctest::Approx(17.375 * 25.4));
}

TEST_CASE("`check` tells what collides at its field, with the smallest change that would do") {
    const Bench bench;
    Json job = bank_job();
    job["banks"][0]["face_heights"] = {"6", "6", "12"};
    bench.write(job);
    const Said over = bench.run({"check", bench.job()});
    CHECK(over.status == 1);
    CHECK(over.err.find("the faces come to 24 in, 7/8 in more than there is for them (23 1/8 in)") !=
          std::string::npos);
    CHECK(over.err.find("make one of them 7/8 in lower, or leave one open") != std::string::npos);
    job = bank_job();
    job["drawers"][0]["face"] = {{"top", "1/4"}};
    bench.write(job);
    CHECK(bench.run({"check", bench.job()}).err.find("the bank `left column` says how this face lies") !=
          std::string::npos);
    job = bank_job();
    job["banks"][0]["heights"] = "graduated";
    job["banks"][0]["step"] = "1";
    bench.write(job);
    CHECK(bench.run({"check", bench.job()})
              .err.find("drawers of one name are alike, and faces of `seeds` come to") != std::string::npos);
    job = bank_job();
    job["banks"][0]["drawers"] = {"seeds", "tool"};
    bench.write(job);
    CHECK(bench.run({"check", bench.job()}).err.find("there is no drawer `tool`") != std::string::npos);
}

TEST_CASE("inset faces without rails tell the gaps that are round them") {
    // 1/8 in at the ends and between: 22 in less two ends, two reveals and two faces of 6 in leave 9 1/2 in.
    const Bench bench;
    Json job = bank_job();
    job["banks"][0]["style"] = "inset";
    job["banks"][0]["bottom"] = "1/4";
    for (Json& drawer : job["drawers"]) drawer["face"] = {{"stock", "ply 12"}};
    job["banks"][0].erase("handles");
    bench.write(job);
    const Said said = bench.run({"faces", bench.job()});
    CHECK(said.err == "");
    CHECK(said.out.find("1/8, 1/8") != std::string::npos);
    CHECK(said.out.find("1/4, 1/8") != std::string::npos);
    CHECK(said.out.find("0, 0") == std::string::npos);
    const Json told = Json::parse(bench.run({"faces", bench.job(), "--json"}).out)["banks"][0];
    CHECK(told["faces"][0]["over_top_mm"].get<double>() == doctest::Approx(-3.175));
    CHECK(told["faces"][1]["over_bottom_mm"].get<double>() == doctest::Approx(-3.175));
    CHECK(told["faces"][2]["over_bottom_mm"].get<double>() == doctest::Approx(-6.35));
}

TEST_CASE("a job without banks says how to ask for one") {
    const Bench bench;
    CHECK(bench.run({"faces", bench.job()}).out.find("No bank of drawers is asked for") == 0);
}

}  // namespace bank_on_the_command_line
