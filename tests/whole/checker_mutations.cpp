// The check against plans by the trade's formulas for random jobs: it lets them pass, and finds every single thing spoiled in them.
#include <doctest/doctest.h>

#include <functional>
#include <string>
#include <vector>

#include "checker/fingered_job.h"
#include "checker/make_drawer.h"
#include "checker/naive_plan.h"
#include "checker/random_job.h"

using checker::Json;

namespace {

struct Spoiled {
    std::string what;
    std::function<void(Json& plan)> spoil;
};

using Spoils = std::vector<Spoiled>;

void number_off(Spoils& spoils, const char* list, std::size_t index, const char* field) {
    for (const double by_mm : {0.01, -0.01}) {
        spoils.push_back(
            {std::string(list) + " " + std::to_string(index) + " " + field + (by_mm > 0 ? " +" : " -"),
             [=](Json& plan) {
                 Json& value = plan[list][index][field];
                 value = value.get<double>() + by_mm;
             }});
    }
}

Spoiled pass_changed(std::size_t setup, const char* what, const std::function<void(Json& pass)>& change) {
    return {"setup " + std::to_string(setup) + " " + what,
            [=](Json& plan) { change(plan["setups"][setup]["passes"][0]); }};
}

void turn_over(Json& pass) { pass["down"] = pass["down"] == "inside" ? "outside" : "inside"; }

void turn_round(Json& pass) {
    static const std::vector<std::pair<std::string, std::string>> ends{
        {"left end", "right end"}, {"front end", "rear end"}, {"bottom edge", "top edge"}};
    for (const auto& [one, other] : ends) {
        if (pass["reference"] == one) {
            pass["reference"] = other;
            return;
        }
        if (pass["reference"] == other) {
            pass["reference"] = one;
            return;
        }
    }
}

void joint_spoils(Spoils& spoils, const Json& plan, std::size_t i) {
    const bool between = plan["setups"][i]["work"] == "a pass between";
    for (const char* field : {"fence_mm", "spacer_mm"}) {
        if (!between) number_off(spoils, "setups", i, field);
    }
    if (plan["setups"][i].contains("index_mm")) {
        number_off(spoils, "setups", i, "index_mm");
        for (const int more : {1, -1})
            spoils.push_back(pass_changed(
                i, "sockets", [more](Json& pass) { pass["cuts"] = pass["cuts"].get<int>() + more; }));
    }
    number_off(spoils, "setups", i, "kerf_mm");
    number_off(spoils, "setups", i, "height_mm");
    // And where the passes below it say the same: then only the wood shows it.
    spoils.push_back({"setup " + std::to_string(i) + " height with its passes", [i](Json& p) {
                          Json& setup = p["setups"][i];
                          setup["height_mm"] = setup["height_mm"].get<double>() - 0.01;
                          setup["heights_mm"].back() = setup["height_mm"];
                      }});
    spoils.push_back({"heights end elsewhere in setup " + std::to_string(i), [i](Json& p) {
                          Json& last = p["setups"][i]["heights_mm"].back();
                          last = last.get<double>() + 0.01;
                      }});
    // Where there is one below, it must be there: the next would take more than the bit does.
    if (plan["setups"][i]["heights_mm"].size() > 1)
        spoils.push_back({"a pass left out of the heights in setup " + std::to_string(i),
                          [i](Json& p) { p["setups"][i]["heights_mm"].erase(0); }});
    spoils.push_back(pass_changed(i, "turned over", turn_over));
    spoils.push_back(pass_changed(i, "turned round", turn_round));
    spoils.push_back(
        pass_changed(i, "nibble", [](Json& pass) { pass["nibble"] = !pass["nibble"].get<bool>(); }));
    spoils.push_back({"setup " + std::to_string(i) + " sacrificial", [i](Json& p) {
                          Json& value = p["setups"][i]["sacrificial"];
                          value = !value.get<bool>();
                      }});
}

// One of each kind of change, everywhere in the plan where it can be made.
Spoils spoils_of(const Json& plan) {
    Spoils spoils;
    for (std::size_t i = 0; i < plan["boxes"].size(); ++i) {
        for (const char* field : {"width_mm", "height_mm", "depth_mm"}) number_off(spoils, "boxes", i, field);
    }
    for (std::size_t i = 0; i < plan["parts"].size(); ++i) {
        for (const char* field : {"length_mm", "width_mm", "thickness_mm"})
            number_off(spoils, "parts", i, field);
        spoils.push_back({"part " + std::to_string(i) + " missing", [i](Json& p) { p["parts"].erase(i); }});
    }
    for (std::size_t i = 0; i < plan["setups"].size(); ++i) {
        if (plan["setups"][i]["height_mm"].is_null()) number_off(spoils, "setups", i, "fence_mm");
        else joint_spoils(spoils, plan, i);
        spoils.push_back({"pass missing in setup " + std::to_string(i),
                          [i](Json& p) { p["setups"][i]["passes"].erase(0); }});
        spoils.push_back(
            {"not in the sequence: " + std::to_string(i), [i](Json& p) { p["sequence"].erase(i); }});
    }
    return spoils;
}

int check_all_found(const Json& job, const Json& plan) {
    const Spoils spoils = spoils_of(plan);
    for (const Spoiled& one : spoils) {
        Json changed = plan;
        one.spoil(changed);
        CAPTURE(one.what);
        CHECK(!checker::make_drawers(job, changed).empty());
    }
    return static_cast<int>(spoils.size());
}

struct Seen {
    int in_passes = 0;
    int nibble = 0;
    int sacrificial = 0;
    int captured = 0;
    int router = 0;
    int rabbeted_front = 0;
    int rabbeted_back = 0;
    int half_lapped = 0;
    int raised = 0;
    int tongued_back = 0;
};

void look_at(Seen& seen, const Json& job, const Json& plan) {
    for (const Json& setup : plan["setups"]) {
        seen.in_passes += setup["work"] == "a pass between" ? 1 : 0;
        seen.nibble += setup["passes"][0]["nibble"].get<bool>() ? 1 : 0;
        seen.sacrificial += setup["sacrificial"].get<bool>() ? 1 : 0;
        seen.raised += setup["heights_mm"].size() > 1 ? 1 : 0;
        seen.router += setup["machine"] == "router" ? 1 : 0;
    }
    for (const Json& drawer : job["drawers"]) {
        seen.captured += drawer["bottom"].value("style", "") == "captured" ? 1 : 0;
        seen.rabbeted_front += drawer["front"]["joint"] == "rabbet" ? 1 : 0;
        seen.half_lapped += drawer["front"]["joint"] == "half lap corner" ? 1 : 0;
        seen.rabbeted_back += drawer["back"]["joint"] == "rabbet" ? 1 : 0;
        seen.tongued_back += drawer["back"]["joint"] == "tongue and dado" ? 1 : 0;
    }
}

}  // namespace

TEST_CASE("every random job can be made, and a plan by the formulas passes the check") {
    Seen seen;
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        CAPTURE(seed);
        const Json job = checker::random_job(seed);
        for (const bool tongued_back : {false, true}) {
            const Json plan = checker::naive_plan(job, {tongued_back});
            look_at(seen, job, plan);
            CHECK(text_of(checker::make_drawers(job, plan)) == "");
        }
    }
    for (const int count :
         {seen.in_passes, seen.nibble, seen.sacrificial, seen.captured, seen.router, seen.rabbeted_front,
          seen.rabbeted_back, seen.tongued_back, seen.half_lapped, seen.raised})
        CHECK(count > 100);
}

TEST_CASE("random jobs with box joints can be made too, and a plan by the formulas passes the check") {
    int rows = 0;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        CAPTURE(seed);
        const Json job = checker::with_box_joints(checker::random_job(seed));
        const Json plan = checker::naive_plan(job, {false});
        for (const Json& setup : plan["setups"]) rows += setup.contains("index_mm") ? 1 : 0;
        CHECK(text_of(checker::make_drawers(job, plan)) == "");
    }
    CHECK(rows > 500);
}

TEST_CASE("whatever single thing is spoiled in a random job's plan is found") {
    int changes = 0;
    for (std::uint64_t seed = 3001; seed <= 3012; ++seed) {
        CAPTURE(seed);
        const Json job = checker::random_job(seed);
        changes += check_all_found(job, checker::naive_plan(job, {seed % 2 == 0}));
    }
    for (std::uint64_t seed = 3001; seed <= 3004; ++seed) {
        CAPTURE(seed);
        const Json job = checker::with_box_joints(checker::random_job(seed));
        changes += check_all_found(job, checker::naive_plan(job, {false}));
    }
    CHECK(changes > 4000);
}
