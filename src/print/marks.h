#pragma once
// What of a page lies on the paper in the end: areas, lines and pieces of text, in the page's millimetres. The words of
// pictures are set and their hatches are cut to the areas that they fill, so that a program that prints need only be able to
// fill, to stroke, and to set text.

#include <array>
#include <variant>
#include <vector>

#include "print/page.h"

namespace kw::print {

// Even-odd: a ring within a ring is a hole.
struct FilledArea {
    std::vector<std::vector<Spot>> rings;
    draw::Rgb ink;
};

// Lines of one look, with round ends and corners.
struct StrokedLines {
    std::vector<std::vector<Spot>> lines;
    draw::Rgb ink;
    double width_mm = 0.25;
    std::array<double, 4> dashes_mm{};  // dash, space, dash, space; all 0: unbroken
    bool closed = false;
};

// One line of one size, `width_mm` wide: a fraction is set in pieces.
struct SetText {
    Spot at;  // where its baseline begins
    std::string text;
    TextStyle style;
    double width_mm = 0;
};

using Mark = std::variant<FilledArea, StrokedLines, SetText>;

std::vector<Mark> marks_of(const Page& page);

// Where text stands: from its letters' highest point to their lowest.
Area area_of(const SetText& text);

// The lines of a hatch within an area, even-odd. Pixels, y down, from the picture's origin.
std::vector<std::vector<Spot>> hatch_lines(const std::vector<std::vector<Spot>>& rings_px,
                                           const draw::Hatch& hatch);

}  // namespace kw::print
