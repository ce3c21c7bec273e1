// What stands under `preferences` in the shop's file.

#include "file/fields.h"
#include "file/read_job.h"
#include "file/shop_file.h"

namespace kw {
namespace {

std::optional<Hand> hand_named(std::string_view name) {
    if (name == "left") return Hand::left;
    if (name == "right") return Hand::right;
    return std::nullopt;
}

std::optional<CutterSide> side_named(std::string_view name) {
    if (name == "near side") return CutterSide::near;
    if (name == "far side") return CutterSide::far;
    return std::nullopt;
}

std::optional<Language> language_named(std::string_view name) {
    for (const Language language : all_languages)
        if (tag_of(language) == name) return language;
    return std::nullopt;
}

std::optional<bool> is_dark_named(std::string_view name) {
    if (name == "dark") return true;
    if (name == "light") return false;
    return std::nullopt;
}

}  // namespace

Preferences read_preferences(const Json& shop, std::vector<Problem>& problems, Asked* asked) {
    Fields all(&shop, "", Unit::millimetre, problems, asked);
    Fields fields = all.object("preferences");
    Preferences out;
    out.language = fields.one_of("language", language_named, {"en-US", "en-GB", "de"}, Language::english);
    if (fields.has("reading"))
        out.reading = fields.one_of("reading", graduation_named, graduation_choice(), Graduation::in_64);
    out.fence_to = fields.one_of("fence_to", side_named, {"near side", "far side"}, CutterSide::near);
    out.fence_stands = fields.one_of("fence_stands", hand_named, {"left", "right"}, Hand::right);
    out.works_with = fields.one_of("works_with", hand_named, {"left", "right"}, Hand::right);
    out.is_dark = fields.one_of("theme", is_dark_named, {"light", "dark"}, false);
    out.size_percent = fields.count("size_percent", 100, least_size, most_size);
    out.sounds = fields.truth("sounds", false);
    return out;
}

Preferences read_preferences(const Json& shop) {
    std::vector<Problem> problems;
    return read_preferences(shop.is_object() ? shop : Json::object(), problems, nullptr);
}

Json with_preferences(Json shop, const Preferences& preferences) {
    const Preferences usual;
    const auto side = [](Hand hand) { return hand == Hand::left ? "left" : "right"; };
    // What a newer program has written there stays.
    Json out = Json::object();
    if (shop.is_object() && shop.contains("preferences") && shop["preferences"].is_object())
        out = shop["preferences"];
    const auto put = [&](const char* name, bool is_usual, Json value) {
        if (is_usual) out.erase(name);
        else out[name] = std::move(value);
    };
    put("language", preferences.language == usual.language, tag_of(preferences.language));
    put("reading", !preferences.reading, preferences.reading ? Json(name_of(*preferences.reading)) : Json());
    put("fence_to", preferences.fence_to == usual.fence_to, "far side");
    put("fence_stands", preferences.fence_stands == usual.fence_stands, side(preferences.fence_stands));
    put("works_with", preferences.works_with == usual.works_with, side(preferences.works_with));
    put("theme", preferences.is_dark == usual.is_dark, "dark");
    put("size_percent", preferences.size_percent == usual.size_percent, preferences.size_percent);
    put("sounds", preferences.sounds == usual.sounds, preferences.sounds);
    shop = as_shop(std::move(shop));
    if (out.empty()) shop.erase("preferences");
    else shop["preferences"] = std::move(out);
    return shop;
}

}  // namespace kw
