#include "file/document.h"

#include "file/positions.h"

namespace kw {
namespace {

std::string line_of(const std::string& text, int line) {
    std::size_t start = 0;
    for (int i = 1; i < line; ++i) {
        const std::size_t newline = text.find('\n', start);
        if (newline == std::string::npos) return {};
        start = newline + 1;
    }
    return text.substr(start, text.find('\n', start) - start);
}

// What the library says behind its own prefix, in fewer words: English in any language.
Message plain_words(const std::string& message) {
    const std::size_t colon = message.find("; ");
    return Message::say("file.not_json", colon == std::string::npos ? message : message.substr(colon + 2));
}

}  // namespace

tl::expected<Json, FileError> parse_json(const std::string& text) {
    try {
        return Json::parse(text);
    } catch (const Json::parse_error& error) {
        const std::size_t offset = error.byte > 0 ? error.byte - 1 : 0;
        std::string words = error.what();
        const std::size_t detail = words.find("syntax error");
        if (detail != std::string::npos) words = words.substr(detail);
        return tl::unexpected(
            FileError{position_of(text, offset), plain_words(words), Message::say("file.json_near_here")});
    }
}

FileError to_file_error(const Problem& problem, const std::string& text, const Locale& locale) {
    return {locate(text, problem.pointer), Message::of(problem.why.text(locale)),
            Message::of(problem.remedy.text(locale))};
}

std::string report(const std::string& file, const std::string& text, const FileError& error,
                   const Locale& locale) {
    const bool has_place = error.position.line > 0;
    std::string out = file;
    if (has_place)
        out += ":" + std::to_string(error.position.line) + ":" + std::to_string(error.position.column);
    out += ": " + error.why.text(locale) + "\n";
    const std::string line = has_place ? line_of(text, error.position.line) : std::string();
    if (!line.empty())
        out += "    " + line + "\n    " +
               std::string(static_cast<std::size_t>(error.position.column - 1), ' ') + "^\n";
    if (!error.remedy.empty()) out += "  " + error.remedy.text(locale) + "\n";
    return out;
}

std::string to_text(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace kw
