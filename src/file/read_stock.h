#pragma once
// The boards and sheets that parts are cut from. Private to this folder.

#include "file/fields.h"

namespace kw {

Stock read_stock(Fields fields);
CuttingRules read_cutting(Fields fields);

}  // namespace kw
