#pragma once
// What can be wrong with a drawer whose joints are each fine by themselves.

#include "job/design.h"

namespace kw {

// How much deeper than the tongue is thick the groove may be: the reading of a rule. A quarter-inch groove, tongue and cutter
// are usual, and a clearance in the dado makes that tongue a little less (common practice, no source).
inline constexpr Length groove_past_tongue = Length::inches(1, 64);

// `at` is the drawer's JSON pointer. Empty: nothing is wrong.
std::vector<Problem> check_drawer(const DrawerDesign& drawer, const std::string& at);

// Of wood that is thinner than this nothing holds: it goes when the joint is put together (common practice, no source).
inline constexpr Length least_left = Length::millimetres(1);

// What check_drawer lets pass, and the maker had better know.
std::vector<Note> notes_on(const DrawerDesign& drawer);

// A size that no drawer has, as it comes of another unit than was meant.
struct UnitDoubt {
    std::string field;  // "/opening/width"
    Message size;       // "its opening is 365 in wide"
    Message question;   // "was another unit meant? ..."
};

// `unit`: of the job, in which a length without a unit is read.
std::optional<UnitDoubt> doubt_unit(const DrawerSpec& drawer, Unit unit);

}  // namespace kw
