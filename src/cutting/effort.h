#pragma once
// How long a layout is searched for. Effort is a count of what the search looks at and never time, so that the same job has
// the same answer on every machine.

#include <cstdint>
#include <functional>

namespace kw::cutting {

enum class Searching { on, stop };

// Told now and then while a layout is searched: what the best found so far comes to, and what no layout can beat, both in the
// measure of the question (boards or money; for the value of a panel, value). It answers whether the search goes on. A watch that
// never says stop can't change what is found; after a stop the best that was found stands, with its bound.
using Watch = std::function<Searching(std::int64_t best, std::int64_t bound)>;

struct Effort {
    // Free places that a piece was held against, and partial layouts that were counted out: ten million take a laptop a tenth
    // of a second, more or less.
    std::int64_t looks = 60'000'000;
    Watch watch = {};
};

}  // namespace kw::cutting
