#pragma once
// A drawing as SVG text, for printed cards and golden files. The same drawing and options give the same text, byte
// for byte, on every machine: numbers are written with at most two decimals, and text is measured with a table.

#include <string>

#include "draw/drawing.h"
#include "draw/layout.h"

namespace kw::draw {

struct SvgOptions {
    double width_px = 800;  // of the whole sheet
    double height_px = 500;
    double px_per_mm = 0;  // 0: as large as fits, in the middle; otherwise at this scale, in the middle
    Theme theme = Theme::light;
};

std::string to_svg(const Drawing& drawing, const SvgOptions& options = {});

// Text width from the advance widths of Inter Regular; bold takes a little more. For sheets that no font
// measures.
double paper_text_width(std::string_view text, double size_px, bool bold);

}  // namespace kw::draw
