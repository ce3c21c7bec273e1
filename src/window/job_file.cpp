#include "window/job_file.h"

#include <algorithm>

#include "file/shop_file.h"
#include "window/platform.h"

namespace kw::window {
namespace {

// Whether work can go on in it: wrong fields are shown, and put right; a log that is none can't be.
bool is_job(const Json& json) {
    constexpr const char* truths[] = {"together", "late"};
    const auto is_entry = [&](const Json& entry) {
        if (!entry.is_object()) return false;
        for (const char* name : {"kind", "time", "setup", "key", "machine", "part", "reference"})
            if (entry.contains(name) && !entry[name].is_string()) return false;
        return std::all_of(std::begin(truths), std::end(truths), [&](const char* name) {
            return !entry.contains(name) || entry[name].is_boolean();
        });
    };
    const auto are = [&](const char* name, const auto& right) {
        return json[name].is_array() && std::all_of(json[name].begin(), json[name].end(), right);
    };
    if (!json.is_object() || !json.contains("drawers")) return false;
    return are("drawers", [](const Json& drawer) { return drawer.is_object(); }) &&
           (!json.contains("log") || are("log", is_entry));
}

std::filesystem::path unsaved_name(const std::filesystem::path& job, int number) {
    const std::string which = number > 1 ? " " + std::to_string(number) : std::string();
    return job.stem().string() + ".unsaved" + which + ".json";
}

// The first name of those in the folder that is free.
int free_number(const std::filesystem::path& job, const std::filesystem::path& folder) {
    std::error_code error;
    int number = 1;
    while (std::filesystem::exists(folder / unsaved_name(job, number), error)) ++number;
    return number;
}

}  // namespace

std::optional<std::filesystem::path> unsaved_beside(const std::filesystem::path& job) {
    const int free = free_number(job, job.parent_path());
    if (free == 1) return std::nullopt;
    return job.parent_path() / unsaved_name(job, free - 1);
}

tl::expected<std::filesystem::path, Message> JobFile::write_beside(
    const Json& document, const std::filesystem::path& other_folder) {
    Message why;
    for (const std::filesystem::path& folder : {path_.parent_path(), other_folder}) {
        const std::filesystem::path file = folder / unsaved_name(path_, free_number(path_, folder));
        const auto saved = save_file(file, to_text(document));
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
    std::string text = to_text(document);
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
