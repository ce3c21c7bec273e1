#pragma once
// Banks of drawers: from what is asked of a column to the faces and openings of its drawers.

#include "job/job.h"

namespace kw {

// Works out every bank of the job, and gives its drawers what follows: the face, the height of the opening where that is left open, and the
// rest of the opening where only the column's is told. What can't be is told at the field of the bank or of the drawer; a bank of which
// something is told is not worked out, and none is where `problems` has some already: then only what is wrong with the names is told.
//   ends that are left open: those of the doors beside; of inset faces the reveal; else the case's edge less the reveal
//   an opening that is left open has the least height of the drawer's rows
void hang_in_banks(Job& job, std::vector<Problem>& problems);

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
