#pragma once
// Templates for where slides go, true to size, one for all drawers whose slides go alike; behind them those for handles' holes.

#include "job/work.h"
#include "print/page.h"

namespace kw::print {

// A page each. One that is higher than the paper is said in numbers alone.
std::vector<Page> slide_templates(const Work& work, Paper paper);

}  // namespace kw::print
