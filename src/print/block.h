#pragma once
// Pieces of a page while it is being laid out: items measured from their own upper left corner, and how much room they take. So it
// is known before anything is placed whether there is room for it.

#include <string>
#include <string_view>
#include <vector>

#include "print/page.h"

namespace kw::print {

struct Block {
    std::vector<Item> items;
    double width_mm = 0;
    double height_mm = 0;
};

// The text in as many lines as it takes, but no more than that: names may be as long as their maker likes, and a page is not.
Block paragraph(std::string_view text, const TextStyle& style, double width_mm, std::size_t most_lines = 6);
// In one line, shortened where it has no room.
Block one_line(std::string_view text, const TextStyle& style, double width_mm, Align align = Align::left);

// One under the other; those without height are left out.
Block stacked(const std::vector<Block>& blocks, double gap_mm);

void put(std::vector<Item>& onto, const Block& block, Spot at);
// Into another block, which grows to hold it.
void put(Block& onto, const Block& block, Spot at);

// A line from the left to the right, its ends within the width.
Path across(double width_mm, double line_mm, const draw::Rgb& ink = draw::hex(0x000000));

// A box to tick, this high, with its tick where that is done.
Block tick_box(double size_mm, bool ticked = false);

// How the pages look: black where it is to be read, grey where it may be.
inline constexpr draw::Rgb black = draw::hex(0x000000);
inline constexpr draw::Rgb grey = draw::hex(0x4d4d4d);
inline constexpr draw::Rgb pale = draw::hex(0xeeeeee);
inline constexpr TextStyle body_text{3.5, false, black};
inline constexpr TextStyle strong_text{3.5, true, black};
inline constexpr TextStyle small_text{3.0, false, grey};

}  // namespace kw::print
