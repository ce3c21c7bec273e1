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

namespace {

// Of a bank in the document: what it has for each of its rows.
constexpr const char* of_each_row[] = {"parts", "face_heights"};

int times_named(const Json& document, const Json& name) {
    int times = 0;
    for (const Json& bank : document["banks"])
        if (bank.is_object() && bank.contains("drawers") && bank["drawers"].is_array())
            times += static_cast<int>(std::count(bank["drawers"].begin(), bank["drawers"].end(), name));
    return times;
}

// How many copies a drawer of the document has, by name; 1 where it is not told.
int copies_of(const Json& document, const Json& name) {
    for (const Json& drawer : document["drawers"])
        if (drawer.is_object() && drawer.value("name", Json()) == name && drawer.contains("count") &&
            drawer["count"].is_number_integer())
            return drawer["count"].get<int>();
    return 1;
}

// Rows that a place in `drawers` takes up: a drawer that is named once stands there with all its copies.
int rows_at(const Json& document, const Json& name) {
    return times_named(document, name) == 1 ? copies_of(document, name) : 1;
}

// From row `first` of the bank on `was` rows become `now`; new ones are as the last of them.
void change_rows(Json& bank, int first, int was, int now) {
    for (const char* field : of_each_row) {
        if (!bank.contains(field) || !bank[field].is_array()) continue;
        Json& rows = bank[field];
        if (static_cast<int>(rows.size()) < first + was) continue;
        for (int row = was; row > now; --row) rows.erase(static_cast<std::size_t>(first + row - 1));
        for (int row = was; row < now; ++row) {
            const Json like = rows[static_cast<std::size_t>(first + row - 1)];
            rows.insert(rows.begin() + first + row, like);
        }
        if (rows.empty()) bank.erase(field);
    }
}

// The first row of each place in the bank's `drawers`.
std::vector<int> first_rows(const Json& document, const Json& bank) {
    std::vector<int> rows = {0};
    for (const Json& name : bank["drawers"]) rows.push_back(rows.back() + rows_at(document, name));
    return rows;
}

bool has_drawers(const Json& bank) {
    return bank.is_object() && bank.contains("drawers") && bank["drawers"].is_array();
}

void drop_empty_banks(Json& document) {
    Json kept = Json::array();
    for (Json& bank : document["banks"])
        if (!has_drawers(bank) || !bank["drawers"].empty()) kept.push_back(std::move(bank));
    if (kept.empty()) document.erase("banks");
    else document["banks"] = std::move(kept);
}

void take_place_out(const Json& document, Json& bank, std::size_t place) {
    const std::vector<int> rows = first_rows(document, bank);
    change_rows(bank, rows[place], rows[place + 1] - rows[place], 0);
    bank["drawers"].erase(place);
}

// Where the name stands last of all banks: the bank, and the place in it.
std::pair<Json*, std::size_t> last_place(Json& document, const Json& name) {
    std::pair<Json*, std::size_t> last{nullptr, 0};
    for (Json& bank : document["banks"])
        for (std::size_t i = 0; has_drawers(bank) && i < bank["drawers"].size(); ++i)
            if (bank["drawers"][i] == name) last = {&bank, i};
    return last;
}

}  // namespace

void leave_banks(Json& document, std::size_t drawer) {
    if (!document.contains("banks") || !document["banks"].is_array()) return;
    if (!document["drawers"][drawer].is_object()) return;
    const Json name = document["drawers"][drawer].value("name", Json());
    const Json before = document;
    for (Json& bank : document["banks"])
        for (std::size_t i = has_drawers(bank) ? bank["drawers"].size() : 0; i-- > 0;)
            if (bank["drawers"][i] == name) take_place_out(before, bank, i);
    drop_empty_banks(document);
}

void follow_count(Json& document, const Json& before, const Json::json_pointer& drawer, const Json& count) {
    if (drawer.parent_pointer().to_string() != "/drawers" || !before.contains(drawer)) return;
    if (!document.contains("banks") || !document["banks"].is_array()) return;
    if (!count.is_null() && !count.is_number_integer()) return;
    const Json name = before.at(drawer).value("name", Json());
    const int now = count.is_null() ? 1 : count.get<int>();
    const int times = times_named(before, name), was = copies_of(before, name);
    constexpr int most = 1000;  // more is refused where it is read
    if (now < 1 || now > most) return;
    if (times == 1) {
        const auto [bank, place] = last_place(document, name);
        return change_rows(*bank, first_rows(before, *bank)[place], was, now);
    }
    for (int i = times; i > now; --i) {
        const auto [bank, place] = last_place(document, name);
        take_place_out(before, *bank, place);
    }
    for (int i = times; i > 0 && i < now; ++i) {
        const auto [bank, place] = last_place(document, name);
        change_rows(*bank, first_rows(before, *bank)[place], 1, 2);
        Json& names = (*bank)["drawers"];
        names.insert(names.begin() + static_cast<std::ptrdiff_t>(place) + 1, name);
    }
    drop_empty_banks(document);
}

void follow_name(Json& document, const Json& before, const Json& now) {
    if (!before.is_string() || !now.is_string()) return;
    follow_in_banks(document, before, now);
    if (!document.contains("log") || !document["log"].is_array()) return;
    const std::string was = before.get<std::string>() + ".";
    const auto rename = [&](Json& holder) {
        if (!holder.is_object() || !holder.contains("part") || !holder["part"].is_string()) return;
        const std::string part = holder["part"].get<std::string>();
        // A name with a point in it may begin another drawer's.
        if (part.rfind(was, 0) == 0 &&
            std::count(part.begin(), part.end(), '.') == std::count(was.begin(), was.end(), '.') + 1)
            holder["part"] = now.get<std::string>() + part.substr(was.size() - 1);
    };
    for (Json& entry : document["log"]) {
        rename(entry);
        if (entry.is_object() && entry.contains("freed") && entry["freed"].is_array())
            for (Json& freed : entry["freed"]) rename(freed);
    }
}

bool gather_bank(Json& document, const Job& job, const std::string& called) {
    if (!document.contains("drawers") || !document["drawers"].is_array()) return false;
    const bool metric = job.unit != Unit::inch;
    const Length rail = metric ? Length::millimetres(19) : Length::inches(3, 4),
                 reveal = metric ? Length::millimetres(3) : BankSpec{}.reveal,
                 over = (rail - reveal).scaled(1, 2);
    Json names = Json::array();
    std::optional<Length> width, widest;
    std::optional<FaceStyle> style;
    for (std::size_t i = 0; i < job.drawers.size() && i < document["drawers"].size(); ++i) {
        const DrawerSpec& spec = job.drawers[i];
        Json& drawer = document["drawers"][i];
        if (!spec.opening || spec.box || spec.face.in_bank || !drawer.is_object()) continue;
        const Length its = face_opening(spec).width;
        if (width && max(*widest, its) - min(*width, its) > near_enough) continue;
        if (style && *style != spec.face.style) continue;
        style = spec.face.style;
        names.push_back(spec.name);
        width = width ? min(*width, its) : its;
        widest = widest ? max(*widest, its) : its;
        if (!drawer.contains("face") || !drawer["face"].is_object()) continue;
        for (const char* field : {"style", "left", "right", "top", "bottom", "reveal"})
            drawer["face"].erase(field);
    }
    if (names.empty()) return false;
    const bool inset = style == FaceStyle::inset;
    const bool is_first = job.banks.empty();
    Json bank = {{"name", is_first ? called : free_name(document["banks"], called)},
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
