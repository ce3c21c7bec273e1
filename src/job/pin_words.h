#pragma once
// What a pin holds, as it is shown.

#include <string>

#include "length/message.h"

namespace kw {

// In English the pin's own name (pin_name); in other languages with all but the names of machines, cutters and parts in their words.
Message said_pin(const std::string& pin);

}  // namespace kw
