#pragma once
// The pieces of a setup card. Private to this folder.

#include "print/block.h"
#include "print/card_matter.h"
#include "words/words.h"

namespace kw::print {

// Step, what is done, and whose parts; machine and setup at the right.
Block card_head(const CardMatter& card, double width_mm);

// A number to set, as large as it may be.
Block number_block(const SetupNumber& number, const Words& words, double width_mm, double size_mm);

// How the board lies, and what guides and cuts it.
Block lie_block(const CardMatter& card, double width_mm);
// What is changed at the machine, and what is left.
Block changes_block(const CardMatter& card, const Words& words, double width_mm);
Block cautions_block(const CardMatter& card, double width_mm);

// The parts from `first` on with boxes to tick, in columns that are filled one after another, no higher than `most_mm`.
struct PartsBlock {
    Block block;
    std::size_t next = 0;  // the first for which there was no room
};
PartsBlock parts_block(const CardMatter& card, const Words& words, std::size_t first, double width_mm,
                       int columns, double most_mm);

// What to do for the test cut, and fields for what it reads.
Block test_block(const TestToMake& test, const Words& words, const std::string& unit, double width_mm);

// The section in this room, with the scale it is drawn at beneath; and the boards beside or under it. Nothing where one of them would be
// too small beside its words to be of use.
std::optional<Block> picture_block(const CardMatter& card, const Words& words, double width_mm,
                                   double height_mm, bool with_boards);

}  // namespace kw::print
