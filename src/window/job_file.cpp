#include "window/job_file.h"

#include <algorithm>

#include "file/shop_file.h"
#include "window/platform.h"

namespace kw::window {
namespace {

// Whether work can go on in it: wrong fields are shown, and put right; a log that is none can't be.
bool is_job(const Json& json) {
    const auto is_entry = [](const Json& entry) {
        if (!entry.is_object()) return false;
        for (const char* name : {"kind", "time", "setup", "key", "part", "reference"})
            if (entry.contains(name) && !entry[name].is_string()) return false;
        return !entry.contains("together") || entry["together"].is_boolean();
    };
    const auto are = [&](const char* name, const auto& right) {
        return json[name].is_array() && std::all_of(json[name].begin(), json[name].end(), right);
    };
    if (!json.is_object() || !json.contains("drawers")) return false;
    return are("drawers", [](const Json& drawer) { return drawer.is_object(); }) &&
           (!json.contains("log") || are("log", is_entry));
}

}  // namespace

tl::expected<std::optional<Json>, Message> JobFile::news(const Json& shop) {
    std::error_code error;
    if (!std::filesystem::exists(path_, error)) return std::nullopt;
    const auto text = read_file(path_);
    if (!text) return tl::unexpected(text.error().why);
    if (*text == text_) return std::nullopt;
    auto json = parse_json(*text);
    if (!json) return tl::unexpected(Message::of(report(path_.string(), *text, json.error())));
    if (!is_job(*json)) return tl::unexpected(Message::say("keep.no_job", path_.string()));
    add_shop(*json, shop);
    new_text_ = *text;
    return std::move(*json);
}

void JobFile::take_up(Json document) {
    text_ = new_text_;
    document_ = std::move(document);
}

tl::expected<void, Message> JobFile::write(const Json& document) {
    std::string text = to_text(document);
    if (const auto saved = save_file(path_, text); !saved) return tl::unexpected(saved.error().why);
    platform::commit_data();
    text_ = std::move(text);
    document_ = document;
    return {};
}

}  // namespace kw::window
