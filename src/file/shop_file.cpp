#include "file/shop_file.h"

#include <cmath>

#include "file/fields.h"

namespace kw {
namespace {

constexpr double most_off_mm = 5.0;

Lesson read_lesson(Fields fields) {
    Lesson lesson;
    lesson.what = fields.one_of("what", taught_named,
                                {"fence", "height", "kerf", "fence moves", "height moves"}, Taught::fence);
    lesson.machine = fields.required_text("machine");
    lesson.cutter = fields.text("cutter", {});
    lesson.kerf = fields.length("kerf", {});
    lesson.value = fields.number("value", 0.0);
    lesson.spread = fields.number("spread", 0.0);
    if (!(lesson.spread > 0.0))
        fields.blame("spread", Message::say("file.lesson_spread"), Message::say("file.gain_usual"));
    if (std::abs(lesson.value) > most_off_mm)
        fields.blame("value", Message::say("file.lesson_value"), Message::say("file.lesson_most"));
    lesson.tests = fields.count("tests", 0, 0, 1'000'000);
    lesson.time = fields.text("time", {});
    lesson.began = fields.text("began", {});
    lesson.job = fields.text("job", {});
    lesson.group = fields.text("group", {});
    lesson.by_hand = fields.truth("by_hand", false);
    return lesson;
}

Json lesson_json(const Lesson& lesson) {
    Json out = {{"what", name_of(lesson.what)}, {"machine", lesson.machine},
                {"cutter", lesson.cutter},      {"kerf", exact_text(lesson.kerf, Unit::millimetre)},
                {"value", lesson.value},        {"spread", lesson.spread},
                {"tests", lesson.tests},        {"time", lesson.time}};
    if (lesson.by_hand) out["by_hand"] = true;
    if (!lesson.began.empty()) out["began"] = lesson.began;
    if (!lesson.job.empty()) out["job"] = lesson.job;
    if (!lesson.group.empty()) out["group"] = lesson.group;
    return out;
}

}  // namespace

Json as_shop(Json shop) {
    if (!shop.is_object()) shop = Json::object();
    if (!shop.contains("format")) shop["format"] = "kerfwright-shop";
    if (!shop.contains("version")) shop["version"] = shop_version;
    return shop;
}

Memory read_memory(const Json& shop, std::vector<Problem>& problems, Asked* asked) {
    Fields fields(&shop, "", Unit::millimetre, problems, asked);
    if (const std::string format = fields.text("format", "kerfwright-shop"); format != "kerfwright-shop")
        fields.blame("format", Message::say("file.no_shop", format), Message::say("file.shop_format"));
    if (const int version = fields.count("version", shop_version, 1, 1'000'000); version > shop_version)
        fields.blame("version", Message::say("file.shop_version", version, shop_version),
                     Message::say("file.newer_program"));
    Memory memory;
    for (Fields& item : fields.array("lessons")) memory.lessons.push_back(read_lesson(item));
    return memory;
}

tl::expected<Memory, std::vector<Problem>> read_memory(const Json& shop) {
    std::vector<Problem> problems;
    if (!shop.is_object())
        return tl::unexpected(std::vector<Problem>{
            {"", Message::say("file.shop_is_object"), Message::say("file.write_object")}});
    Memory memory = read_memory(shop, problems, nullptr);
    read_preferences(shop, problems, nullptr);
    if (!problems.empty()) return tl::unexpected(std::move(problems));
    return memory;
}

Json with_memory(Json shop, const Memory& memory) {
    shop = as_shop(std::move(shop));
    shop["lessons"] = Json::array();
    for (const Lesson& lesson : memory.lessons) shop["lessons"].push_back(lesson_json(lesson));
    return shop;
}

void add_shop(Json& job, const Json& shop) {
    if (!job.is_object() || !shop.is_object()) return;
    for (const char* own : {"machines", "cutters", "times"})
        if (!job.contains(own) && shop.contains(own)) job[own] = shop[own];
    const auto reading = read_preferences(shop).reading;
    const auto unit = job.find("unit");
    const bool in_inches = unit == job.end() || *unit == "in";
    if (!job.contains("reading") && reading && (unit_of(*reading) == Unit::inch) == in_inches)
        job["reading"] = name_of(*reading);
}

tl::expected<ShopFile, FileError> read_shop_file(const std::filesystem::path& file) {
    std::error_code error;
    if (file.empty() || !std::filesystem::exists(file, error)) return ShopFile{};
    auto text = read_file(file);
    if (!text) return tl::unexpected(text.error());
    auto json = parse_json(*text);
    if (!json) return tl::unexpected(json.error());
    return ShopFile{std::move(*text), std::move(*json)};
}

tl::expected<void, FileError> save_shop_file(const std::filesystem::path& file, const ShopFile& read,
                                             const Json& json) {
    return read.text ? save_over(file, *read.text, to_text(json)) : save_file(file, to_text(json));
}

}  // namespace kw
