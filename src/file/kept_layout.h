#pragma once
// A file that a maker has written by hand keeps its layout where only some of it changes.

#include <optional>
#include <string>

#include "file/fields.h"

namespace kw {

// The document as text, laid out as `text` is, the same file as it was before: what says the same is byte for byte what it was, with the blanks
// and line ends around it. What is new stands as its neighbour does, on lines of its own or in one line. A text that is laid out as to_text does
// it, or is no JSON, or whose layout can't be kept (a field that is there twice), becomes to_text(document).
std::string text_with(const std::string& text, const Json& document);

// The same, and nothing where the layout can't be kept. It is not checked again that the text says what the document does.
std::optional<std::string> in_its_layout(const std::string& text, const Json& document);

}  // namespace kw
