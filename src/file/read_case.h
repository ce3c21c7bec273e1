#pragma once
// What was measured of the case and of the drawers that were put together. Private to this folder.

#include "file/fields.h"

namespace kw {

// The least of what was typed and of the places that were measured; with neither, the field is missing.
void read_opening(Fields& opening, DrawerSpec& drawer);

// By copy: "1" is the first of `count`.
std::map<int, Assembled> read_assembled(Fields fields, int count);

}  // namespace kw
