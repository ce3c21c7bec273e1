// What bad files get: the place, what is wrong, and what would do.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_job.h"

using namespace kw;

namespace {

std::string said(const std::string& text) {
    const auto json = parse_json(text);
    if (!json) return report("job.json", text, json.error());
    const auto job = read_job(*json);
    REQUIRE_FALSE(job);
    return report("job.json", text, to_file_error(job.error().front(), text, Graduation::in_64));
}

std::string with(const std::string& from, const std::string& to) {
    std::string text = tests::file_text("seed_cabinet.json");
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("the sample job reads") { CHECK(read_job(tests::sample_json())); }

TEST_CASE("a length that can't be read is shown with its place and its character") {
    CHECK(said(with("\"14 3/8\"", "\"14 3/0\"")) ==
          "job.json:14:29: `14 3/0`: a fraction over zero, at its character 6\n"
          "          \"opening\": { \"width\": \"14 3/0\", \"height\": \"5 1/4\", \"depth\": \"18\" },\n"
          "                                ^\n"
          "  write it as on a cut list: \"10 1/16 in\" or \"12.7 mm\"\n");
}

TEST_CASE("a job without drawers says so") {
    Json job = tests::sample_json();
    job["drawers"] = Json::array();
    const auto read = read_job(job);
    REQUIRE_FALSE(read);
    CHECK(read.error().front().why.text(Graduation::in_64) == "the job has no drawers");
}

TEST_CASE("a shop that lists no cutters has a stack on its saw, whichever machine is named first") {
    Json job = tests::sample_json();
    job.erase("cutters");
    std::reverse(job["machines"].begin(), job["machines"].end());
    const auto read = read_job(job);
    REQUIRE(read);
    CHECK(read->shop.cutters.front().machine == "saw");
}

TEST_CASE("what a bank can't be is shown at its field in the file") {
    std::string text =
        with("\"opening\": { \"width\": \"14 3/8\", \"height\": \"5 1/4\", \"depth\": \"18\" },\n",
             "\"opening\": { \"depth\": \"18\" },\n");
    const auto put = [&](const std::string& from, const std::string& to) {
        text.replace(text.find(from), from.size(), to);
    };
    put("\"face\":    { \"style\": \"overlay\", \"left\": \"3/8\", \"right\": \"3/8\", \"top\": \"3/8\", "
        "\"bottom\": \"3/8\" }",
        "\"face\":    { \"style\": \"overlay\" }");
    put("  \"log\": []",
        "  \"banks\": [ { \"name\": \"left\", \"drawers\": [ \"seeds\" ], \"opening\": { \"width\": \"15\", "
        "\"height\": \"12\" },\n"
        "    \"case\": { \"left\": \"3/4\", \"right\": \"3/4\", \"top\": \"1/2\", \"bottom\": \"3/4\" },\n"
        "    \"top\": \"5/8\" } ],\n"
        "  \"log\": []");
    CHECK(said(text) ==
          "job.json:23:12: the faces cover 5/8 in there, and the case has 1/2 in\n"
          "        \"top\": \"5/8\" } ],\n"
          "               ^\n"
          "  at most 1/2 in\n");
    put("\"top\": \"5/8\"", "\"style\": \"flush\"");
    CHECK(said(text).find("job.json:23:14: there is no style `flush`") == 0);
    put("\"style\": \"flush\"", "\"reveal\": \"12\"");
    CHECK(said(text).find("job.json:21:67: of 0 in for all faces too little is left for that of `seeds 1`") ==
          0);
}

TEST_CASE("a missing thickness is missed where it should stand") {
    CHECK(said(with("\"thickness\": \"12.1 mm\", ", "")) ==
          "job.json:6:14: `thickness` is missing\n"
          "      \"stock\": [ { \"name\": \"ply 12\", \"kind\": \"plywood\" },\n"
          "                 ^\n"
          "  measure it, and write it here\n");
}

TEST_CASE("a thickness of zero is no thickness") {
    CHECK(said(with("12.1 mm", "0 mm")).find("job.json:6:47: `thickness` is zero") == 0);
}

TEST_CASE("text that is not JSON is shown where it stops making sense") {
    const std::string out = said(with("\"unit\": \"in\",", "\"unit\": \"in\""));
    CHECK(out.find("job.json:4:7: this is not JSON") == 0);
}

TEST_CASE("a newer version is refused with the version") {
    CHECK(said(with("\"version\": 1", "\"version\": 7"))
              .find("this job is of version 7; this program reads 1") != std::string::npos);
}

TEST_CASE("columns count characters, not bytes") {
    const std::string text = "{\"a\": \"½\", \"b\": 5}";
    CHECK(locate(text, "/b").column == 17);
}

TEST_CASE("a pointer to what is not there leads to the nearest thing around it") {
    const std::string text = "{\n \"a\": {\n  \"b\": [1, 22]\n }\n}";
    CHECK(locate(text, "/a/b/1").line == 3);
    CHECK(locate(text, "/a/b/1").column == 12);
    CHECK(locate(text, "/a/c").line == 2);
    CHECK(locate(text, "/x/y").line == 1);
}

TEST_CASE("shims that can't be in the stack, or on a blade, are asked about where they stand") {
    CHECK(said(with("\"kerf\": \"1/4\"", "\"kerf\": \"1/4\", \"shims\": [\"1/8\", \"3/16\"]"))
              .find("the shims together (5/16 in) are thicker than the stack (1/4 in)") != std::string::npos);
    CHECK(said(with("\"kerf\": \"1/8\"", "\"kerf\": \"1/8\", \"spare_shims\": [\"0.004\"]"))
              .find("a blade takes no shims") != std::string::npos);
    CHECK(said(with("\"kerf\": \"1/4\"", "\"kerf\": \"1/4\", \"spare_shims\": \"0.004\""))
              .find("write a list of lengths") != std::string::npos);
    CHECK(said(with("\"kerf\": \"1/4\"", "\"kerf\": \"1/4\", \"spare_shims\": [\"-0.004\"]"))
              .find("less than nothing") != std::string::npos);
    CHECK(read_job(
        parse_json(
            with("\"kerf\": \"1/4\"",
                 "\"kerf\": \"1/4\", \"shims\": [\"0.012\"], \"spare_shims\": [\"0.004\", \"0.1 mm\"]"))
            .value()));
}

TEST_CASE("a tolerance of nothing is refused, as no cut comes out exactly") {
    CHECK(said(with("\"fit\": \"0.1 mm\"", "\"fit\": \"0 mm\""))
              .find("`fit` must be more than nothing: no cut comes out exactly") != std::string::npos);
    CHECK(said(with("\"step\": \"0.15 mm\"", "\"step\": 0"))
              .find("`step` must be more than nothing: no cut comes out exactly") != std::string::npos);
}

TEST_CASE("a band is as thick as bands are, and on edges that there are") {
    const auto banded = [](const char* banding) {
        return said(with("\"thickness\": \"12.1 mm\"",
                         "\"thickness\": \"12.1 mm\", \"banding\": " + std::string(banding)));
    };
    CHECK(banded(R"({"thickness": "8 mm", "edges": ["top"]})").find("is a lipping") != std::string::npos);
    CHECK(banded(R"({"thickness": "0.5 mm", "edges": ["up"]})").find("no edge is called `up`") !=
          std::string::npos);
    CHECK(banded(R"({"thickness": "0.5 mm"})").find("which edges are banded is not said") !=
          std::string::npos);
    CHECK(banded(R"({"edges": ["top"]})").find("`thickness` is missing") != std::string::npos);
}

TEST_CASE("a face's own band has a thickness, its own or that of its stock, and edges that there are") {
    Json job = tests::sample_json();
    const auto with_face = [&job](const char* banding) {
        job["drawers"][0]["face"] = {
            {"stock", "ply 12"}, {"style", "overlay"}, {"banding", Json::parse(banding)}};
        return job;
    };
    const auto said_of = [&](const char* banding) { return said(to_text(with_face(banding))); };
    CHECK(said_of(R"({"edges": ["top"]})")
              .find("how thick the band is, is said neither here nor of `ply 12`") != std::string::npos);
    CHECK(said_of(R"({"thickness": "7 mm", "edges": ["top"]})").find("is a lipping") != std::string::npos);
    CHECK(said_of(R"({"thickness": "1 mm", "edges": ["front"]})").find("no edge is called `front`") !=
          std::string::npos);
    CHECK(said_of(R"({"thickness": "1 mm"})").find("which edges are banded is not said") !=
          std::string::npos);
    CHECK(read_job(with_face(R"({"edges": []})")));
    job["stock"][0]["banding"] = {{"thickness", "1 mm"}, {"edges", {"left"}}};
    CHECK(read_job(with_face(R"({"edges": ["top"]})")));
}

TEST_CASE("how much a bit takes at once is read, and asked about where it is no bit or next to nothing") {
    const std::string bit = "\"kind\": \"bit\", \"machine\": \"saw\", \"kerf\": \"1/4\"";
    const std::string stack = "\"kind\": \"dado stack\", \"machine\": \"saw\", \"kerf\": \"1/4\"";
    const auto job = read_job(parse_json(with(stack, bit + ", \"depth_per_pass\": \"3/32\"")).value());
    REQUIRE(job);
    CHECK(job->shop.cutters.front().depth_per_pass == Length::inches(3, 32));
    CHECK(said(with(stack, stack + ", \"depth_per_pass\": \"1/8\""))
              .find("a dado stack is not raised from pass to pass") != std::string::npos);
    CHECK(said(with(stack, bit + ", \"depth_per_pass\": 0")).find("a pass of 0 in rubs and does not cut") !=
          std::string::npos);
}
