#pragma once
// What a maker does with a job, by pressing what is on the screen.

#include "window/maker.h"

namespace kw::window {

// What the cut would measure, as the maker keys it in.
std::string decimals(Length length);

// A test cut at this setup, read, worked out and locked, by its buttons. A tongue is read 0.005 in long.
void test_and_lock(Maker& maker);

// From the order to the last part: every joint tested and locked, every part ticked. Returns how many were locked.
int make_all(Maker& maker);

}  // namespace kw::window
