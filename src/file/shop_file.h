#pragma once
// The shop's file: what stands in it, for jobs that do not say, and what it has learned. One for all jobs.

#include <filesystem>
#include <optional>

#include "file/document.h"
#include "memory/memory.h"
#include "memory/preferences.h"

namespace kw {

inline constexpr int shop_version = 1;

// A shop's file as it was read; without a text there was none.
struct ShopFile {
    std::optional<std::string> text;
    Json json = Json::object();
};

tl::expected<ShopFile, FileError> read_shop_file(const std::filesystem::path& file);
// Where nobody else has written into it since it was read.
tl::expected<void, FileError> save_shop_file(const std::filesystem::path& file, const ShopFile& read,
                                             const Json& json);

// The lessons of a shop's file. A file of before there were any has none. One with wrong preferences is refused as well.
tl::expected<Memory, std::vector<Problem>> read_memory(const Json& shop);

// The same with all that can be read of it, and the fields that were asked for. `shop` is an object.
Memory read_memory(const Json& shop, std::vector<Problem>& problems, Asked* asked);

// A document with a shop's head: an empty one becomes a shop's file.
Json as_shop(Json shop);

// The same file with these lessons; everything else in it is kept. An empty document becomes a shop's file.
Json with_memory(Json shop, const Memory& memory);

// How the maker likes to read and to work; as usual, where the file does not say (or says what can't be read).
Preferences read_preferences(const Json& shop);
Preferences read_preferences(const Json& shop, std::vector<Problem>& problems, Asked* asked);

// The same file with these preferences: those that are as usual are left out. Everything else in it is kept.
Json with_preferences(Json shop, const Preferences& preferences);

// Machines and cutters of the shop, what things take in it, and how the maker reads (where the unit is the job's), for a job that does not say.
void add_shop(Json& job, const Json& shop);

}  // namespace kw
