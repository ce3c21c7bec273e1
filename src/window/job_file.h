#pragma once
// The job's file as it was read or written last: others write into it too.

#include <filesystem>
#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "file/document.h"

namespace kw::window {

class JobFile {
public:
    // `text`: as it was read; `document`: what is made of it, with what the shop adds.
    JobFile(std::filesystem::path path, std::string text, Json document)
        : path_(std::move(path)), text_(std::move(text)), document_(std::move(document)) {}

    // What the file says now, where that is something else than it did; with what `shop` adds. A file that is gone says nothing new.
    // The message: why it can't be told.
    tl::expected<std::optional<Json>, Message> news(const Json& shop);
    // The news were taken up.
    void take_up(Json document);
    tl::expected<void, Message> write(const Json& document);

    const Json& document() const { return document_; }

private:
    std::filesystem::path path_;
    std::string text_;      // as in the file
    std::string new_text_;  // of the news
    Json document_;
};

}  // namespace kw::window
