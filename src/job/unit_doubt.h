#pragma once
// Sizes that no drawer has: they may be in another unit. Private to this folder.

#include "job/design.h"

namespace kw {

// A size that no drawer has, as it comes of another unit than was meant.
struct UnitDoubt {
    std::string field;  // "/opening/width"
    Message size;       // "its opening is 365 in wide"
    Message question;   // "was another unit meant? ..."
};

// `unit`: of the job, in which a length without a unit is read.
std::optional<UnitDoubt> doubt_unit(const DrawerSpec& drawer, Unit unit);

// One note for all of them, as the slip is likely the same in each.
void ask_about_units(const Job& job, std::vector<Note>& notes);

// What can't be made may only be in the wrong unit: of the drawer's problems, from the `first` on, one that is about its size asks that too.
void ask_about_units(const Job& job, std::size_t drawer, std::size_t first, std::vector<Problem>& problems);

}  // namespace kw
