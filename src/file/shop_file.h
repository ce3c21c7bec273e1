#pragma once
// The shop's file: what stands in it, for jobs that do not say, and what it has learned. One for all jobs.

#include "file/document.h"
#include "memory/memory.h"

namespace kw {

inline constexpr int shop_version = 1;

// The lessons of a shop's file. A file of before there were any has none.
tl::expected<Memory, std::vector<Problem>> read_memory(const Json& shop);

// The same with all that can be read of it, and the fields that were asked for. `shop` is an object.
Memory read_memory(const Json& shop, std::vector<Problem>& problems, Asked* asked);

// The same file with these lessons; everything else in it is kept. An empty document becomes a shop's file.
Json with_memory(Json shop, const Memory& memory);

// Machines and cutters of the shop, and what things take in it, for a job that does not say.
void add_shop(Json& job, const Json& shop);

}  // namespace kw
