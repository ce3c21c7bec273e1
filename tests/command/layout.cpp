// The job's parts on boards and sheets, on the command line.
#include <doctest/doctest.h>

#include <cmath>
#include <map>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::Said;

namespace {

void with_sizes(const Bench& bench, const Json& sizes) {
    Json job = bench.read();
    job["stock"][0]["sizes"] = sizes;
    job["cutting"] = {{"over_length", "0"}, {"over_width", "0"}};
    std::ofstream(bench.job()) << job.dump(2);
}

}  // namespace

TEST_CASE("`layout` places every part of the stock once, on as few sheets as do, and says what to buy") {
    const Bench bench;
    const Said none = bench.run({"layout", bench.job()});
    CHECK(none.status == 1);
    CHECK(none.err.find("of no stock it is said in which sizes it can be had") != std::string::npos);
    with_sizes(bench, {{{"length", "48"}, {"width", "24"}}});
    const Said text = bench.run({"layout", bench.job()});
    CHECK(text.status == 0);
    CHECK(text.out.find("ply 12: 1 sheet: no layout takes fewer") == 0);
    CHECK(text.out.find("  buy 1 of 48 × 24 in\n") != std::string::npos);
    CHECK(text.out.find("ply 6: in which sizes it can be had is not said") != std::string::npos);
    const Json json = parse_json(bench.run({"layout", bench.job(), "--json"}).out).value();
    const Json plan = parse_json(bench.run({"plan", bench.job(), "--json"}).out).value();
    std::map<std::string, Json> placed;
    for (const Json& piece : json["stock"][0]["pieces"])
        for (const Json& part : piece["parts"]) {
            CHECK(placed.emplace(part["part"], part).second);
            // On the sheet, whole.
            CHECK(part["x_mm"].get<double>() + part["length_mm"].get<double>() <= 48 * 25.4 + 1e-6);
            CHECK(part["y_mm"].get<double>() + part["width_mm"].get<double>() <= 24 * 25.4 + 1e-6);
        }
    std::size_t wanted = 0;
    for (const Json& part : plan["parts"]) {
        if (part["stock"] != "ply 12") continue;
        ++wanted;
        const auto found = placed.find(part["id"]);
        REQUIRE(found != placed.end());
        CHECK(std::abs(found->second["length_mm"].get<double>() - part["length_mm"].get<double>()) < 1e-6);
        CHECK(std::abs(found->second["width_mm"].get<double>() - part["width_mm"].get<double>()) < 1e-6);
    }
    CHECK(wanted == 8);
    CHECK(placed.size() == wanted);
}

TEST_CASE(
    "an offcut that does is used before anything is bought; a sheet too small is refused at its field") {
    const Bench bench;
    with_sizes(bench,
               {{{"length", "48"}, {"width", "24"}}, {{"length", "40"}, {"width", "26"}, {"offcut", true}}});
    const Said text = bench.run({"layout", bench.job()});
    CHECK(text.out.find("offcut of 40 × 26 in") != std::string::npos);
    CHECK(text.out.find("buy") == std::string::npos);
    with_sizes(bench, {{{"length", "12"}, {"width", "24"}}});
    const Said small = bench.run({"layout", bench.job()});
    CHECK(small.status == 1);
    CHECK(small.err.find("sheet that fits best gives 12 in") != std::string::npos);
    CHECK(small.err.find("get a sheet that gives") != std::string::npos);
}

TEST_CASE("what is counted is on hand: it is neither bought nor paid for again") {
    const Bench bench;
    with_sizes(bench, {{{"length", "48"}, {"width", "24"}, {"count", 3}, {"price", 60}}});
    const Said here = bench.run({"layout", bench.job()});
    CHECK(here.status == 0);
    CHECK(here.out.find("it costs 0.00") != std::string::npos);
    CHECK(here.out.find("buy") == std::string::npos);
    with_sizes(bench, {{{"length", "48"}, {"width", "24"}, {"price", 60}}});
    CHECK(bench.run({"layout", bench.job()}).out.find("it costs 60.00") != std::string::npos);
    with_sizes(bench, {{{"length", "96"}, {"width", "48"}}, {{"length", "30"}}});
    const Said mixed = bench.run({"layout", bench.job()});
    CHECK(mixed.status == 1);
    CHECK(mixed.err.find("this size has no width, and another of the same stock has one") !=
          std::string::npos);
}

TEST_CASE("rough sizes are larger than finished ones by what the maker allows") {
    const Bench bench;
    with_sizes(bench, {{{"length", "96"}, {"width", "48"}}});
    Json job = bench.read();
    job["cutting"] = {{"over_length", "1"}, {"over_width", "1/4"}};
    std::ofstream(bench.job()) << job.dump(2);
    const Json json = parse_json(bench.run({"layout", bench.job(), "--json"}).out).value();
    for (const Json& part : json["stock"][0]["pieces"][0]["parts"])
        if (part["part"] == "seeds.1.side_left") {
            CHECK(part["length_mm"].get<double>() == doctest::Approx(18.75 * 25.4));
            CHECK(part["width_mm"].get<double>() == doctest::Approx(4.5 * 25.4));
        }
}
