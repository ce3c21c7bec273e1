// The files that others read and write against their published schemas, by a validator that is not ours (python3-jsonschema).
#include <doctest/doctest.h>

#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

#include "checker/fingered_job.h"
#include "checker/random_job.h"
#include "text_in.h"
#include "whole/plan_seam.h"

namespace {

using Files = std::vector<std::unique_ptr<whole::JobFile>>;

bool are_valid(const Files& files, const std::string& schema) {
    // Debian's own Python, since that is the one that Debian's packages are for.
    std::string command = "/usr/bin/python3 -W ignore -m jsonschema --error-format '{error.message} '";
    for (const auto& file : files) command += " -i '" + file->path() + "'";
    return std::system((command + " '" KW_ASSET_DIR "/schemas/" + schema + ".schema.json'").c_str()) == 0;
}

void add(Files& files, const std::string& text) { files.push_back(std::make_unique<whole::JobFile>(text)); }

std::string demo() { return kw::tests::text_in(KW_ASSET_DIR "/demo.json"); }

}  // namespace

TEST_CASE("jobs and their plans are as their schemas say") {
    Files jobs, plans;
    add(jobs, demo());
    add(jobs, kw::tests::text_in(KW_TEST_DIR "/files/map_chest.json"));
    for (std::uint64_t seed = 1; seed <= 40; ++seed) add(jobs, checker::random_job(seed).dump(2));
    for (std::uint64_t seed = 1; seed <= 10; ++seed)
        add(jobs, checker::with_box_joints(checker::random_job(seed)).dump(2));
    for (const auto& job : jobs) add(plans, whole::run_program({"plan", job->path(), "--json"}).out);
    CHECK(are_valid(jobs, "job"));
    CHECK(are_valid(plans, "plan"));
}

TEST_CASE("plans that begin with boards and sheets to break down are as their schema says") {
    const checker::Json sheet = {{"length", "60"}, {"width", "30"}, {"trim", "1/8"}},
                        board = {{"length", "72"}}, too_small = {{"length", "4"}, {"width", "4"}};
    Files jobs, plans;
    const auto add_with = [&](const checker::Json& size, const char* allowance) {
        checker::Json job = checker::Json::parse(demo());
        job["stock"][0]["sizes"] = {size};
        job["stock"][1]["sizes"] = {sheet};
        job["cutting"] = {{"over_length", allowance}, {"over_width", allowance}};
        job["times"] = {{"rough_cut", 25}};
        add(jobs, job.dump(2));
        add(plans, whole::run_program({"plan", jobs.back()->path(), "--json"}).out);
        CHECK(checker::Json::parse(plans.back()->text())["breaking_down"]["cuts"] > 0);
    };
    add_with(sheet, "1/2");
    add_with(board, "0");
    add_with(too_small, "0");
    CHECK(are_valid(jobs, "job"));
    CHECK(are_valid(plans, "plan"));
    checker::Json plan = checker::Json::parse(plans.front()->text());
    plan["breaking_down"]["stock"][0]["settings"][0]["direction"] = "plunge";
    Files wrong;
    add(wrong, plan.dump(2));
    CHECK_FALSE(are_valid(wrong, "plan"));
}

TEST_CASE("the faces of banks are as their schema says, overlay and inset, with handles or without") {
    checker::Json job = checker::Json::parse(demo());
    checker::Json &drawer = job["drawers"][0], bank = {{"name", "left"}, {"opening", {{"width", "15"}}}};
    const std::string name = drawer["name"];
    drawer["count"] = 2;
    drawer["face"] = {{"stock", "birch ply 12"}};
    drawer["opening"] = {{"depth", "20"}};
    bank["opening"]["height"] = "14";
    bank["case"] = {{"left", "3/4"}, {"right", "3/4"}, {"top", "3/4"}, {"bottom", "3/4"}};
    bank["drawers"] = {name};
    Files faces;
    const auto add_with = [&](const checker::Json& more, std::size_t wanted) {
        checker::Json with = bank;
        with.update(more);
        job["banks"] = {with};
        Files jobs;
        add(jobs, job.dump(2));
        const whole::Run run = whole::run_program({"faces", jobs.back()->path(), "--json"});
        CHECK(run.err == "");
        add(faces, run.out);
        CHECK(checker::Json::parse(run.out)["banks"][0]["faces"].size() == wanted);
    };
    add_with({{"reveal", "1/8"}}, 2);
    add_with({{"style", "inset"}, {"handles", {{"centres", "96 mm"}}}}, 2);
    add_with({{"heights", "in proportion"}, {"parts", {1, 1}}, {"handles", {{"holes", 1}}}}, 2);
    add_with(
        {{"style", "inset"}, {"heights", "given"}, {"face_heights", {"6 3/8", nullptr}}, {"rail", "3/4"}}, 2);
    job.erase("banks");
    drawer["opening"] = {{"width", "12"}, {"height", "6"}, {"depth", "20"}};
    Files jobs;
    add(jobs, job.dump(2));
    add(faces, whole::run_program({"faces", jobs.back()->path(), "--json"}).out);
    CHECK(are_valid(faces, "faces"));
    checker::Json wrong = checker::Json::parse(faces.front()->text());
    wrong["banks"][0]["faces"][0].erase("height_mm");
    Files without_height;
    add(without_height, wrong.dump(2));
    CHECK_FALSE(are_valid(without_height, "faces"));
}

TEST_CASE("a handle with two holes needs their centres, and two are meant where none are told") {
    const auto valid_with = [](const char* handles) {
        checker::Json job = checker::Json::parse(demo());
        job["banks"] = {{{"name", "left"},
                         {"drawers", {"twine"}},
                         {"opening", {{"width", "15"}, {"height", "8"}}},
                         {"handles", checker::Json::parse(handles)}}};
        Files files;
        add(files, job.dump(2));
        return are_valid(files, "job");
    };
    CHECK(valid_with(R"({"holes": 1})"));
    CHECK(valid_with(R"({"centres": "96 mm"})"));
    CHECK_FALSE(valid_with("{}"));
    CHECK_FALSE(valid_with(R"({"holes": 2})"));
}

TEST_CASE("a job with its log, and each correction, are as their schemas say") {
    whole::forget_everything();
    Files jobs, corrections;
    add(jobs, demo());
    const std::string& job = jobs.front()->path();
    const std::string dado = whole::setup_of(job, "locking rabbet: side dado", "twine");
    for (const std::vector<std::string>& said : {std::vector<std::string>{"--read", "fit=-0.2 mm"},
                                                 {"--read", "face_step=0.1 mm", "--fresh-end"},
                                                 {"--felt", "hand tight", "--moved", "height=0.1 mm"},
                                                 {"--seen", "flush", "--with", "rule", "--sure"}}) {
        std::vector<std::string> words{"fit", job, "--setup", dado, "--json", "--save"};
        words.insert(words.end(), said.begin(), said.end());
        add(corrections, whole::run_program(words).out);
    }
    CHECK(whole::run_program({"lock", job, "--setup", dado, "--anyway"}).status == 0);
    Files shops;
    add(shops, kw::tests::text_in(whole::data_folder() + "/shop.json"));
    CHECK(are_valid(shops, "shop"));
    CHECK_FALSE(are_valid(jobs, "shop"));
    CHECK(are_valid(corrections, "correction"));
    CHECK(are_valid(jobs, "job"));
    CHECK_FALSE(are_valid(jobs, "correction"));  // so that the validator is seen to refuse
}

TEST_CASE(
    "a job whose boards and sheets are broken down, and its plan before and after, are as their schemas "
    "say") {
    whole::forget_everything();
    checker::Json sized = checker::Json::parse(demo());
    for (checker::Json& stock : sized["stock"])
        stock["sizes"] = {{{"length", "60"}, {"width", "30"}},
                          {{"length", "40"}, {"width", "30"}, {"offcut", true}}};
    Files jobs, plans;
    add(jobs, sized.dump(2));
    const std::string& job = jobs.front()->path();
    const auto add_plan = [&] { add(plans, whole::run_program({"plan", job, "--json"}).out); };
    add_plan();
    for (const checker::Json& stock : sized["stock"]) {
        REQUIRE(whole::run_program({"ran", job, "--stock", stock["name"].get<std::string>()}).status == 0);
        add_plan();
    }
    CHECK(are_valid(jobs, "job"));
    CHECK(are_valid(plans, "plan"));
    sized["log"] = {{{"kind", "broken down"}, {"stock", "ply"}, {"freed", {{{"part", "x"}}}}}};
    Files wrong;
    add(wrong, sized.dump(2));
    CHECK_FALSE(are_valid(wrong, "job"));  // a part that was freed has its size
}
