#pragma once
// From what the search found to cuts with places. Private to this folder.

#include "cutting/cuts.h"
#include "cutting/repack.h"
#include "cutting/sound.h"

namespace kw::cutting {

struct Scale {
    Ticks kerf = 0;
    Ticks trim = 0;
    Length least_offcut_length = {};
    Length least_offcut_width = {};
};

// `way` is the one by which the sheet's regions came about.
SheetLayout layout_of(const Sheet& sheet, const SoundWay& way, const Scale& scale);

}  // namespace kw::cutting
