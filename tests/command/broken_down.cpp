// Boards and sheets that were broken down, told and taken back on the command line.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::Said, tests::is_text_in, tests::json_of;

namespace {

Json counted_job(const Bench& bench) {
    Json job = bench.read();
    job["stock"][0]["sizes"] = {{{"length", "30"}, {"width", "24"}, {"count", 3}},
                                {{"length", "96"}, {"width", "48"}}};
    job["stock"][1]["sizes"] = {{{"length", "48"}, {"width", "24"}}};
    job["cutting"] = {{"least_offcut_length", "6"}};
    return job;
}

Said told(const Bench& bench, const std::string& stock) {
    return bench.run({"ran", bench.job(), "--stock", stock});
}

std::multiset<std::string> laid_out(const Json& layout) {
    std::multiset<std::string> parts;
    for (const Json& stock : layout["stock"])
        for (const Json& piece : stock["pieces"])
            for (const Json& part : piece["parts"]) parts.insert(part["part"].get<std::string>());
    return parts;
}

}  // namespace

TEST_CASE("a sheet broken down is not bought again: its parts, offcuts and count are as told") {
    const Bench bench;
    bench.write(counted_job(bench));
    const Json before = json_of(bench, "layout");
    REQUIRE(before["stock"].size() == 2);
    const Said said = told(bench, "ply 12");
    CAPTURE(said.err);
    REQUIRE(said.status == 0);
    CHECK(is_text_in("Broke down ply 12 (", said.out));
    CHECK(is_text_in("Still to break down: ply 6.\n", said.out));
    const Json after = json_of(bench, "layout");
    REQUIRE(after["stock"].size() == 1);
    CHECK(after["stock"][0] == before["stock"][1]);
    // The entry says of each part what the layout said, and of each sheet and offcut as well.
    const Json entry = bench.read()["log"].back();
    CHECK(entry["kind"] == "broken down");
    std::multiset<std::string> freed;
    for (const Json& part : entry["freed"]) freed.insert(part["part"].get<std::string>());
    std::size_t offcuts = 0;
    int used = 0;
    for (const Json& piece : before["stock"][0]["pieces"]) offcuts += piece["offcuts"].size();
    for (const Json& one : entry["used"]) used += one.value("count", 1);
    CHECK(freed.size() == laid_out(before).size() - laid_out(after).size());
    CHECK((entry.contains("offcuts") ? entry["offcuts"].size() : 0) == offcuts);
    CHECK(used == int(before["stock"][0]["pieces"].size()));
    CHECK(is_text_in(std::to_string(freed.size()) + " parts lie by themselves already",
                     bench.run({"layout", bench.job()}).out));
}

TEST_CASE("the plan and its time have only what remains, and nothing once all is told") {
    const Bench bench;
    bench.write(counted_job(bench));
    const Json whole = json_of(bench, "plan");
    REQUIRE(told(bench, "ply 12").status == 0);
    const Json rest = json_of(bench, "plan");
    REQUIRE(rest["breaking_down"]["stock"].size() == 1);
    CHECK(rest["breaking_down"]["seconds"] == whole["breaking_down"]["stock"][1]["seconds"]);
    CHECK(rest["seconds"] == whole["seconds"]);
    const Said all = told(bench, "ply 6");
    REQUIRE(all.status == 0);
    CHECK(is_text_in("Nothing is left to break down.\n", all.out));
    const Json none = json_of(bench, "plan")["breaking_down"];
    CHECK(none["stock"].empty());
    CHECK(none["seconds"] == 0);
    CHECK(none["freed"].size() == whole["parts"].size());
    const std::string text = bench.run({"plan", bench.job()}).out;
    CHECK(is_text_in("all parts are cut already: nothing is left to lay out", text));
    CHECK_FALSE(is_text_in("With the breaking-down", text));
    CHECK(bench.run({"layout", bench.job()}).status == 0);
}

TEST_CASE("several stocks are told at once, and taken back at once: the layout is what it was") {
    const Bench bench;
    bench.write(counted_job(bench));
    const Json before = json_of(bench, "layout");
    REQUIRE(bench.run({"ran", bench.job(), "--stock", "ply 12", "--stock", "ply 6"}).status == 0);
    CHECK(laid_out(json_of(bench, "layout")).empty());
    const Said undone = bench.run({"undo", bench.job()});
    REQUIRE(undone.status == 0);
    CHECK(is_text_in("Took back: broke down ply 12", undone.out));
    CHECK(is_text_in("; broke down ply 6", undone.out));
    CHECK(json_of(bench, "layout") == before);
}

TEST_CASE("a part spoilt after the breaking-down is laid out alone, and lies by itself once that is told") {
    const Bench bench;
    bench.write(counted_job(bench));
    REQUIRE(bench.run({"ran", bench.job(), "--stock", "ply 12", "--stock", "ply 6"}).status == 0);
    REQUIRE(bench.run({"lost", bench.job(), "--part", tests::left_side}).status == 0);
    CHECK(laid_out(json_of(bench, "layout")) == std::multiset<std::string>{tests::left_side});
    REQUIRE(told(bench, "ply 12").status == 0);
    CHECK(laid_out(json_of(bench, "layout")).empty());
}

TEST_CASE("what is spoilt is cut from what is on hand: an offcut that was kept, before a sheet is bought") {
    const Bench bench;
    Json job = counted_job(bench);
    job["stock"][0]["sizes"] = {{{"length", "96"}, {"width", "48"}, {"price", 60}}};
    bench.write(job);
    REQUIRE(told(bench, "ply 12").status == 0);
    const Json kept = bench.read()["log"].back()["offcuts"];
    REQUIRE_FALSE(kept.empty());
    REQUIRE(bench.run({"lost", bench.job(), "--part", tests::left_side}).status == 0);
    const auto first = [&] { return json_of(bench, "layout")["stock"][0]; };
    REQUIRE(first()["stock"] == "ply 12");
    CHECK(first()["cost"] == 0);
    REQUIRE(first()["pieces"].size() == 1);
    CHECK(first()["pieces"][0]["offcut"] == true);
    CHECK(is_text_in("offcut of ", bench.run({"layout", bench.job()}).out));
    // Each offcut is there once: the pieces cut from it are smaller and smaller, until it is a sheet again.
    double area = 1e12;
    int told_times = 0;
    while (first()["pieces"][0]["offcut"] == true) {
        REQUIRE(told(bench, "ply 12").status == 0);
        double now = 0;
        const Json job_now = bench.read();
        for (const Json& one : job_now["log"].back()["used"]) {
            CHECK(one["offcut"] == true);
            CHECK_FALSE(one.contains("bought"));
        }
        REQUIRE(bench.run({"lost", bench.job(), "--part", tests::left_side}).status == 0);
        const Json piece = first()["pieces"][0];
        now = piece["length_mm"].get<double>() * piece["width_mm"].get<double>();
        if (piece["offcut"] == true) CHECK(now <= area);
        REQUIRE(++told_times < 60);
    }
    CHECK(told_times > 1);
    CHECK(first()["cost"] == 60);
}

TEST_CASE("what is counted goes down by what was used, and what is used up is not used again") {
    const Bench bench;
    Json job = counted_job(bench);
    job["stock"][0]["sizes"] = {{{"length", "30"}, {"width", "24"}, {"count", 2}},
                                {{"length", "96"}, {"width", "48"}, {"price", 60}}};
    job["cutting"] = {{"least_offcut_length", "90"}};  // nothing is kept
    bench.write(job);
    const Json before = json_of(bench, "layout")["stock"][0];
    int small = 0;
    for (const Json& piece : before["pieces"]) small += piece["size"] == 0 ? 1 : 0;
    REQUIRE(small == 2);
    REQUIRE(told(bench, "ply 12").status == 0);
    CHECK_FALSE(bench.read()["log"].back().contains("offcuts"));
    REQUIRE(bench.run({"lost", bench.job(), "--part", tests::left_side}).status == 0);
    const Json after = json_of(bench, "layout")["stock"][0];
    REQUIRE(after["pieces"].size() == 1);
    CHECK(after["pieces"][0]["size"] == 1);
}

TEST_CASE("a part that has outgrown what was freed for it is laid out again, and that is said") {
    const Bench bench;
    bench.write(counted_job(bench));
    REQUIRE(bench.run({"ran", bench.job(), "--stock", "ply 12", "--stock", "ply 6"}).status == 0);
    const auto deeper = [&](const char* depth) {
        Json job = bench.read();
        for (Json& drawer : job["drawers"])
            if (drawer.contains("opening")) drawer["opening"]["depth"] = depth;
        bench.write(job);
        return json_of(bench, "layout");
    };
    // Parts were freed 1/2 in longer and 1/8 in wider than finished, a bottom so across its drawer: within that nothing is cut anew.
    CHECK(laid_out(deeper("18 1/8")).empty());
    const Json grown = deeper("19");
    const auto parts = laid_out(grown);
    CHECK_FALSE(parts.empty());
    for (const std::string& part : parts) {
        const std::string role = part.substr(part.rfind('.') + 1);
        CHECK((role == "side_left" || role == "side_right" || role == "bottom"));
    }
    CHECK(grown["freed_too_small"].size() == parts.size());
    const std::string text = bench.run({"layout", bench.job()}).out;
    CHECK(is_text_in(" can't be made of what was freed for it, ", text));
    CHECK(is_text_in(" can't be made of what was freed for it, ", bench.run({"plan", bench.job()}).out));
    CHECK(laid_out(deeper("18")).empty());
}

TEST_CASE("a part that is to be of another stock than it was freed from is laid out again") {
    const Bench bench;
    Json job = counted_job(bench);
    Json other = job["stock"][0];
    other["name"] = "other ply";
    job["stock"].push_back(other);
    bench.write(job);
    REQUIRE(told(bench, "ply 12").status == 0);
    job = bench.read();
    job["drawers"][0]["back"]["stock"] = "other ply";
    bench.write(job);
    const Json layout = json_of(bench, "layout");
    REQUIRE(layout["stock"].size() == 2);
    CHECK(layout["stock"][1]["stock"] == "other ply");
    CHECK_FALSE(layout["freed_too_small"].empty());
    CHECK(is_text_in(" was freed from ply 12 and is of other ply now: it is laid out again",
                     bench.run({"layout", bench.job()}).out));
}

TEST_CASE("what was freed follows its drawer's name, and what can't be told is refused with a remedy") {
    const Bench bench;
    Json job = counted_job(bench);
    bench.write(job);
    const std::string as_it_was = bench.text();
    const Said unknown = told(bench, "ply 21");
    CHECK(unknown.status == 1);
    CHECK(is_text_in("there is no stock `ply 21` in the job; did you mean `ply 12`?", unknown.err));
    CHECK(is_text_in("write `ply 12` or `ply 6`", told(bench, "oak").err));
    CHECK(bench.run({"ran", bench.job()}).status == 2);
    CHECK(bench.run({"ran", bench.job(), "--stock", "ply 12", "--setup", "S1"}).status == 2);
    CHECK(bench.text() == as_it_was);
    REQUIRE(told(bench, "ply 12").status == 0);
    const Said twice = told(bench, "ply 12");
    CHECK(twice.status == 1);
    CHECK(is_text_in("of `ply 12` nothing is left to break down; the layout shows what is", twice.err));
    job["stock"][1].erase("sizes");
    bench.write(job);
    CHECK(is_text_in("ply 6: in which sizes it can be had is not said", told(bench, "ply 6").err));
    job["stock"][1]["sizes"] = {{{"length", "4"}, {"width", "4"}}};
    bench.write(job);
    const Said too_small = told(bench, "ply 6");
    CHECK(too_small.status == 1);
    CHECK(is_text_in("; get a sheet that gives", too_small.err));
}

TEST_CASE("an entry that is wrong is told of at its place in the file") {
    const Bench bench;
    Json job = counted_job(bench);
    job["log"] = {{{"kind", "broken down"},
                   {"stock", "ply 12"},
                   {"freed", {{{"part", "x"}, {"length", "ten"}, {"width", "4"}}}}}};
    bench.write(job);
    const Said said = bench.run({"check", bench.job()});
    CHECK(said.status == 1);
    CHECK(is_text_in("job.json:", said.err));
    CHECK(is_text_in("\"length\": \"ten\"", said.err));
}
