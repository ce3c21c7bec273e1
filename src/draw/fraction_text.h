#pragma once
// Lengths in running text as a maker writes them on paper: the 1/16 of "10 1/16 in" is set as a small raised 1,
// a slash and a small 16. This splits a text into pieces to set that way; window and paper set them alike.

#include <string>
#include <string_view>
#include <vector>

namespace kw::draw {

enum class RunKind { plain, numerator, slash, denominator };

struct TextRun {
    std::string text;
    RunKind kind = RunKind::plain;
    bool operator==(const TextRun&) const = default;
};

// Digits/digits standing free of letters and further digits make a fraction; the space between a whole number and
// its fraction is taken out (the setter leaves fraction_gap_em there instead).
std::vector<TextRun> text_runs(std::string_view text);

// How a fraction is set, in parts of the size of the text around it.
inline constexpr double fraction_digit_size = 0.70;
inline constexpr double numerator_raise_em = 0.28;
inline constexpr double denominator_drop_em = 0.02;
inline constexpr double fraction_gap_em = 0.10;
inline constexpr const char* fraction_slash = "\u2044";

}  // namespace kw::draw
