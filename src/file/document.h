#pragma once
// A job file: its text, what it says, and where in it each field stands.

#include <filesystem>

#include "file/read_job.h"

namespace kw {

// Line and column, both from 1; columns count characters, not bytes.
struct Position {
    int line = 0;  // from 1; 0: no place in it, but the file itself
    int column = 0;
};

// A message about a file: what is wrong, where, and what would do.
struct FileError {
    Position position;
    Message why;
    Message remedy;
};

tl::expected<Json, FileError> parse_json(const std::string& text);

// Where the value at `pointer` begins, or the nearest thing around it that exists. `text` must be valid JSON.
Position locate(const std::string& text, const std::string& pointer);

// Where the names of these begin, with the quotes, however they are written there; of what has no name, the value. The text is gone through
// once for all of them.
std::vector<Position> locate_names(const std::string& text, const std::vector<std::string>& pointers);

// "job.json:12:20: why\n    the line\n    ^ here\n  what would do". `text` empty: without the line.
std::string report(const std::string& file, const std::string& text, const FileError& error,
                   const Locale& locale = {});
// Its lengths as they are read in this locale, and in its language.
FileError to_file_error(const Problem& problem, const std::string& text, const Locale& locale);

// The whole file, two spaces a level, a newline at the end: the same job gives the same bytes.
std::string to_text(const Json& json);

tl::expected<std::string, FileError> read_file(const std::filesystem::path& path);

// Written aside in the same folder, synced, and renamed: at any moment the file is the old one or the new one.
tl::expected<void, FileError> save_file(const std::filesystem::path& path, const std::string& text);

// The same, where the file still says what was read of it; not where someone else has written into it since.
tl::expected<void, FileError> save_over(const std::filesystem::path& path, const std::string& read,
                                        const std::string& text);

}  // namespace kw
