#pragma once
// A row of fingers that is set anew when sockets have been cut by the setting before: what each socket is off by adds up, so the new
// row must come to the same height as the old one.

#include "testcut/model.h"

namespace kw {

// What is believed of a group: of its controls as they stand, and after the moves advised.
struct RowBelief {
    Model model;
    Belief now, next;
};

// A belief of a row that nothing is read of yet, with pin and cutter as they are known by the one that it follows. What these are off by
// is learned there.
Belief with_pin_known(const Model& model, Belief belief, const Model& leads, const Belief& known);

// From here on the row over that many sockets, n (f + k), is one of the outcomes: it must come to what it is now believed to be, within the
// tolerance to either side. What was read of the old row and of the new one may be off alike: their beliefs stay correlated.
RowBelief row_to_match(RowBelief row, int sockets, double tolerance_mm);

// There is nothing left that it must match.
Model without_row_to_match(Model model);

}  // namespace kw
