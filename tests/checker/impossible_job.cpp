#include "checker/impossible_job.h"

#include <string>
#include <vector>

#include "checker/dice.h"

namespace checker {
namespace {

Json number_between(Dice& dice, std::int64_t low, std::int64_t high) { return dice.between(low, high); }

// Field by field: deeply nested braces of this JSON type cost the compiler minutes.
Json stock_entry(const char* name, const Json& thickness) {
    Json entry;
    entry["name"] = name;
    entry["thickness"] = thickness;
    entry["kind"] = "plywood";
    return entry;
}

Json machine_entry(const char* name, const char* kind) {
    Json entry;
    entry["name"] = name;
    entry["kind"] = kind;
    return entry;
}

Json cutter_entry(const char* name, const char* kind, const char* kerf) {
    Json entry;
    entry["name"] = name;
    entry["kind"] = kind;
    entry["machine"] = "saw";
    entry["kerf"] = kerf;
    return entry;
}

Json right_drawer(const std::string& name, Dice& dice) {
    Json drawer;
    drawer["name"] = name;
    drawer["count"] = number_between(dice, 1, 3);
    drawer["opening"]["width"] = number_between(dice, 350, 700);
    drawer["opening"]["height"] = number_between(dice, 120, 260);
    drawer["opening"]["depth"] = 500;
    drawer["slide"]["kind"] = "side mount";
    drawer["slide"]["side"] = "12.7";
    drawer["slide"]["top"] = 12;
    drawer["slide"]["bottom"] = 6;
    drawer["slide"]["back"] = 10;
    drawer["front"]["stock"] = "ply 12";
    drawer["front"]["joint"] = "locking rabbet";
    drawer["sides"]["stock"] = "ply 12";
    drawer["back"]["stock"] = "ply 12";
    drawer["back"]["joint"] = "dado";
    drawer["back"]["setback"] = 25;
    drawer["back"]["depth"] = 5;
    drawer["bottom"]["stock"] = "ply 6";
    drawer["bottom"]["joint"] = "groove";
    drawer["bottom"]["offset"] = 10;
    drawer["bottom"]["depth"] = 4;
    drawer["bottom"]["style"] = "slide in";
    return drawer;
}

// A plain job of one to three drawers in millimetres, the thing to be planted in the last. All stock is 12 mm but the panel.
Json right_job(Dice& dice) {
    Json job;
    job["format"] = "kerfwright-job";
    job["version"] = 1;
    job["name"] = "impossible";
    job["unit"] = "mm";
    job["fit"]["clearance"] = 0.1;
    job["fit"]["end_relief"] = 0.4;
    job["fit"]["groove_clearance"] = 0.25;
    job["fit"]["bottom_slack"] = 0.8;
    job["fit"]["step"] = 0;
    for (const Json& entry : {stock_entry("ply 12", 12), stock_entry("ply 6", 5.6)})
        job["stock"].push_back(entry);
    Json saw = machine_entry("saw", "table saw");
    saw["max_dado_width"] = 20;
    saw["max_height"] = 75;
    for (const Json& entry : {saw, machine_entry("chop", "miter saw")}) job["machines"].push_back(entry);
    job["cutters"].push_back(cutter_entry("quarter stack", "dado stack", "1/4 in"));
    job["cutters"].push_back(cutter_entry("ripping blade", "blade", "1/8 in"));
    const std::int64_t drawers = dice.between(1, 3);
    for (std::int64_t i = 1; i <= drawers; ++i)
        job["drawers"].push_back(right_drawer("drawer " + std::to_string(i), dice));
    job["log"] = Json::array();
    return job;
}

Json& last_drawer(Json& job) { return job["drawers"].back(); }

struct Planting {
    const char* reason;
    // Spoils the job, and returns the word.
    std::string (*plant)(Json& job, Dice& dice);
};

// ---- geometry

std::string thin_web(Json& job, Dice& dice) {
    last_drawer(job)["front"]["depth"] = number_between(dice, 9, 11);
    return "web";
}

std::string dado_through_side(Json& job, Dice& dice) {
    last_drawer(job)["front"]["depth"] = number_between(dice, 12, 15);
    return "web";
}

std::string groove_through_tongue(Json& job, Dice&) {
    last_drawer(job)["front"]["dado_width"] = 4.5;
    last_drawer(job)["bottom"]["depth"] = 5;
    return "tongue";
}

// More than half is weak, and told; what leaves less than a third is refused, as under a dado.
std::string groove_over_two_thirds(Json& job, Dice& dice) {
    last_drawer(job)["bottom"]["depth"] = number_between(dice, 9, 11);
    return "groove";
}

std::string named_cutter_over_arbor(Json& job, Dice&) {
    job["stock"].push_back(stock_entry("ply 18", 18));
    last_drawer(job)["front"]["stock"] = "ply 18";
    last_drawer(job)["sides"]["stock"] = "ply 18";
    last_drawer(job)["front"]["cutter"] = "five eighths stack";
    job["machines"][0]["max_dado_width"] = 13;
    job["cutters"].push_back(cutter_entry("five eighths stack", "dado stack", "5/8 in"));
    return "arbor";
}

std::string all_cutters_over_arbor(Json& job, Dice&) {
    job["machines"][0]["max_dado_width"] = "1/16 in";
    return "arbor";
}

std::string slide_over_case(Json& job, Dice& dice) {
    for (const Json& length : {number_between(dice, 510, 600), Json(650), Json(700)})
        last_drawer(job)["slide"]["lengths"].push_back(length);
    return "slide";
}

std::string opening_under_width(Json& job, Dice& dice) {
    last_drawer(job)["opening"]["width"] = number_between(dice, 5, 25);
    return "opening";
}

std::string opening_under_height(Json& job, Dice& dice) {
    last_drawer(job)["opening"]["height"] = number_between(dice, 3, 18);
    return "opening";
}

std::string opening_under_depth(Json& job, Dice& dice) {
    last_drawer(job)["opening"]["depth"] = number_between(dice, 2, 10);
    return "opening";
}

std::string setback_over_depth(Json& job, Dice& dice) {
    last_drawer(job)["back"]["setback"] = number_between(dice, 480, 600);
    return "setback";
}

std::string dado_wider_than_front(Json& job, Dice& dice) {
    last_drawer(job)["front"]["dado_width"] = number_between(dice, 13, 20);
    return "dado";
}

std::string tongue_through_back(Json& job, Dice& dice) {
    last_drawer(job)["back"]["joint"] = "tongue and dado";
    last_drawer(job)["back"]["dado_width"] = number_between(dice, 11, 20);
    return "make the dado at most 10";
}

std::string back_tongue_too_thin(Json& job, Dice&) {
    last_drawer(job)["back"]["joint"] = "tongue and dado";
    last_drawer(job)["back"]["dado_width"] = 1.5;
    return "tongue";
}

std::string web_behind_back_tongue(Json& job, Dice& dice) {
    last_drawer(job)["back"]["joint"] = "tongue and dado";
    last_drawer(job)["back"]["depth"] = number_between(dice, 9, 15);
    return "web";
}

std::string groove_through_back_tongue(Json& job, Dice&) {
    last_drawer(job)["back"]["joint"] = "tongue and dado";
    last_drawer(job)["back"]["dado_width"] = 4.5;
    last_drawer(job)["bottom"]["style"] = "captured";
    last_drawer(job)["bottom"]["depth"] = 5;
    return "through the back's tongue";
}

std::string back_tongue_in_front(Json& job, Dice&) {
    last_drawer(job)["front"]["joint"] = "tongue and dado";
    return "tongue and dado";
}

// ---- names

std::string unknown_stock(Json& job, Dice& dice) {
    const std::vector<std::string> parts{"front", "sides", "back", "bottom"};
    last_drawer(job)[dice.one_of(parts)]["stock"] = "elm 77";
    return "elm 77";
}

std::string unknown_front_joint(Json& job, Dice&) {
    last_drawer(job)["front"]["joint"] = "sliding wedge";
    return "sliding wedge";
}

std::string unknown_back_joint(Json& job, Dice&) {
    last_drawer(job)["back"]["joint"] = "sliding wedge";
    return "sliding wedge";
}

std::string unknown_cutter(Json& job, Dice& dice) {
    const std::vector<std::string> parts{"front", "back", "bottom"};
    last_drawer(job)[dice.one_of(parts)]["cutter"] = "lost stack";
    return "lost stack";
}

std::string unknown_machine(Json& job, Dice&) {
    job["cutters"][0]["machine"] = "lost saw";
    return "lost saw";
}

std::string unknown_machine_kind(Json& job, Dice&) {
    job["machines"][1]["kind"] = "scroll mill";
    return "scroll mill";
}

std::string unknown_slide(Json& job, Dice&) {
    last_drawer(job)["slide"]["kind"] = "magnetic rail";
    return "magnetic rail";
}

std::string unknown_bottom_style(Json& job, Dice&) {
    last_drawer(job)["bottom"]["style"] = "floating";
    return "floating";
}

std::string unknown_face_style(Json& job, Dice&) {
    last_drawer(job)["face"]["style"] = "tilted";
    return "tilted";
}

std::string unknown_unit(Json& job, Dice&) {
    job["unit"] = "cubit";
    return "cubit";
}

// ---- values

std::string thickness_not_positive(Json& job, Dice& dice) {
    const std::vector<Json> thicknesses{0, -12, "0", "0 mm", "1/2 in - 1/2 in", "5 - 12"};
    job["stock"][0]["thickness"] = dice.one_of(thicknesses);
    return "thickness";
}

std::string kerf_not_positive(Json& job, Dice& dice) {
    const std::vector<Json> kerfs{0, -3, "0 in"};
    job["cutters"][0]["kerf"] = dice.one_of(kerfs);
    return "kerf";
}

std::string count_not_positive(Json& job, Dice& dice) {
    last_drawer(job)["count"] = number_between(dice, -2, 0);
    return "count";
}

std::string bad_length_text(Json& job, Dice& dice) {
    const std::vector<std::string> texts{"12..5",    "3/0",  "3 1/",    "1/2/4",      "twelve",
                                         "12 yards", "12 +", "4 mm mm", "14 3/8 3/8", ""};
    const std::string text = dice.one_of(texts);
    last_drawer(job)["opening"]["width"] = text;
    return text.empty() ? "width" : text;
}

std::string length_of_wrong_type(Json& job, Dice& dice) {
    const std::vector<Json> wrong{true, nullptr, Json::array(), Json::object()};
    last_drawer(job)["opening"]["depth"] = dice.one_of(wrong);
    return "depth";
}

// ---- fields

std::string no_thickness(Json& job, Dice&) {
    job["stock"][1].erase("thickness");
    return "thickness";
}

std::string no_part(Json& job, Dice& dice) {
    const std::vector<std::string> parts{"front", "sides", "back", "bottom"};
    const std::string& part = dice.one_of(parts);
    last_drawer(job).erase(part);
    return part;
}

std::string no_stock_named(Json& job, Dice&) {
    last_drawer(job)["sides"].erase("stock");
    return "stock";
}

std::string no_opening(Json& job, Dice&) {
    last_drawer(job).erase("opening");
    return "opening";
}

std::string no_opening_height(Json& job, Dice&) {
    last_drawer(job)["opening"].erase("height");
    return "height";
}

std::string inset_without_stock(Json& job, Dice&) {
    last_drawer(job)["face"]["style"] = "inset";
    for (const char* edge : {"left", "right", "top", "bottom"}) last_drawer(job)["face"][edge] = 2;
    return "stock";
}

std::string other_format(Json& job, Dice&) {
    job["format"] = "cupboard-job";
    return "cupboard-job";
}

std::string newer_version(Json& job, Dice&) {
    job["version"] = 99;
    return "99";
}

const std::vector<Planting>& plantings() {
    static const std::vector<Planting> all{
        {"web too thin", thin_web},
        {"dado through the side", dado_through_side},
        {"groove through the tongue", groove_through_tongue},
        {"groove deeper than two thirds", groove_over_two_thirds},
        {"named cutter wider than the arbor takes", named_cutter_over_arbor},
        {"all cutters wider than the arbor takes", all_cutters_over_arbor},
        {"slide longer than the case", slide_over_case},
        {"opening narrower than the clearances", opening_under_width},
        {"opening lower than the clearances", opening_under_height},
        {"opening less deep than the clearance", opening_under_depth},
        {"setback beyond the front", setback_over_depth},
        {"dado wider than the front is thick", dado_wider_than_front},
        {"dado as wide as a tongued back is thick", tongue_through_back},
        {"back's tongue too thin", back_tongue_too_thin},
        {"web too thin behind a back's tongue", web_behind_back_tongue},
        {"groove through the back's tongue", groove_through_back_tongue},
        {"a back's joint in front", back_tongue_in_front},
        {"unknown stock", unknown_stock},
        {"unknown joint of the front", unknown_front_joint},
        {"unknown joint of the back", unknown_back_joint},
        {"unknown cutter", unknown_cutter},
        {"unknown machine", unknown_machine},
        {"unknown kind of machine", unknown_machine_kind},
        {"unknown slide", unknown_slide},
        {"unknown style of bottom", unknown_bottom_style},
        {"unknown style of face", unknown_face_style},
        {"unknown unit", unknown_unit},
        {"thickness not above zero", thickness_not_positive},
        {"kerf not above zero", kerf_not_positive},
        {"count not above zero", count_not_positive},
        {"text that is no length", bad_length_text},
        {"length of the wrong type", length_of_wrong_type},
        {"stock without thickness", no_thickness},
        {"drawer without a part", no_part},
        {"part without stock", no_stock_named},
        {"drawer without opening", no_opening},
        {"opening without height", no_opening_height},
        {"inset face without stock", inset_without_stock},
        {"other format", other_format},
        {"newer version", newer_version},
    };
    return all;
}

}  // namespace

std::uint64_t impossible_reasons() { return plantings().size(); }

ImpossibleJob impossible_job(std::uint64_t seed) {
    Dice dice(seed);
    const Planting& planting = plantings()[static_cast<std::size_t>(seed % impossible_reasons())];
    ImpossibleJob result{planting.reason, right_job(dice), ""};
    result.word = planting.plant(result.job, dice);
    return result;
}

}  // namespace checker
