// A random job whose drawers are all put together by box joints.
#pragma once

#include "checker/json.h"

namespace checker {

// The same drawers and shop with fingers at all four corners and a captured bottom, but for those with a bottom of solid wood.
Json with_box_joints(Json job);

}  // namespace checker
