#include "window/job_file.h"

#include <algorithm>

#include "file/kept_layout.h"
#include "file/shop_file.h"
#include "window/platform.h"

namespace kw::window {
namespace {

// Whether work can go on in it: wrong fields are shown, and put right; a log that is none can't be.
bool is_job(const Json& json) {
    const auto is_entry = [](const Json& entry) {
        if (!entry.is_object()) return false;
        for (const char* name : {"kind", "time", "setup", "key", "machine", "part", "reference", "late"})
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

namespace fs = std::filesystem;

// In another folder jobs of one name from several places may meet.
fs::path unsaved_name(const fs::path& job, const fs::path& folder, int number) {
    std::string name = job.stem().string();
    if (folder != job.parent_path())
        name += "-" + std::to_string(std::hash<std::string>{}(job.parent_path().string()) % 100'000);
    return folder / (name + ".unsaved" + (number > 1 ? " " + std::to_string(number) : "") + ".json");
}

// The highest of those in the folder; 0: there is none.
int newest_unsaved(const fs::path& job, const fs::path& folder) {
    constexpr int most = 99;
    std::error_code error;
    int number = most;
    while (number > 0 && !fs::exists(unsaved_name(job, folder, number), error)) --number;
    return number;
}

}  // namespace

std::optional<fs::path> unsaved_of(const fs::path& job, const fs::path& other_folder) {
    for (const fs::path& folder : {job.parent_path(), other_folder})
        if (const int number = newest_unsaved(job, folder); number > 0)
            return unsaved_name(job, folder, number);
    return std::nullopt;
}

tl::expected<fs::path, Message> JobFile::write_beside(const Json& document, const fs::path& other_folder) {
    Message why;
    for (const fs::path& folder : {path_.parent_path(), other_folder}) {
        const fs::path file = unsaved_name(path_, folder, newest_unsaved(path_, folder) + 1);
        const auto saved = save_file(file, text_with(text_, document));
        if (saved) return file;
        why = saved.error().why;
    }
    return tl::unexpected(why);
}

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
    std::string text = text_with(text_, document);
    std::error_code error;
    const auto saved =
        std::filesystem::exists(path_, error) ? save_over(path_, text_, text) : save_file(path_, text);
    if (!saved) return tl::unexpected(saved.error().why);
    platform::commit_data();
    text_ = std::move(text);
    document_ = document;
    return {};
}

}  // namespace kw::window
