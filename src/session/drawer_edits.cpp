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

bool gather_bank(Json& document, const Job& job) {
    if (!document.contains("drawers") || !document["drawers"].is_array()) return false;
    const Length rail = Length::inches(3, 4), reveal = BankSpec{}.reveal, over = (rail - reveal).scaled(1, 2);
    Json names = Json::array();
    std::optional<Length> width;
    FaceStyle style = FaceStyle::none;
    for (std::size_t i = 0; i < job.drawers.size() && i < document["drawers"].size(); ++i) {
        const DrawerSpec& spec = job.drawers[i];
        Json& drawer = document["drawers"][i];
        if (!spec.opening || spec.box || spec.face.in_bank || !drawer.is_object()) continue;
        if (width && abs(*width - spec.opening->width) > over) continue;
        names.push_back(spec.name);
        width = width ? min(*width, spec.opening->width) : spec.opening->width;
        if (style == FaceStyle::none) style = spec.face.style;
        if (!drawer.contains("face") || !drawer["face"].is_object()) continue;
        for (const char* field : {"style", "left", "right", "top", "bottom", "reveal"})
            drawer["face"].erase(field);
    }
    if (names.empty()) return false;
    const bool inset = style == FaceStyle::inset;
    const bool is_first = job.banks.empty();
    Json bank = {{"name", is_first ? std::string("bank") : free_name(document["banks"], "bank")},
                 {"drawers", std::move(names)},
                 {"style", inset ? "inset" : "overlay"},
                 {"opening", {{"width", exact_text(*width, job.unit)}}},
                 {"rail", exact_text(rail, job.unit)},
                 {"reveal", exact_text(reveal, job.unit)},
                 {"heights", "by opening"}};
    // So that faces of one name are alike, also where one of them is at an end.
    for (const char* end : {"left", "right", "top", "bottom"})
        bank[end] = exact_text(inset ? reveal : over, job.unit);
    Json& banks = document["banks"];
    if (!banks.is_array()) banks = Json::array();
    banks.push_back(std::move(bank));
    return true;
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
