#pragma once
// The job's file as it was read or written last: others write into it too.

#include <filesystem>
#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "file/document.h"

namespace kw::window {

// What could not be saved of this job when its window was closed: the newest such file beside it or else in that folder, if there is one.
std::optional<std::filesystem::path> unsaved_of(const std::filesystem::path& job,
                                                const std::filesystem::path& other_folder);

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
    // Where the file still says what it said at the last look; a file that is gone is there again.
    tl::expected<void, Message> write(const Json& document);

    // What could not be written: into a file of its own beside this one, or else into that folder. Which it is.
    tl::expected<std::filesystem::path, Message> write_beside(const Json& document,
                                                              const std::filesystem::path& other_folder);

    const Json& document() const { return document_; }

private:
    std::filesystem::path path_;
    std::string text_;      // as in the file
    std::string new_text_;  // of the news
    Json document_;
};

}  // namespace kw::window
