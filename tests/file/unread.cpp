// A field that nothing reads is likely misspelt: it is told of, with its place, and kept all the same.
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "file/shop_file.h"
#include "file/unread.h"
#include "sample_job.h"

using namespace kw;

namespace {

std::vector<std::string> said(const std::vector<Problem>& unread) {
    std::vector<std::string> all;
    for (const Problem& one : unread)
        all.push_back(one.pointer + ": " + one.why.text(Graduation::in_64) +
                      (one.remedy.empty() ? "" : "; " + one.remedy.text(Graduation::in_64)));
    return all;
}

std::vector<std::string> said_of(const Json& job) { return said(unread_in_job(job)); }

// "height" under another name.
Json renamed(Json job, const std::string& pointer, const std::string& from, const std::string& to) {
    Json& at = job[Json::json_pointer(pointer)];
    at[to] = at[from];
    at.erase(from);
    return job;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a misspelt field is told of where it stands, with what was likely meant") {
    CHECK(said_of(renamed(tests::sample_json(), "/drawers/0/opening", "height", "hieght")) ==
          Lines{"/drawers/0/opening/hieght: nothing here is called \"hieght\"; did you mean \"height\"?"});
    Json job = tests::sample_json();
    job["drawers"][0]["Count"] = 3;
    job["fit"]["tolerance"]["shoulder-gap"] = "0.1 mm";
    job["cutters"][0]["spare_chiper"] = {"1/8"};
    job["machnies"] = Json::array();
    CHECK(said_of(job) ==
          Lines{"/fit/tolerance/shoulder-gap: nothing here is called \"shoulder-gap\"; did you mean "
                "\"shoulder_gap\"?",
                "/cutters/0/spare_chiper: nothing here is called \"spare_chiper\"; did you mean "
                "\"spare_chippers\"?",
                "/drawers/0/Count: nothing here is called \"Count\"; did you mean \"count\"?",
                "/machnies: nothing here is called \"machnies\"; did you mean \"machines\"?"});
}

TEST_CASE("where nothing is near, or the field belongs elsewhere, nothing is suggested") {
    Json job = tests::sample_json();
    job["drawers"][0]["front"]["setback"] = "1";
    job["drawers"][0]["colour"] = "green";
    CHECK(said_of(job) == Lines{"/drawers/0/front/setback: nothing here is called \"setback\"",
                                "/drawers/0/colour: nothing here is called \"colour\""});
}

TEST_CASE("fields of other programs are let be, and so is all that stands in them") {
    Json job = tests::sample_json();
    job["x-cut-list"] = {{"hieght", 1}};
    job["drawers"][0]["_note"] = "for the left bench";
    job["$schema"] = "job.schema.json";
    CHECK(said_of(job).empty());
}

TEST_CASE("all that the program reads and writes is known to it") {
    for (const char* folder : {KW_ASSET_DIR, KW_TEST_DIR "/files"})
        for (const auto& file : std::filesystem::directory_iterator(folder)) {
            if (file.path().extension() != ".json") continue;
            CAPTURE(file.path().string());
            const auto json = parse_json(read_file(file.path()).value());
            REQUIRE(json);
            CHECK(said_of(*json) == Lines{});
        }
}

TEST_CASE("every field that the schemas describe is read, and none else is suggested") {
    const auto schema = [](const char* name) {
        return parse_json(read_file(std::string(KW_ASSET_DIR "/schemas/") + name).value()).value();
    };
    Json job = tests::sample_json();
    const Json described = schema("job.schema.json");
    // At the places that have fields alone, whatever stands in them.
    const auto fill = [&](Json& object, const Json& properties) {
        for (const auto& field : properties.items())
            if (!object.contains(field.key())) object[field.key()] = nullptr;
    };
    fill(job, described["properties"]);
    for (const char* part : {"fit", "climate", "times", "pins", "cutting"}) {
        if (!job[part].is_object()) job[part] = Json::object();
        fill(job[part], described["properties"][part]["properties"]);
    }
    for (const char* list : {"stock", "machines", "cutters"})
        fill(job[list][0], described["properties"][list]["items"]["properties"]);
    job["stock"][0]["banding"] = {{"thickness", nullptr}, {"edges", nullptr}};
    const Json& sizes =
        described["properties"]["stock"]["items"]["properties"]["sizes"]["items"]["properties"];
    job["stock"][0]["sizes"] = Json::array({Json::object()});
    fill(job["stock"][0]["sizes"][0], sizes);
    job["stock"][0]["sizes"][0]["defects"] = Json::array({Json::object()});
    fill(job["stock"][0]["sizes"][0]["defects"][0], sizes["defects"]["items"]["properties"]);
    const Json& drawer = described["$defs"]["drawer"]["properties"];
    fill(job["drawers"][0], drawer);
    job["drawers"][0]["assembled"] = Json::object();
    for (const char* part : {"slide", "sides", "front", "back", "bottom", "face"})
        fill(job["drawers"][0][part], drawer[part]["properties"]);
    job["drawers"][0]["face"]["banding"] = {{"thickness", nullptr}, {"edges", nullptr}};
    const Json& defined = described["$defs"];
    Json &opening = job["drawers"][0]["opening"], &assembled = job["drawers"][0]["assembled"]["1"];
    fill(opening, defined["opening"]["properties"]);
    for (const char* part : {"survey", "frame"}) {
        opening[part] = Json::object();
        fill(opening[part], defined["opening"]["properties"][part]["properties"]);
    }
    assembled["gaps"] = Json::object();
    assembled["slides"] = Json::object();
    fill(assembled, defined["assembled"]["properties"]);
    fill(assembled["gaps"], defined["assembled"]["properties"]["gaps"]["properties"]);
    fill(assembled["slides"], defined["assembled"]["properties"]["slides"]["properties"]);
    Json bank = Json::object();
    fill(bank, defined["bank"]["properties"]);
    for (const char* part : {"opening", "case", "beside", "handles"}) {
        bank[part] = Json::object();
        fill(bank[part], defined["bank"]["properties"][part]["properties"]);
    }
    job["banks"] = Json::array({bank});
    CHECK(said_of(job) == Lines{});
    Json lesson = Json::object();
    fill(lesson, schema("shop.schema.json")["properties"]["lessons"]["items"]["properties"]);
    CHECK(said(unread_in_shop(Json{{"format", "kerfwright-shop"}, {"lessons", {lesson}}})) == Lines{});
}

TEST_CASE("a log's readings and moves have names of their own") {
    Json job = tests::sample_json();
    job["log"] = {{{"kind", "test"},
                   {"setup", "S1"},
                   {"readings", {{"fit", "0.1 mm"}}},
                   {"moved", 3},
                   {"fesh_end", true}}};
    CHECK(said_of(job) ==
          Lines{"/log/0/fesh_end: nothing here is called \"fesh_end\"; did you mean \"fresh_end\"?"});
}

TEST_CASE("a shop's file is looked through like a job, its machines and cutters too") {
    const Json shop = {{"format", "kerfwright-shop"},
                       {"machines", {{{"name", "saw"}, {"max_hieght", "3"}}}},
                       {"cutters", {{{"name", "stack"}, {"machine", "saw"}, {"kerf", "1/4"}}}},
                       {"times", {{"pas", 20}}},
                       {"lesons", Json::array()}};
    CHECK(said(unread_in_shop(shop)) ==
          Lines{"/machines/0/max_hieght: nothing here is called \"max_hieght\"; did you mean \"max_height\"?",
                "/times/pas: nothing here is called \"pas\"; did you mean \"pass\"?",
                "/lesons: nothing here is called \"lesons\"; did you mean \"lessons\"?"});
}

TEST_CASE("the place of a name is where its quotes open") {
    const std::string text = "{\n \"a\": { \"b\": 1,\n   \"½\": 2, \"c\": [ { \"d\": 3 } ] }\n}";
    const auto places = locate_names(text, {"/a/c/0/d", "/a/c"});
    CHECK(places[1].line == 3);
    CHECK(places[1].column == 12);
    CHECK(places[0].column == 21);
}

TEST_CASE("a name stands where it is written, with whatever escapes it is written") {
    const std::string text =
        "{\n \"a\": {\"b\": 1},\n \"h\\u00f6he\": 2, \"a\\/b\": 3, \"say \\\"x\\\"\": 4\n}";
    REQUIRE(Json::parse(text).size() == 4);
    const auto places = locate_names(text, {"/h\u00f6he", "/a~1b", "/say \"x\""});
    CHECK(places[0].line == 3);
    CHECK(places[0].column == 2);
    CHECK(places[1].line == 3);
    CHECK(places[1].column == 18);
    CHECK(places[2].line == 3);
    CHECK(places[2].column == 29);
}
