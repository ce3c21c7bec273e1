#pragma once
// What a bank's faces meet: each other over the year, the doors beside, and the boxes that their handles' screws go into.

#include "job/design.h"

namespace kw {

// A gap of the bank, from the top down: how wide it is as made, in the dampest month and in the driest.
struct GapOverYear {
    std::optional<std::size_t> above,
        below;  // the rows of the faces at it; nothing: the end of the column, or a rail
    Length made, least, most;
};

// Each face is held in its middle, so that half of what it swells goes up and half down; two faces share a gap, and a rail stands still.
// Of overlay faces only the gaps between them. Faces of plywood, or of no species that is known, stand still.
std::vector<GapOverYear> gaps_over_year(const Job& job, const BankSpec& bank);

// A row's holes, and what they meet; nothing where the bank's handles are not told.
struct RowHoles {
    std::size_t row = 0;
    HandleHoles holes;
    HoleCheck check;
};
std::vector<RowHoles> holes_of(const std::vector<DrawerDesign>& drawers, const BankSpec& bank,
                               const Job& job);

// What can't be: faces that jam, holes beyond the face. `at` is the bank's JSON pointer.
std::vector<Problem> check_bank(const Job& job, const std::vector<DrawerDesign>& drawers,
                                const BankSpec& bank, const std::string& at);

// What can be, and the maker had better know.
std::vector<Note> notes_on(const Job& job, const std::vector<DrawerDesign>& drawers, const BankSpec& bank);

}  // namespace kw
