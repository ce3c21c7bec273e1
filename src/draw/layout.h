#pragma once
// Where the words and dimension lines of a drawing go on a sheet of pixels. Both the window and the printed card ask
// here, so that they agree. Pixels: x to the right, y down, from the sheet's upper left corner.

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "draw/drawing.h"
#include "draw/palette.h"

namespace kw::draw {

struct Pixel {
    double x = 0;
    double y = 0;
    bool operator==(const Pixel&) const = default;
};

struct PixelBox {
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;
    bool operator==(const PixelBox&) const = default;
};

// How the drawing lies on the sheet.
struct View {
    double px_per_mm = 1;
    Pixel origin;             // where (0 mm, 0 mm) lands
    double pixel_ratio = 1;   // device pixels per paper pixel
    bool with_spares = true;  // spare words are set as well
    bool is_low = false;      // what stands on the drawing itself would hide it
    // Where words and dimensions have to stay if what they belong to is in sight; those of the rest are left out.
    std::optional<PixelBox> sheet = {};
    bool operator==(const View&) const = default;
};

Pixel to_pixel(const View& view, Point p);
Point to_mm(const View& view, Pixel p);

// Width in pixels of a text set on one line, fractions included. size_px is the em.
using TextMeasure = std::function<double(std::string_view text, double size_px, bool bold)>;

struct PlacedLine {
    Pixel from;
    Pixel to;
    Emphasis emphasis = Emphasis::plain;
    bool extension = false;  // a thin extension or leader line, whatever the emphasis
};

struct PlacedArrow {
    Pixel tip;
    Pixel direction;  // unit vector in which it points
    Emphasis emphasis = Emphasis::plain;
};

struct PlacedText {
    std::string text;
    PixelBox box;  // of the text itself; its plate is plate_pad_px larger
    double size_px = 20;
    bool bold = false;
    Emphasis emphasis = Emphasis::plain;
    bool framed = false;
    bool bare = false;  // without a plate
};

struct Annotations {
    std::vector<PlacedLine> lines;
    std::vector<PlacedArrow> arrows;
    std::vector<Pixel> dots;  // ends of leader lines
    std::vector<PlacedText> texts;
};

Annotations annotate(const Drawing& drawing, const View& view, const TextMeasure& measure);

// The largest view at which the drawing with its words lies on a sheet of this size, and in the middle of it. In a small room
// words are a tenth smaller, and spare ones go, before the picture shrinks to nothing.
View fitted(const Drawing& drawing, double width_px, double height_px, double pixel_ratio,
            const TextMeasure& measure);

// The smallest box around the annotations; an empty box at the origin if there are none.
PixelBox extent(const Annotations& annotations);

}  // namespace kw::draw
