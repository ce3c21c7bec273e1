#pragma once
// How much room words take on paper. From the advance widths of Inter, in which pages are printed: so a page is laid out
// alike on every machine, also where no font is to be had. Fractions count as they are set.

#include <string>
#include <string_view>
#include <vector>

#include "print/page.h"

namespace kw::print {

double text_width_mm(std::string_view text, const TextStyle& style);

// For a drawing's words: see draw/layout.h.
double text_width_px(std::string_view text, double size_px, bool bold);

// In as many lines as it takes, broken between words. A length stays whole; a word that is wider than the room is broken
// where the room ends.
std::vector<std::string> wrapped(std::string_view text, const TextStyle& style, double width_mm);

// The whole of it, or as much as has room, with an ellipsis at its end.
std::string shortened(std::string text, const TextStyle& style, double width_mm);

// From a baseline to the next.
double line_height_mm(const TextStyle& style);
// How far letters reach above the baseline and below it.
double ascent_mm(const TextStyle& style);
double descent_mm(const TextStyle& style);

}  // namespace kw::print
