// Misspelt fields, on the command line.
#include <doctest/doctest.h>

#include "command/bench.h"

using namespace kw;
using tests::Bench;
using tests::Said;

namespace {

void respell(const std::string& file, const std::string& from, const std::string& to) {
    std::string text = read_file(file).value();
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    std::ofstream(file) << text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("`check` and `plan` say which fields nothing reads, and the job is planned all the same") {
    const Bench bench;
    const Said clean = bench.run({"check", bench.job()});
    CHECK(clean.status == 0);
    CHECK(clean.out + clean.err == "");
    respell(bench.job(), "\"count\"", "\"cuont\"");
    const Said check = bench.run({"check", bench.job()});
    CHECK(check.status == 0);
    CHECK(check.err == "");
    CHECK(check.out.rfind(bench.job() + ":13:24: nothing here is called \"cuont\"\n", 0) == 0);
    CHECK(check.out.find("  did you mean \"count\"?\n") != std::string::npos);
    const Said plan = bench.run({"plan", bench.job()});
    CHECK(plan.status == 0);
    CHECK(plan.out.find("\nNotes\n  line 13, column 24: nothing here is called \"cuont\"; did you mean "
                        "\"count\"?\n") != std::string::npos);
    const Json json = parse_json(bench.run({"plan", bench.job(), "--json"}).out).value();
    CHECK(json["notes"][0] == Json{{"level", "note"},
                                   {"about", "line 13, column 24"},
                                   {"text", "nothing here is called \"cuont\"; did you mean \"count\"?"}});
}

TEST_CASE("what is missing and what is misspelt are told together") {
    const Bench bench;
    respell(bench.job(), "\"height\"", "\"hieght\"");
    const Said check = bench.run({"check", bench.job()});
    CHECK(check.status == 1);
    CHECK(check.err.find("`height` is missing") != std::string::npos);
    CHECK(check.err.find("did you mean \"height\"?") != std::string::npos);
}

TEST_CASE("of the shop's file it is told with its name") {
    const Bench bench;
    std::ofstream(bench.shop()) << R"({"format": "kerfwright-shop", "tmies": {"pass": 5}})";
    CHECK(bench.run({"plan", bench.job()})
              .out.find("  shop.json, line 1, column 31: nothing here is called \"tmies\"; did you mean "
                        "\"times\"?\n") != std::string::npos);
    CHECK(bench.run({"check", bench.job()}).out.rfind(bench.shop() + ":1:31: nothing", 0) == 0);
}

TEST_CASE("of many fields that nothing reads twenty are told one by one, and how many more there are") {
    const Bench bench;
    Json job = bench.read();
    for (int i = 0; i < 23; ++i) job["nobody's " + std::to_string(100 + i)] = i;
    bench.write(job);
    const std::string out = bench.run({"check", bench.job()}).out;
    CHECK(out.find("\"nobody's 119\"") != std::string::npos);
    CHECK(out.find("nothing here is called \"nobody's 120\"") == std::string::npos);
    CHECK(out.find("from here on nothing reads 3 more of them\n") != std::string::npos);
}
