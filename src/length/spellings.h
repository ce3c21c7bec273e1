#pragma once
// How the pieces of a length are spelled, keyboards, phones and pasted text included. Private to this folder.

#include <optional>
#include <string_view>

#include "length/tokens.h"

namespace kw {

// The piece that `text` begins with and how many bytes it takes, or nothing. Its column is left at 0.
std::optional<Token> symbol_at(std::string_view text);  // signs, foot and inch marks, ½ and its kin
std::size_t space_at(std::string_view text);            // bytes of white space at the beginning
std::size_t slash_at(std::string_view text);            // bytes of a fraction's line at the beginning

std::optional<Measure> measure_named(std::string_view word);  // in any case: `mm`, `In`, `feet`

// The bytes of the character at the beginning: at least 1, however broken the text is.
std::size_t character_at(std::string_view text);

// `text` for a message: as written, but with `?` for what can't be shown, and cut off where it gets long.
std::string plain(std::string_view text);

}  // namespace kw
