// The breaking-down of boards and sheets as the plan has it. What is counted here is counted once more from what `layout --json` says and from the
// job's own times.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::Said, tests::is_text_in, tests::json_of;

namespace {

// Both stocks in sheets with a trim; times that no sum of others gives.
Json sized_job(const Bench& bench) {
    Json job = bench.read();
    job["stock"][0]["sizes"] = {{{"length", "30"}, {"width", "24"}, {"trim", "1/8"}}};
    job["stock"][1]["sizes"] = {{{"length", "48"}, {"width", "24"}}};
    job["times"] = {{"fence", 1009}, {"rough_cut", 37}};
    return job;
}

bool has_part(const Json& parts, const std::string& part) {
    return std::find(parts.begin(), parts.end(), part) != parts.end();
}

std::set<std::string> freed_in(const Json& breaking) {
    std::set<std::string> freed;
    for (const Json& stock : breaking["stock"])
        for (const Json& setting : stock["settings"])
            for (const Json& part : setting["frees"]) CHECK(freed.insert(part).second);
    return freed;
}

}  // namespace

TEST_CASE("the plan breaks down what the layout lays out: the same settings, each part freed once") {
    const Bench bench;
    bench.write(sized_job(bench));
    const Json plan = json_of(bench, "plan"), layout = json_of(bench, "layout");
    const Json& breaking = plan["breaking_down"];
    REQUIRE(breaking["stock"].size() == layout["stock"].size());
    for (std::size_t s = 0; s < layout["stock"].size(); ++s) {
        const Json &told = breaking["stock"][s], &laid = layout["stock"][s];
        CHECK(told["stock"] == laid["stock"]);
        CHECK(told["least_times_set"] == laid["least_settings"]);
        REQUIRE(told["settings"].size() == laid["settings"].size());
        for (std::size_t i = 0; i < laid["settings"].size(); ++i)
            for (const char* field : {"direction", "fence_mm", "cuts"})
                CHECK(told["settings"][i][field] == laid["settings"][i][field]);
    }
    CHECK(freed_in(breaking).size() == plan["parts"].size());
}

TEST_CASE("it takes the fence's time for each setting and a cut's for each cut, trims among them") {
    const Bench bench;
    bench.write(sized_job(bench));
    const Json breaking = json_of(bench, "plan")["breaking_down"], layout = json_of(bench, "layout");
    std::size_t settings = 0, least = 0, cuts = 0, trims = 0;
    for (const Json& stock : layout["stock"]) {
        settings += stock["settings"].size();
        least += stock["least_settings"].get<std::size_t>();
        for (const Json& piece : stock["pieces"]) {
            cuts += piece["cuts"].size();
            if (stock["stock"] == "ply 12") trims += 4;  // a sheet has four edges
        }
    }
    CHECK(trims > 0);
    CHECK(breaking["times_set"] == settings);
    CHECK(breaking["cuts"] == cuts);
    CHECK(breaking["trim_cuts"] == trims);
    CHECK(breaking["seconds"] == 1009 * settings + 37 * (cuts + trims));
    CHECK(breaking["lower_bound_seconds"] == 1009 * least + 37 * (cuts + trims));
    const std::string explained = bench.run({"plan", bench.job(), "--explain"}).out;
    CHECK(is_text_in("fence and stop " + std::to_string(breaking["stock"][0]["settings"].size()) + " × 16:49",
                     explained));
}

TEST_CASE("setups and their time stay as they are without any sizes") {
    const Bench bench;
    Json job = sized_job(bench);
    bench.write(job);
    const Json with = json_of(bench, "plan");
    for (Json& stock : job["stock"]) stock.erase("sizes");
    bench.write(job);
    const Json without = json_of(bench, "plan");
    for (const char* field : {"setups", "sequence", "seconds", "lower_bound_seconds", "proved"})
        CHECK(with[field] == without[field]);
    CHECK(without["breaking_down"]["cuts"] == 0);
    CHECK(without["breaking_down"]["without_size"] == Json({"ply 12", "ply 6"}));
    CHECK(with["breaking_down"]["without_size"].empty());
}

TEST_CASE("the breaking-down stands before the setups; without sizes one line says what to give") {
    const Bench bench;
    const std::string nothing = bench.run({"plan", bench.job()}).out;
    CHECK(
        is_text_in("\nBreaking down, before the setups\n  of no stock it is said in which sizes it can be "
                   "had: give `sizes` to ply 12 and ply 6\n\nSetups, in order\n",
                   nothing));
    CHECK_FALSE(is_text_in("With the breaking-down", nothing));
    bench.write(sized_job(bench));
    const std::string plan = bench.run({"plan", bench.job()}).out;
    const std::size_t breaking = plan.find("\nBreaking down, before the setups ("),
                      setups = plan.find("\nSetups, in order\n"), rip = plan.find("    [ ] rip, fence ");
    REQUIRE(rip != std::string::npos);
    CHECK(breaking < rip);
    CHECK(rip < setups);
    CHECK(
        is_text_in("parts are cut out 1/2 in longer and 1/8 in wider than finished: the setups bring them "
                   "to size",
                   plan));
    CHECK(is_text_in("With the breaking-down about ", plan));
}

TEST_CASE("a setup finds its parts at size already where they are cut out no larger than they will be") {
    const Bench bench;
    Json job = sized_job(bench);
    bench.write(job);
    CHECK(json_of(bench, "plan")["breaking_down"]["at_size"].empty());
    job["cutting"] = {{"over_length", "1/2"}, {"over_width", "0"}};
    bench.write(job);
    const Json plan = json_of(bench, "plan");
    std::size_t rips = 0;
    for (const Json& setup : plan["setups"])
        rips += setup["work"].get<std::string>().find(" to width") != std::string::npos ? 1u : 0u;
    CHECK(rips > 0);
    CHECK(plan["breaking_down"]["at_size"].size() == rips);
    for (const Json& one : plan["breaking_down"]["at_size"])
        for (const Json& setup : plan["setups"])
            if (setup["id"] == one["setup"]) {
                CHECK(setup["work"].get<std::string>().find(" to width") != std::string::npos);
                CHECK(setup["passes"].size() == one["parts"].size());
            }
    const std::string widths = bench.run({"plan", bench.job()}).out;
    CHECK(is_text_in("parts are cut out 1/2 in longer than finished, and to their finished width", widths));
    CHECK(is_text_in("come at their finished size, and nothing is left to cut off them", widths));
    CHECK_FALSE(is_text_in("a length that waits for a joint", widths));
    job["cutting"]["over_length"] = "0";
    bench.write(job);
    CHECK(
        is_text_in("a length that waits for a joint can't follow it", bench.run({"plan", bench.job()}).out));
}

TEST_CASE("a board's parts get their width from no cut: their rip stays, whatever the allowance is") {
    const Bench bench;
    Json job = sized_job(bench);
    job["stock"][0]["sizes"] = {{{"length", "96"}}};
    job["cutting"] = {{"over_length", "1/2"}, {"over_width", "0"}};
    bench.write(job);
    const Json plan = json_of(bench, "plan");
    for (const Json& one : plan["breaking_down"]["at_size"])
        for (const Json& part : plan["parts"])
            if (has_part(one["parts"], part["id"])) CHECK(part["stock"] == "ply 6");
}

TEST_CASE("what has been at a machine is not broken down again, and comes again once it is lost") {
    const Bench bench;
    bench.write(sized_job(bench));
    const std::string rip = tests::setup_of(bench, "rip to width: sides and fronts");
    REQUIRE(bench.run({"ran", bench.job(), "--setup", rip, "--part", tests::left_side}).status == 0);
    const Json ran = json_of(bench, "plan")["breaking_down"];
    CHECK(freed_in(ran).count(tests::left_side) == 0);
    CHECK(ran["cut_already"] == Json({tests::left_side}));
    CHECK(is_text_in("  1 part is cut already and left out", bench.run({"plan", bench.job()}).out));
    REQUIRE(bench.run({"lost", bench.job(), "--part", tests::left_side}).status == 0);
    CHECK(freed_in(json_of(bench, "plan")["breaking_down"]).count(tests::left_side) == 1);
}

TEST_CASE("a stock that can't be laid out is named in the plan, which is made all the same") {
    const Bench bench;
    Json job = sized_job(bench);
    job["stock"][0]["sizes"] = {{{"length", "12"}, {"width", "24"}}};
    bench.write(job);
    const Json breaking = json_of(bench, "plan")["breaking_down"];
    REQUIRE(breaking["refused"].size() == 1);
    CHECK(breaking["refused"][0]["stock"] == "ply 12");
    CHECK(is_text_in("get a sheet that gives", breaking["refused"][0]["text"].get<std::string>()));
    REQUIRE(breaking["stock"].size() == 1);
    CHECK(breaking["stock"][0]["stock"] == "ply 6");
    CHECK(is_text_in("  ply 12: ", bench.run({"plan", bench.job()}).out));
}

TEST_CASE("a setting that holds a piece shorter than is safe at the saw warns in the plan as in the layout") {
    const Bench bench;
    Json job = sized_job(bench);
    const auto shortest_in = [](const Json& laid, const Json& setting) {
        Json shortest;
        for (const Json& place : setting["cuts"]) {
            const Json& held = laid["pieces"][place["piece"].get<std::size_t>()]["cuts"]
                                   [place["cut"].get<std::size_t>()]["too_short_mm"];
            if (!held.is_null() && (shortest.is_null() || held < shortest)) shortest = held;
        }
        return shortest;
    };
    for (Json& machine : job["machines"]) machine["least_part"] = "12";
    job["cutting"]["least_offcut_length"] = "1";
    job["stock"][0]["sizes"] = {{{"length", "48"}, {"width", "24"}}};
    bench.write(job);
    const Json breaking = json_of(bench, "plan")["breaking_down"], layout = json_of(bench, "layout");
    std::size_t held = 0;
    for (std::size_t s = 0; s < breaking["stock"].size(); ++s)
        for (const Json& setting : breaking["stock"][s]["settings"]) {
            CHECK(setting["too_short_mm"] == shortest_in(layout["stock"][s], setting));
            held += setting["too_short_mm"].is_null() ? 0u : 1u;
        }
    CHECK(held > 0);
    const std::string plan = bench.run({"plan", bench.job()}).out,
                      before_setups = plan.substr(0, plan.find("\nSetups, in order\n"));
    std::size_t warnings = 0;
    for (std::size_t at = before_setups.find("WARNING"); at != std::string::npos;
         at = before_setups.find("WARNING", at + 1))
        ++warnings;
    CHECK(warnings == held);
}

TEST_CASE("the time of a cut is the maker's: no less than nothing, and whole seconds") {
    const Bench bench;
    for (const Json& wrong : {Json(-1), Json(2.5), Json("long")}) {
        Json job = sized_job(bench);
        job["times"]["rough_cut"] = wrong;
        bench.write(job);
        const Said said = bench.run({"plan", bench.job()});
        CHECK(said.status == 1);
        CHECK(is_text_in("rough_cut", said.err));
    }
}
