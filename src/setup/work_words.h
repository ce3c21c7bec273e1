#pragma once
// What a setup does, as it is shown: its `work` and all that names of cuts, joints and panels are put together of.

#include <string_view>

#include "length/message.h"

namespace kw {

// "back dado: side dado, pass 1 of 2", "rip to width: sides, fronts", or any piece of these: "side dado", "locking rabbet". What is
// not known here stays as it is.
Message said_work(std::string_view work);

}  // namespace kw
