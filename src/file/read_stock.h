#pragma once
// The boards and sheets that parts are cut from. Private to this folder.

#include "file/fields.h"

namespace kw {

Stock read_stock(Fields fields);
// Of one drawer's faces, cut from this stock (nullptr: from none that there is).
FaceBanding read_face_banding(Fields fields, const Stock* stock);
CuttingRules read_cutting(Fields fields);

}  // namespace kw
