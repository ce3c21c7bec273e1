#pragma once
// What was measured of the case and of the drawers that were put together. Private to this folder.

#include "file/fields.h"

namespace kw {

// The least of what was typed and of the places that were measured; with neither, the field is missing. Of a drawer in a bank it may be: what
// the bank's opening tells is taken, and the height follows from the faces (0 here).
void read_opening(Fields& opening, DrawerSpec& drawer, const BankSpec* bank);

// By copy: "1" is the first of `count`.
std::map<int, Assembled> read_assembled(Fields fields, int count);

}  // namespace kw
