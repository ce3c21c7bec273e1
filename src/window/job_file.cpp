#include "window/job_file.h"

#include "file/shop_file.h"
#include "window/platform.h"

namespace kw::window {

tl::expected<std::optional<Json>, Message> JobFile::news(const Json& shop) {
    std::error_code error;
    if (!std::filesystem::exists(path_, error)) return std::nullopt;
    const auto text = read_file(path_);
    if (!text) return tl::unexpected(text.error().why);
    if (*text == text_) return std::nullopt;
    auto json = parse_json(*text);
    if (!json) return tl::unexpected(Message::of(report(path_.string(), *text, json.error())));
    if (!json->is_object() || !json->contains("drawers"))
        return tl::unexpected(Message::say("keep.no_job", path_.string()));
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
