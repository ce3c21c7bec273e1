#pragma once
// What was told of boards and sheets that were broken down, as it stands in an entry of the log. Private to this folder.

#include "file/fields.h"

namespace kw {

BrokenDown read_broken_down(Fields& entry);
void add_broken_down(const BrokenDown& down, Unit unit, Json& entry);

}  // namespace kw
