#pragma once
// The sums and differences in a length text, term by term as written. Private to this folder.

#include <optional>
#include <vector>

#include "length/tokens.h"

namespace kw {

// `10 1/16 in`, `- 12,7`, `1' 2 1/2"`. Feet beside inches are in `feet`, and then the measure is the inch.
struct Term {
    std::size_t column = 0;  // of the first byte behind the sign
    std::size_t end = 0;     // one past the last byte
    bool negative = false;
    std::optional<Ratio> feet;
    Ratio amount;
    std::optional<Measure> measure;  // nothing: a bare number
};

// At least one term.
tl::expected<std::vector<Term>, ReadError> terms_of(const std::vector<Token>& tokens);

}  // namespace kw
