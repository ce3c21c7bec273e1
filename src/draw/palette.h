#pragma once
// One table for how everything looks, on the screen and on paper: colours, hatches, widths of lines, sizes of text.
//
// Drawing practice behind it: section lining at 45 degrees, adjacent parts in opposite directions, 3/32 in of spacing or
// more (US Navy engineering-aid text); of two line widths the wider is at least twice the thinner (a university
// page quoting EN ISO 128); separate symbols for end grain and with the grain (a 2020 textbook's ANSI symbols). Overlap and
// gap take vermillion and blue, which the Okabe-Ito set keeps apart for every kind of colour vision, darkened
// where they carry text so that contrast on the paper is at least 4.5:1 (WCAG 2.2, 1.4.3; checked in the tests).

#include <array>
#include <cstdint>
#include <vector>

#include "draw/drawing.h"

namespace kw::draw {

struct Rgb {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    bool operator==(const Rgb&) const = default;
};

constexpr Rgb hex(std::uint32_t rgb) {
    return {static_cast<std::uint8_t>(rgb >> 16), static_cast<std::uint8_t>(rgb >> 8 & 0xff),
            static_cast<std::uint8_t>(rgb & 0xff)};
}

enum class Theme { light, dark };

struct Palette {
    Rgb paper;         // the ground of the whole window, and of printed cards
    Rgb card;          // a raised sheet, and the ground under pictures
    Rgb well;          // sunk: entry fields, tracks
    Rgb ink;           // text
    Rgb soft_ink;      // captions
    Rgb hairline;      // rules between things; carries no meaning
    Rgb edge;          // edge of what can be touched (3:1 against paper and card)
    Rgb accent;        // the one strong colour: what to do next, what is chosen
    Rgb accent_press;  // the same, held down
    Rgb accent_tint;   // chosen, quietly
    Rgb on_accent;     // text on accent
    Rgb changed;       // differs from before; always with its mark
    Rgb good;          // done, fits; always with a tick or a word
    Rgb good_tint;
    Rgb caution;  // take care; always with a sign or a word
    Rgb caution_tint;
    Rgb wrong;  // cannot be made as asked, does not fit; always with a sign or a word
    Rgb wrong_tint;
};

const Palette& palette(Theme theme);

// WCAG 2.2 contrast ratio, 1 to 21.
double contrast(Rgb a, Rgb b);

// A family of parallel lines. The pattern is fixed to the picture's origin and does not scale with the picture.
struct Hatch {
    double angle_deg = 45;  // from x, counter-clockwise
    double spacing_px = 8;
    double width_px = 1;
    double offset_px = 0;   // of the first line, across the lines
    double dash_px = 0;     // 0: unbroken
    double space_px = 0;    // between dashes
    double stagger_px = 0;  // how far the next line's dashes are moved along
    bool operator==(const Hatch&) const = default;
};

// Largest number of families in one fill: what the shader has room for.
inline constexpr std::size_t max_hatches = 3;

struct FillStyle {
    Rgb ground;
    bool transparent = false;  // the ground is left as it is
    Rgb hatch_ink;
    std::vector<Hatch> hatches;
    Rgb edge;
    double edge_px = 2.4;
    double edge_dash_px = 0;  // 0: unbroken
    double edge_space_px = 0;
    bool operator==(const FillStyle&) const = default;
};

FillStyle fill_style(Material material, Theme theme);

// The style for one fill: its hatches turned for `mirrored` and `upright`.
FillStyle fill_style(const Fill& fill, Theme theme);

struct LineStyle {
    Rgb ink;
    double width_px = 1.2;
    std::array<double, 4> dashes_px{};  // dash, space, dash, space; all 0: unbroken
    bool operator==(const LineStyle&) const = default;
};

LineStyle line_style(Stroke stroke, Theme theme);

struct AnnotationStyle {
    Rgb ink;
    double line_px = 1.2;
    double text_px = 20;  // em
    bool bold = false;
    bool framed = false;  // a frame round the text: the mark of `changed` that does not hang on colour
};

AnnotationStyle annotation_style(Emphasis emphasis, Theme theme);
inline constexpr double label_px = 20;  // em of a label; a dimension has its emphasis's

// Room around text and lines of dimensions, in paper pixels.
inline constexpr double arrow_length_px = 13;
inline constexpr double arrow_half_width_px = 4;
inline constexpr double extension_gap_px = 4;
inline constexpr double extension_overrun_px = 5;
inline constexpr double dimension_clearance_px = 18;  // from the picture to the first dimension line
inline constexpr double text_gap_px = 11;             // between a line and the text beside it
inline constexpr double row_step_px = 8;              // how far a dimension moves out at a time to find room
inline constexpr double plate_pad_px = 5;             // bare ground round the text
inline constexpr double line_height_em = 1.21;
inline constexpr double ascent_em = 0.97;

}  // namespace kw::draw
