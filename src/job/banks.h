#pragma once
// Banks of drawers: from what is asked of a column to the faces and openings of its drawers.

#include "job/job.h"

namespace kw {

// Works out every bank of the job, and gives its drawers what follows: the face, the height of the opening where that is left open, and the
// rest of the opening where only the column's is told. What can't be is told at the field of the bank or of the drawer; a bank of which
// something is told is not worked out, and none is where `problems` has some already: then only what is wrong with the names is told.
//   ends that are left open: those of the doors beside; of inset faces the reveal; else the case's edge less the reveal
//   inset faces have the width of the narrowest opening in front (what is read at the back does not count) less the gaps
//   an opening that is left open has the least height of the drawer's rows
void hang_in_banks(Job& job, std::vector<Problem>& problems);

// What its faces are cut by: inset ones must pass the narrowest of its openings, overlay ones go by the column as it was typed.
Length width_faced(const BankSpec& bank);

// What a row is told of by: its drawer, of several copies with the copy's number, "seeds 2".
std::string row_name(const Job& job, const BankSpec& bank, std::size_t row);

// The first bank that has a drawer of this name; null where none has.
const BankSpec* bank_of(const std::vector<BankSpec>& banks, const std::string& drawer);

// What a bank's made faces say: not in line with the doors beside, and by how much.
struct OutOfLine {
    Length above;     // how far the bank's line is above the doors'; - below
    Length would_do;  // `top` or `bottom` that lines them up
    bool at_top = true;
};
std::vector<OutOfLine> out_of_line(const BankSpec& bank);

}  // namespace kw
