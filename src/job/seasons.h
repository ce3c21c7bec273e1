#pragma once
// Solid parts over the year: how far they move across their grain, and what that jams or opens.

#include "job/design.h"

namespace kw {

// Of a board so wide across its grain when it is cut.
struct Season {
    Length swells;   // by the dampest month
    Length shrinks;  // by the driest
};

// Nothing for what is no solid wood, or of no species that is known. Wood of unknown moisture is taken to be as dry as it ever
// gets, which leaves the most room.
std::optional<Season> season_of(const Stock& stock, const Climate& climate, Length width);

// Of a drawer's bottom, whose grain runs from side to side: it moves from the front of the box to the back's outside face. The box and its
// back joint are known by then.
std::optional<Season> season_of_bottom(const Job& job, const DrawerDesign& drawer);

// Sides that would jam in the opening, and an inset face that would: at the field that has to give. `at` is the drawer's JSON pointer.
std::vector<Problem> check_seasons(const Job& job, const DrawerDesign& drawer, const std::string& at);

// What moves by more than a rule shows, and has room to.
std::vector<Note> season_notes(const Job& job, const DrawerDesign& drawer);

// Plywood whose thickness is written just as it is called, which it hardly ever measures.
std::vector<Note> nominal_notes(const Job& job);

}  // namespace kw
