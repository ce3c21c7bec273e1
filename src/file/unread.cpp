#include "file/unread.h"

#include <algorithm>

#include "file/shop_file.h"
#include "words/near_name.h"

namespace kw {
namespace {

// One that is not there already before one that is.
std::string meant_by(const std::string& name, const Json& object, const std::set<std::string>& known) {
    std::vector<std::string> all;
    for (const bool is_there : {false, true})
        for (const std::string& one : known)
            if (object.contains(one) == is_there) all.push_back(one);
    return near_name(name, all);
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
            const std::string meant = meant_by(field.key(), json, here->second);
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
