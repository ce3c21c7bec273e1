#include <array>

#include "draw/fraction_text.h"
#include "draw/svg.h"

namespace kw::draw {
namespace {

// Advance widths of Inter Regular, thousandths of an em, for U+0020 to U+007E.
constexpr std::array<int, 95> ascii_advance{
    281, 278, 403, 631, 638, 812, 639, 222, 362, 362, 500, 659, 280, 460, 276, 357, 625, 464, 605,
    636, 642, 608, 624, 571, 616, 624, 276, 280, 659, 659, 659, 507, 936, 676, 651, 727, 719, 598,
    587, 743, 740, 264, 543, 652, 562, 889, 753, 761, 635, 761, 639, 638, 642, 741, 676, 949, 642,
    665, 625, 362, 357, 362, 469, 452, 497, 564, 621, 558, 621, 582, 361, 609, 591, 237, 237, 544,
    237, 869, 585, 597, 609, 609, 372, 523, 364, 581, 557, 812, 540, 557, 541, 362, 327, 362, 659};
constexpr int other_advance = 660;  // what most signs outside ASCII take
constexpr int slash_advance = 274;  // U+2044
constexpr double bold_factor = 1.06;

double plain_width_em(std::string_view text) {
    int sum = 0;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte >= 0x20 && byte < 0x7f) sum += ascii_advance[byte - 0x20u];
        else if (byte >= 0xc0) sum += other_advance;  // first byte of a longer sequence; the rest add nothing
    }
    return sum / 1000.0;
}

double run_width_em(const TextRun& run) {
    switch (run.kind) {
        case RunKind::plain: return plain_width_em(run.text);
        case RunKind::slash: return slash_advance / 1000.0;
        case RunKind::numerator:
        case RunKind::denominator: break;
    }
    return plain_width_em(run.text) * fraction_digit_size;
}

}  // namespace

double paper_text_width(std::string_view text, double size_px, bool bold) {
    double em = 0;
    for (const TextRun& run : text_runs(text)) {
        if (run.kind == RunKind::numerator && em > 0) em += fraction_gap_em;
        em += run_width_em(run);
    }
    return em * size_px * (bold ? bold_factor : 1.0);
}

}  // namespace kw::draw
