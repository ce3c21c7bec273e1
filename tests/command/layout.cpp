// The job's parts on boards and sheets, on the command line.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::Said, tests::json_of;

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
    CHECK(mixed.err.find("of a board of random width what it measures across") != std::string::npos);
    // At what is written of it, which says which size it is.
    CHECK(mixed.err.find("\"length\": \"30\"") != std::string::npos);
}

TEST_CASE("a stock that can't be laid out doesn't keep the others from being printed") {
    const Bench bench;
    with_sizes(bench, {{{"length", "12"}, {"width", "24"}}});
    Json job = bench.read();
    job["stock"][1]["sizes"] = {{{"length", "48"}, {"width", "24"}}};
    bench.write(job);
    const Said text = bench.run({"layout", bench.job()});
    CHECK(text.status == 1);
    CHECK(text.err.find("sheet that fits best gives 12 in") != std::string::npos);
    CHECK(text.out.find("ply 6: 1 sheet: no layout takes fewer") == 0);
    CHECK(text.out.find("ply 12") == std::string::npos);
    // What another program reads has all of it or nothing.
    const Said json = bench.run({"layout", bench.job(), "--json"});
    CHECK(json.status == 1);
    CHECK(json.out.empty());
    CHECK(json.err == text.err);
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

TEST_CASE("a part that has been at a machine is left out of the layout, and laid out again once it is lost") {
    const Bench bench;
    with_sizes(bench, {{{"length", "48"}, {"width", "24"}}});
    const auto parts_laid = [&bench] {
        const Json json = parse_json(bench.run({"layout", bench.job(), "--json"}).out).value();
        std::set<std::string> parts;
        for (const Json& piece : json["stock"][0]["pieces"])
            for (const Json& part : piece["parts"]) parts.insert(part["part"].get<std::string>());
        return parts;
    };
    CHECK(parts_laid().size() == 8);
    const std::string rip = tests::setup_of(bench, "rip to width: sides and fronts");
    REQUIRE(bench.run({"ran", bench.job(), "--setup", rip, "--part", tests::left_side}).status == 0);
    CHECK(parts_laid().size() == 7);
    CHECK(parts_laid().count(tests::left_side) == 0);
    const Said text = bench.run({"layout", bench.job()});
    CHECK(text.out.find("1 part is cut already and left out") == 0);
    const Json json = parse_json(bench.run({"layout", bench.job(), "--json"}).out).value();
    CHECK(json["cut_already"] == Json({tests::left_side}));
    const Said lost = bench.run({"lost", bench.job(), "--part", tests::left_side});
    CAPTURE(lost.err);
    REQUIRE(lost.status == 0);
    CHECK(parts_laid().count(tests::left_side) == 1);
    CHECK(bench.run({"layout", bench.job()}).out.find("cut already") == std::string::npos);
}

TEST_CASE("each part is freed by one cut, which comes after the cut that its strip comes from") {
    const Bench bench;
    with_sizes(bench, {{{"length", "30"}, {"width", "24"}, {"trim", "1/8"}}});
    const Json json = parse_json(bench.run({"layout", bench.job(), "--json"}).out).value();
    std::size_t parts = 0;
    for (const Json& piece : json["stock"][0]["pieces"]) {
        std::map<std::string, Json> freed;
        for (std::size_t c = 0; c < piece["cuts"].size(); ++c) {
            const Json& cut = piece["cuts"][c];
            for (const Json& part : cut["frees"]) CHECK(freed.emplace(part, cut).second);
            if (cut["after"].is_null()) continue;
            REQUIRE(cut["after"].get<std::size_t>() < c);
            // What is cut lies within what was cut before.
            const Json &of = cut["of"], &before = piece["cuts"][cut["after"].get<std::size_t>()]["of"];
            CHECK(of["x_mm"].get<double>() >= before["x_mm"].get<double>());
            CHECK(of["y_mm"].get<double>() >= before["y_mm"].get<double>());
        }
        for (const Json& part : piece["parts"]) {
            const auto cut = freed.find(part["part"]);
            REQUIRE(cut != freed.end());
            // Along the cut the part is as long as what is cut, and it lies on it.
            const bool is_rip = cut->second["direction"] == "rip";
            const char* along = is_rip ? "length_mm" : "width_mm";
            CHECK(part[along].get<double>() == doctest::Approx(cut->second["of"][along].get<double>()));
            ++parts;
        }
    }
    CHECK(parts == 8);
    std::set<std::pair<std::size_t, std::size_t>> set;
    std::size_t cuts = 0;
    for (const Json& setting : json["stock"][0]["settings"])
        for (const Json& place : setting["cuts"]) {
            const std::size_t piece = place["piece"], number = place["cut"];
            const Json& cut = json["stock"][0]["pieces"][piece]["cuts"][number];
            CHECK(cut["fence_mm"] == setting["fence_mm"]);
            CHECK(cut["direction"] == setting["direction"]);
            if (!cut["after"].is_null()) CHECK(set.count({piece, cut["after"].get<std::size_t>()}) == 1);
            CHECK(set.insert({piece, number}).second);
        }
    for (const Json& piece : json["stock"][0]["pieces"]) cuts += piece["cuts"].size();
    CHECK(set.size() == cuts);
    CHECK(json["stock"][0]["least_settings"].get<std::size_t>() <= json["stock"][0]["settings"].size());
    CHECK(bench.run({"layout", bench.job()}).out.find(": between fence and blade part 1") !=
          std::string::npos);
}

TEST_CASE(
    "the wanted strip lies between fence and blade, at the width at which the fence stands, and the rest "
    "goes on") {
    const Bench bench;
    with_sizes(bench, {{{"length", "60"}, {"width", "24"}}});
    const Json laid = json_of(bench, "layout")["stock"][0];
    std::size_t wanted = 0, cuts = 0;
    for (const Json& piece : laid["pieces"])
        for (std::size_t c = 0; c < piece["cuts"].size(); ++c) {
            const Json &cut = piece["cuts"][c], &held = cut["at_fence"];
            REQUIRE_FALSE(held.is_null());
            ++cuts;
            wanted += held["use"] == "part" || held["use"] == "further cut" ? 1u : 0u;
            const bool is_rip = cut["direction"] == "rip";
            for (const Json& part : piece["parts"])
                if (held["use"] == "part" && held["parts"][0] == part["part"])
                    CHECK(part[is_rip ? "width_mm" : "length_mm"] == cut["fence_mm"]);
            // What goes on lies behind the blade's kerf, and is cut by a later cut.
            if (cut["beyond"].is_null() || cut["beyond"]["use"] != "further cut") continue;
            const char* across = is_rip ? "y_mm" : "x_mm";
            const double from = cut["of"][across].get<double>() + cut["fence_mm"].get<double>() + 25.4 / 8;
            CHECK(std::any_of(
                piece["cuts"].begin() + std::ptrdiff_t(c), piece["cuts"].end(), [&](const Json& later) {
                    return later["after"] == c && std::abs(later["of"][across].get<double>() - from) < 1e-6;
                }));
        }
    CHECK(cuts > 5);
    CHECK(wanted == cuts);
    const std::string text = bench.run({"layout", bench.job()}).out;
    CHECK(text.find("between fence and blade a strip for ") != std::string::npos);
    CHECK(text.find("; what is left, ") != std::string::npos);
    CHECK(text.find(" off ") == std::string::npos);
}

TEST_CASE("a cut that holds a piece shorter than is safe at the saw says so, and what to do instead") {
    const Bench bench;
    with_sizes(bench, {{{"length", "48"}, {"width", "24"}}});
    CHECK(bench.run({"layout", bench.job()}).out.find("WARNING") == std::string::npos);
    Json job = bench.read();
    for (Json& machine : job["machines"]) machine["least_part"] = "12";
    job["cutting"]["least_offcut_length"] = "1";
    bench.write(job);
    const Json json = parse_json(bench.run({"layout", bench.job(), "--json"}).out).value();
    int held = 0;
    for (const Json& piece : json["stock"][0]["pieces"])
        for (const Json& cut : piece["cuts"]) {
            if (cut["too_short_mm"].is_null()) continue;
            ++held;
            CHECK(cut["too_short_mm"].get<double>() < 12 * 25.4);
        }
    CHECK(held > 0);
    const std::string out = bench.run({"layout", bench.job()}).out;
    CHECK(out.find(
              "shorter than is safe at `saw` (12 in): no hands near the blade; cut it longer and trim it on "
              "a sled, with a stop") != std::string::npos);
}
