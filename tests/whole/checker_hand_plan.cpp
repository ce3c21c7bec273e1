// A plan worked out by hand passes the check, and each single thing spoiled in it is found and named.
#include <doctest/doctest.h>

#include <functional>
#include <string>
#include <vector>

#include "checker/make_drawer.h"
#include "whole/hand_plan.h"

using checker::Json;

namespace {

Json& named(Json& list, const char* field, const std::string& name) {
    for (Json& entry : list) {
        if (entry.at(field) == name) return entry;
    }
    throw std::invalid_argument(name);
}

Json& setup(Json& plan, const std::string& id) { return named(plan["setups"], "id", id); }
Json& part(Json& plan, const std::string& id) { return named(plan["parts"], "id", id); }

void add(Json& entry, const char* field, double by_mm) { entry[field] = entry[field].get<double>() + by_mm; }

void order(Json& plan, const std::vector<std::string>& ids) { plan["sequence"] = ids; }

void without(Json& list, std::size_t index) {
    list.erase(list.begin() + static_cast<Json::difference_type>(index));
}

std::string found_in(const Json& plan) { return text_of(checker::make_drawers(whole::hand_job(), plan)); }

struct SpoiledWithFinding {
    std::string what;
    std::function<void(Json& plan)> spoil;
    const char* finding;
};

void check_found(const std::vector<SpoiledWithFinding>& all) {
    for (const SpoiledWithFinding& one : all) {
        Json plan = whole::hand_plan();
        one.spoil(plan);
        const std::string findings = found_in(plan);
        CAPTURE(one.what);
        CAPTURE(findings);
        CHECK(findings.find(one.finding) != std::string::npos);
    }
}

}  // namespace

TEST_CASE("the drawer worked out by hand is right") { CHECK(found_in(whole::hand_plan()) == ""); }

TEST_CASE("an error under the tolerance is let pass, one over it is not") {
    for (const double error : {0.0015, -0.0015, 0.003, -0.003}) {
        Json plan = whole::hand_plan();
        add(setup(plan, "dado"), "fence_mm", error);
        CAPTURE(error);
        CHECK((found_in(plan) == "") == (std::abs(error) < 0.002));
    }
}

TEST_CASE("a setting that is a hundredth off is found in the joint that it makes") {
    check_found({
        {"dado moved out", [](Json& p) { add(setup(p, "dado"), "fence_mm", 0.01); }, "front's step"},
        {"dado deeper", [](Json& p) { add(setup(p, "dado"), "height_mm", 0.01); },
         "left end relief is 0.4100"},
        {"tongue thinner", [](Json& p) { add(setup(p, "rabbet"), "height_mm", 0.01); },
         "clearance in the dado is 0.1100"},
        {"spacer thicker", [](Json& p) { add(setup(p, "rabbet"), "spacer_mm", 0.01); },
         "shoulder gap is -0.0100"},
        {"back moved", [](Json& p) { add(setup(p, "back near"), "fence_mm", 0.01); },
         "clearance in the dado is 0.0900"},
        {"back dado wider", [](Json& p) { add(setup(p, "back far"), "fence_mm", 0.01); },
         "clearance in the dado is 0.1100"},
        {"back dado stepped", [](Json& p) { add(setup(p, "back far"), "height_mm", 0.01); },
         "wood is left in the joint with the back"},
        {"groove higher", [](Json& p) { add(setup(p, "groove near"), "fence_mm", -0.01); },
         "groove's offset is 9.9900"},
        {"groove wider", [](Json& p) { add(setup(p, "groove far"), "fence_mm", 0.01); }, "groove is 0.2600"},
        {"groove shallower", [](Json& p) { add(setup(p, "groove far"), "height_mm", -0.01); },
         "wood is left in the groove"},
    });
}

TEST_CASE("a part that is a hundredth off is found") {
    check_found({
        {"front longer", [](Json& p) { add(part(p, "F"), "length_mm", 0.01); }, "shoulder gap is -0.0050"},
        {"back longer", [](Json& p) { add(part(p, "K"), "length_mm", 0.01); },
         "back's left end relief is 0.3950"},
        {"back wider", [](Json& p) { add(part(p, "K"), "width_mm", 0.01); }, "back's bottom edge is 15.8400"},
        {"bottom longer", [](Json& p) { add(part(p, "B"), "length_mm", 0.01); }, "slack across is 0.7900"},
        {"bottom wider", [](Json& p) { add(part(p, "B"), "width_mm", 0.01); },
         "slack from front to back is 0.7900"},
        {"side longer", [](Json& p) { add(part(p, "L"), "length_mm", 0.01); }, "a side's length"},
        {"side wider", [](Json& p) { add(part(p, "R"), "width_mm", 0.01); }, "a side's width"},
        {"side thicker", [](Json& p) { add(part(p, "R"), "thickness_mm", 0.01); }, "R: thickness is 12.0100"},
        {"box deeper", [](Json& p) { add(p["boxes"][0], "depth_mm", 0.01); }, "box depth is 250.0100"},
        {"blank not cut to size", [](Json& p) { add(setup(p, "rip back"), "fence_mm", 0.01); },
         "ripped width"},
    });
}

TEST_CASE("a pass that is missing, or lies wrong, is found") {
    check_found({
        {"a side's dado missing", [](Json& p) { without(setup(p, "dado")["passes"], 1); },
         "R: 1 joints along its inside face"},
        {"the dado's far pass missing", [](Json& p) { setup(p, "back far")["passes"].clear(); },
         "clearance in the dado is -5.6500"},
        {"a front's rabbet missing", [](Json& p) { without(setup(p, "rabbet")["passes"], 1); },
         "no tongue on the inside half"},
        {"rabbet on the inside", [](Json& p) { setup(p, "rabbet")["passes"][0]["down"] = "inside"; },
         "no tongue on the inside half"},
        {"groove on the outside", [](Json& p) { setup(p, "groove far")["passes"][0]["down"] = "outside"; },
         "L: a pass cuts where no joint is"},
        {"groove at the top", [](Json& p) { setup(p, "groove near")["passes"][2]["reference"] = "top edge"; },
         "F: 2 grooves"},
        {"dado at the other end", [](Json& p) { setup(p, "dado")["passes"][0]["reference"] = "rear end"; },
         "same place"},
        {"an end that the part has not",
         [](Json& p) { setup(p, "dado")["passes"][0]["reference"] = "left end"; }, "has no left end"},
        {"the bottom grooved", [](Json& p) { setup(p, "groove far")["passes"][0]["part"] = "B"; },
         "a bottom has no joint cuts"},
        {"never ripped", [](Json& p) { without(setup(p, "rip 100")["passes"], 0); },
         "L: it is never cut to size"},
    });
}

TEST_CASE("a setup that no such machine or cutter makes is found") {
    check_found({
        {"nibble where nothing stands", [](Json& p) { setup(p, "rabbet")["passes"][0]["nibble"] = true; },
         "nibbles where no strip"},
        {"nibble in a dado", [](Json& p) { setup(p, "dado")["passes"][0]["nibble"] = true; }, "no lip"},
        {"spacer not sacrificial", [](Json& p) { setup(p, "rabbet")["sacrificial"] = false; },
         "spacer that is not sacrificial"},
        {"sacrificial for nothing", [](Json& p) { setup(p, "dado")["sacrificial"] = true; },
         "called sacrificial"},
        {"no such cutter", [](Json& p) { setup(p, "dado")["cutter"] = "half stack"; },
         "no cutter is called half stack"},
        {"a kerf that is not the cutter's", [](Json& p) { setup(p, "back far")["kerf_mm"] = 6.4; },
         "its kerf is not"},
        {"on the miter saw", [](Json& p) { setup(p, "dado")["machine"] = "chop"; },
         "its cutter is for another machine"},
        {"too high", [](Json& p) { setup(p, "dado")["height_mm"] = 77; }, "does not rise that high"},
        {"the same setup twice", [](Json& p) { setup(p, "back far")["fence_mm"] = 25; },
         "the same settings as back near"},
        {"crosscut with no stop", [](Json& p) { setup(p, "crosscut 250")["guide"] = "miter gauge"; },
         "without a stop"},
        {"crosscut with a stack", [](Json& p) { setup(p, "rip back")["cutter"] = "quarter stack"; },
         "does not cut to size"},
    });
}

TEST_CASE("parts that are missing, doubled or of other stock are found") {
    check_found({
        {"no back", [](Json& p) { without(p["parts"], 3); }, "0 parts are its back"},
        {"two fronts",
         [](Json& p) {
             p["parts"].push_back(p["parts"][2]);
             p["parts"].back()["id"] = "F2";
         },
         "2 parts are its front"},
        {"a copy too many", [](Json& p) { part(p, "L")["copy"] = 2; }, "no drawer was asked"},
        {"swapped roles",
         [](Json& p) {
             part(p, "F")["role"] = "back";
             part(p, "K")["role"] = "front";
         },
         "K: 0 grooves"},
        {"other stock", [](Json& p) { part(p, "K")["stock"] = "ply 6"; }, "it is of ply 6"},
        {"a face that nobody asked",
         [](Json& p) {
             p["parts"].push_back(p["parts"][2]);
             p["parts"].back()["id"] = "face";
             p["parts"].back()["role"] = "face";
         },
         "1 faces"},
        {"no such part", [](Json& p) { setup(p, "dado")["passes"][0]["part"] = "Q"; }, "no part is called Q"},
        {"no box", [](Json& p) { p["boxes"].clear(); }, "it has 0 boxes"},
        {"a field missing", [](Json& p) { setup(p, "dado").erase("spacer_mm"); }, "spacer_mm"},
    });
}

TEST_CASE("an order that spoils a part or a locked setup is found") {
    check_found({
        {"front to length before the dado",
         [](Json& p) {
             order(p, {"rip 100", "crosscut 250", "crosscut 286.7", "dado", "rabbet", "back near", "back far",
                       "groove near", "groove far", "rip back", "rip bottom", "crosscut bottom"});
         },
         "to length after the locking rabbet"},
        {"rabbet before the length",
         [](Json& p) {
             order(p, {"rip 100", "crosscut 250", "dado", "rabbet", "crosscut 286.7", "back near", "back far",
                       "groove near", "groove far", "rip back", "rip bottom", "crosscut bottom"});
         },
         "to length before the joints"},
        {"groove before the rip",
         [](Json& p) {
             order(p, {"groove near", "groove far", "rip 100", "crosscut 250", "dado", "crosscut 286.7",
                       "rabbet", "back near", "back far", "rip back", "rip bottom", "crosscut bottom"});
         },
         "rip before groove"},
        {"crosscut before rip",
         [](Json& p) {
             order(p, {"crosscut 250", "rip 100", "dado", "crosscut 286.7", "rabbet", "back near", "back far",
                       "groove near", "groove far", "rip back", "rip bottom", "crosscut bottom"});
         },
         "rip, then crosscut"},
        {"locked setup disturbed",
         [](Json& p) {
             order(p, {"rip 100", "crosscut 250", "dado", "crosscut 286.7", "back near", "rabbet", "back far",
                       "groove near", "groove far", "rip back", "rip bottom", "crosscut bottom"});
         },
         "its group was disturbed"},
        {"back's width before the groove",
         [](Json& p) {
             order(p, {"rip 100", "crosscut 250", "rip back", "dado", "crosscut 286.7", "rabbet", "back near",
                       "back far", "groove near", "groove far", "rip bottom", "crosscut bottom"});
         },
         "a back's width after the groove"},
        {"bottom first",
         [](Json& p) {
             order(p, {"rip bottom", "crosscut bottom", "rip 100", "crosscut 250", "dado", "crosscut 286.7",
                       "rabbet", "back near", "back far", "groove near", "groove far", "rip back"});
         },
         "a bottom to size after the joints"},
        {"a setup left out", [](Json& p) { without(p["sequence"], 5); },
         "back near: it is not in the sequence"},
        {"a setup that is none", [](Json& p) { p["sequence"].push_back("S99"); }, "no such setup"},
        {"faster than the bound", [](Json& p) { p["seconds"] = 2999; }, "lower bound"},
        {"proved and not at the bound", [](Json& p) { p["proved"] = true; }, "said to be proved"},
    });
}

TEST_CASE("a setup that is marked as set again may be disturbed") {
    Json plan = whole::hand_plan();
    order(plan, {"rip 100", "crosscut 250", "dado", "crosscut 286.7", "back near", "rabbet#2", "back far",
                 "groove near", "groove far", "rip back", "rip bottom", "crosscut bottom"});
    CHECK(found_in(plan) == "");
}

TEST_CASE("the only saw may cut fronts to length before the locking rabbet") {
    Json job = whole::hand_job();
    job["machines"].erase(1);
    Json plan = whole::hand_plan();
    for (const char* id : {"crosscut 250", "crosscut 286.7", "crosscut bottom"}) {
        setup(plan, id)["machine"] = "saw";
        setup(plan, id)["cutter"] = "ripping blade";
    }
    order(plan, {"rip 100", "crosscut 250", "crosscut 286.7", "dado", "rabbet", "back near", "back far",
                 "groove near", "groove far", "rip back", "rip bottom", "crosscut bottom"});
    CHECK(text_of(checker::make_drawers(job, plan)) == "");
}

TEST_CASE("a job's choices are held against what was made") {
    const auto with = [](const char* part, const char* field, const Json& value) {
        Json job = whole::hand_job();
        job["drawers"][0][part][field] = value;
        return text_of(checker::make_drawers(job, whole::hand_plan()));
    };
    CHECK(with("front", "dado_width", "6.35").empty());
    CHECK(with("front", "dado_width", "6.36").find("dado width is 6.3500") != std::string::npos);
    CHECK(with("front", "depth", "5.8").find("depth of the joint with the front") != std::string::npos);
    CHECK(with("back", "depth", "5.76").find("depth of the joint with the back") != std::string::npos);
    CHECK(with("back", "setback", "26").find("back's setback is 25.0000") != std::string::npos);
    CHECK(with("bottom", "depth", "4.1").find("groove's depth is 4.0000") != std::string::npos);
    CHECK(with("front", "cutter", "ripping blade").find("to be cut with ripping blade") != std::string::npos);
    CHECK(with("bottom", "style", "captured").find("K: 0 grooves") != std::string::npos);
    CHECK(with("front", "joint", "rabbet").find("wants them plain") != std::string::npos);
}
