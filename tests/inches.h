#pragma once
// Inches as the trade writes them.

#include "length/length.h"

namespace kw::tests {

constexpr Length in(std::int64_t n, std::int64_t d = 1) { return Length::inches(n, d); }

}  // namespace kw::tests
