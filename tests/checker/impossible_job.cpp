#include "checker/impossible_job.h"

#include <string>
#include <vector>

#include "checker/dice.h"

namespace checker {
namespace {

Json number_between(Dice& dice, std::int64_t low, std::int64_t high) { return dice.between(low, high); }

// A plain job of one to three drawers in millimetres, the thing to be planted in the last. All stock is 12 mm but the panel.
Json right_job(Dice& dice) {
    Json job{{"format", "kerfwright-job"}, {"version", 1}, {"name", "impossible"}, {"unit", "mm"}};
    job["fit"] = {{"clearance", 0.1}, {"end_relief", 0.4}, {"groove_clearance", 0.25}, {"bottom_slack", 0.8}, {"step", 0}};
    job["stock"] = Json::array({{{"name", "ply 12"}, {"thickness", 12}, {"kind", "plywood"}},
                                {{"name", "ply 6"}, {"thickness", 5.6}, {"kind", "plywood"}}});
    job["machines"] = Json::array(
        {{{"name", "saw"}, {"kind", "table saw"}, {"max_dado_width", 20}, {"max_height", 75}},
         {{"name", "chop"}, {"kind", "miter saw"}}});
    job["cutters"] = Json::array(
        {{{"name", "quarter stack"}, {"kind", "dado stack"}, {"machine", "saw"}, {"kerf", "1/4 in"}},
         {{"name", "ripping blade"}, {"kind", "blade"}, {"machine", "saw"}, {"kerf", "1/8 in"}}});
    job["drawers"] = Json::array();
    const std::int64_t drawers = dice.between(1, 3);
    for (std::int64_t i = 1; i <= drawers; ++i) {
        Json drawer{{"name", "drawer " + std::to_string(i)}, {"count", dice.between(1, 3)}};
        drawer["opening"] = {{"width", number_between(dice, 350, 700)}, {"height", number_between(dice, 120, 260)}, {"depth", 500}};
        drawer["slide"] = {{"kind", "side mount"}, {"side", "12.7"}, {"top", 12}, {"bottom", 6}, {"back", 10}};
        drawer["front"] = {{"stock", "ply 12"}, {"joint", "locking rabbet"}};
        drawer["sides"] = {{"stock", "ply 12"}};
        drawer["back"] = {{"stock", "ply 12"}, {"joint", "dado"}, {"setback", 25}, {"depth", 5}};
        drawer["bottom"] = {{"stock", "ply 6"}, {"joint", "groove"}, {"offset", 10}, {"depth", 4}, {"style", "slide in"}};
        job["drawers"].push_back(drawer);
    }
    job["log"] = Json::array();
    return job;
}

Json& last_drawer(Json& job) { return job["drawers"].back(); }

void add_stock(Json& job, const std::string& name, const Json& thickness) {
    job["stock"].push_back({{"name", name}, {"thickness", thickness}, {"kind", "plywood"}});
}

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

std::string groove_over_half(Json& job, Dice& dice) {
    last_drawer(job)["bottom"]["depth"] = number_between(dice, 8, 11);
    return "groove";
}

std::string named_cutter_over_arbor(Json& job, Dice&) {
    add_stock(job, "ply 18", 18);
    last_drawer(job)["front"]["stock"] = "ply 18";
    last_drawer(job)["sides"]["stock"] = "ply 18";
    last_drawer(job)["front"]["cutter"] = "five eighths stack";
    job["machines"][0]["max_dado_width"] = 13;
    job["cutters"].push_back({{"name", "five eighths stack"}, {"kind", "dado stack"}, {"machine", "saw"}, {"kerf", "5/8 in"}});
    return "arbor";
}

std::string all_cutters_over_arbor(Json& job, Dice&) {
    job["machines"][0]["max_dado_width"] = "1/16 in";
    return "arbor";
}

std::string slide_over_case(Json& job, Dice& dice) {
    last_drawer(job)["slide"]["lengths"] = {number_between(dice, 510, 600), 650, 700};
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
    last_drawer(job)["face"] = {{"style", "tilted"}};
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
    const std::vector<std::string> texts{"12..5", "3/0", "3 1/", "1/2/4", "twelve", "12 yards", "12 +", "4 mm mm", "14 3/8 3/8", ""};
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

std::string no_drawers(Json& job, Dice&) {
    job.erase("drawers");
    return "drawers";
}

std::string no_kerf(Json& job, Dice&) {
    job["cutters"][1].erase("kerf");
    return "kerf";
}

std::string inset_without_stock(Json& job, Dice&) {
    last_drawer(job)["face"] = {{"style", "inset"}, {"left", 2}, {"right", 2}, {"top", 2}, {"bottom", 2}};
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
        {"groove deeper than half", groove_over_half},
        {"named cutter wider than the arbor takes", named_cutter_over_arbor},
        {"all cutters wider than the arbor takes", all_cutters_over_arbor},
        {"slide longer than the case", slide_over_case},
        {"opening narrower than the clearances", opening_under_width},
        {"opening lower than the clearances", opening_under_height},
        {"opening less deep than the clearance", opening_under_depth},
        {"setback beyond the front", setback_over_depth},
        {"dado wider than the front is thick", dado_wider_than_front},
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
        {"job without drawers", no_drawers},
        {"cutter without kerf", no_kerf},
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
