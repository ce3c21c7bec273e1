#pragma once
// Offsets in a text as lines and columns. Private to this folder.

#include "file/document.h"

namespace kw {

Position position_of(const std::string& text, std::size_t offset);

}  // namespace kw
