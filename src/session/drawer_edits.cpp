#include "session/drawer_edits.h"

#include <algorithm>

namespace kw {

void forget_readings(Json& drawer, const std::optional<Opening>& opening) {
    drawer.erase("assembled");
    if (drawer.contains("opening") && !drawer["opening"].is_object()) return;
    if (!drawer.contains("opening") && !opening) return;
    Json& typed = drawer["opening"];
    if (typed.contains("survey")) {
        typed.erase("survey");
        typed.erase("frame");
    }
    if (!opening) return;
    const std::pair<const char*, Length> sizes[] = {
        {"width", opening->width}, {"height", opening->height}, {"depth", opening->depth}};
    for (const auto& [name, length] : sizes)
        if (!typed.contains(name)) typed[name] = exact_text(length, Unit::millimetre);
}

namespace {

void follow_in_banks(Json& document, const Json& before, const Json& now) {
    if (!document.contains("banks") || !document["banks"].is_array()) return;
    for (Json& bank : document["banks"]) {
        if (!bank.is_object() || !bank.contains("drawers") || !bank["drawers"].is_array()) continue;
        for (Json& name : bank["drawers"])
            if (name == before) name = now;
    }
}

}  // namespace

void follow_name(Json& document, const Json& before, const Json& now) {
    if (!before.is_string() || !now.is_string()) return;
    follow_in_banks(document, before, now);
    if (!document.contains("log") || !document["log"].is_array()) return;
    const std::string was = before.get<std::string>() + ".";
    for (Json& entry : document["log"]) {
        if (!entry.is_object() || !entry.contains("part") || !entry["part"].is_string()) continue;
        const std::string part = entry["part"].get<std::string>();
        // A name with a point in it may begin another drawer's.
        if (part.rfind(was, 0) == 0 &&
            std::count(part.begin(), part.end(), '.') == std::count(was.begin(), was.end(), '.') + 1)
            entry["part"] = now.get<std::string>() + part.substr(was.size() - 1);
    }
}

std::string free_name(const Json& drawers, const std::string& like) {
    const auto taken = [&](const std::string& name) {
        return std::any_of(drawers.begin(), drawers.end(),
                           [&](const Json& drawer) { return drawer.value("name", "") == name; });
    };
    for (int i = 2;; ++i) {
        const std::string name = like + " " + std::to_string(i);
        if (!taken(name)) return name;
    }
}

}  // namespace kw
