#pragma once
// A bank of faces in the maker's words, and the marks to put on one tape.

#include <string>
#include <vector>

#include "job/bank_checks.h"
#include "job/work.h"

namespace kw {

// A face, from the top down; heights from the zero of the tape.
struct TapeRow {
    std::string drawer;  // "seeds 2"
    Length lower, upper;
    std::optional<Length> holes;  // of its handle
    std::optional<Length> slide;  // where it is screwed to the case: its middle, or the box's bottom edge
    Length opening_lower, opening_upper;  // of what its box may fill
    Length over_top, over_bottom;  // how far it covers what is above and below its opening; - the gap there
};

struct SaidBank {
    std::string head;  // "left: 3 overlay faces 16 1/4 in wide ..."
    std::string rule;  // "equal heights"
    FaceStyle style = FaceStyle::overlay;
    std::string measured_from;  // where the tape's zero is
    std::vector<TapeRow> rows;
    std::vector<Note> notes;
    std::string left_over;  // empty: all divided out
};

// Zero is the case's lower end where it is told how much the case has there, else the floor of the column's opening.
Length tape_zero(const BankSpec& bank);
SaidBank say_bank(const Work& work, const BankSpec& bank);

}  // namespace kw
