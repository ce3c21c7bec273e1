#include "file/unread.h"

#include <algorithm>

#include "file/shop_file.h"

namespace kw {
namespace {

std::string lowercase(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

// How many letters must be put in, left out, changed, or swapped with the next to come from one to the other; no pair of letters
// is touched twice (the optimal string alignment distance, by its recurrence).
std::size_t slips_between(const std::string& a, const std::string& b) {
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i)
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, changed});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    return d[a.size()][b.size()];
}

constexpr std::size_t longest_name = 40;  // no field's is half as long

// Of the fields that are read here the one that is likely meant: a slip in every three letters at most; empty where none is so near.
// One that is not there already before one that is.
std::string nearest(const std::string& name, const Json& object, const std::set<std::string>& known) {
    if (name.size() > longest_name) return {};
    std::string best;
    std::pair<std::size_t, bool> least{std::max<std::size_t>(1, name.size() / 3) + 1, false};
    for (const std::string& one : known) {
        const std::pair here{slips_between(lowercase(name), one), object.contains(one)};
        if (here >= least || here.first >= name.size()) continue;
        least = here;
        best = one;
    }
    return best;
}

bool is_anothers(const std::string& name) {
    return name.rfind("x-", 0) == 0 || name.rfind("_", 0) == 0 || name.rfind("$", 0) == 0;
}

std::string as_json(const std::string& name) {
    return Json(name).dump(-1, ' ', false, Json::error_handler_t::replace);
}

void look_through(const Json& json, const std::string& at, const Asked& asked, std::vector<Problem>& unread) {
    if (json.is_array())
        for (std::size_t i = 0; i < json.size(); ++i)
            look_through(json[i], at + "/" + std::to_string(i), asked, unread);
    const auto here = asked.find(at);
    if (!json.is_object() || here == asked.end()) return;
    for (const auto& field : json.items()) {
        const std::string pointer = at + pointer_step(field.key());
        if (here->second.contains(field.key())) {
            look_through(field.value(), pointer, asked, unread);
        } else if (!is_anothers(field.key())) {
            const std::string meant = nearest(field.key(), json, here->second);
            unread.push_back({pointer, Message::say("file.unread", as_json(field.key())),
                              meant.empty() ? Message() : Message::say("file.did_you_mean", as_json(meant))});
        }
    }
}

}  // namespace

std::vector<Problem> unread_in_job(const Json& job) {
    std::vector<Problem> unread, problems;
    if (!job.is_object()) return unread;
    Asked asked;
    read_job(job, problems, &asked);
    look_through(job, "", asked, unread);
    return unread;
}

std::vector<Problem> unread_in_shop(const Json& shop) {
    std::vector<Problem> unread, problems;
    if (!shop.is_object()) return unread;
    Asked asked;
    read_memory(shop, problems, &asked);
    read_preferences(shop, problems, &asked);
    Fields fields(&shop, "", Unit::millimetre, problems, &asked);
    Job shared;
    read_what_shops_share(fields, shared);
    look_through(shop, "", asked, unread);
    return unread;
}

}  // namespace kw
