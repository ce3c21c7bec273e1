#pragma once
// A printed page as a value. Millimetres from the page's upper left corner: x to the right, y down. Whatever is to be
// printed is made of these few items, and every way of writing pages (pdf.h, svg.h) knows no more than the marks that
// they come to (marks.h), so that all write the same page.

#include <string>
#include <variant>
#include <vector>

#include "draw/drawing.h"
#include "draw/palette.h"
#include "length/length.h"

namespace kw::print {

enum class Paper { a4, letter };

struct PaperSize {
    Length width;
    Length height;
};

// Upright. A4: 210 by 297 mm (ISO 216); Letter: 8 1/2 by 11 in (ANSI/ASME Y14.1, size A).
PaperSize size_of(Paper paper);

struct Spot {
    double x_mm = 0;
    double y_mm = 0;
    bool operator==(const Spot&) const = default;
};

struct Area {
    double left_mm = 0;
    double top_mm = 0;
    double right_mm = 0;
    double bottom_mm = 0;

    double width_mm() const { return right_mm - left_mm; }
    double height_mm() const { return bottom_mm - top_mm; }
    bool operator==(const Area&) const = default;
};

struct TextStyle {
    double size_mm = 3.6;  // the em
    bool strong = false;
    draw::Rgb ink = draw::hex(0x000000);
    bool operator==(const TextStyle&) const = default;
};

enum class Align { left, centre, right };

// One line. `at` is on the baseline, where the text begins, has its middle, or ends.
struct Text {
    Spot at;
    std::string text;
    TextStyle style;
    Align align = Align::left;
    bool operator==(const Text&) const = default;
};

// A drawn line from point to point.
struct Path {
    std::vector<Spot> points;
    double width_mm = 0.25;
    bool closed = false;
    bool dashed = false;
    draw::Rgb ink = draw::hex(0x000000);
    bool operator==(const Path&) const = default;
};

// A plain area behind other things.
struct Tint {
    Area area;
    draw::Rgb ink;
    bool operator==(const Tint&) const = default;
};

// The same drawing that the screen shows.
struct Picture {
    draw::Drawing drawing;
    Spot origin;         // where its (0 mm, 0 mm) lies
    double scale = 1;    // millimetres of paper for one of the drawing: 1 is true size
    double px_mm = 0.2;  // how large a paper pixel is: words, lines and hatches have their size in these
    bool with_spares = true;
    bool is_low = false;
    bool operator==(const Picture&) const = default;
};

using Item = std::variant<Text, Path, Tint, Picture>;

// Later items lie on top.
struct Page {
    Paper paper = Paper::a4;
    std::string title;  // for whoever cannot see it, and for the file
    std::vector<Item> items;
    bool operator==(const Page&) const = default;
};

Item moved(Item item, double right_mm, double down_mm);

// The outline of an area.
Path frame(const Area& area, double width_mm = 0.25);

}  // namespace kw::print
