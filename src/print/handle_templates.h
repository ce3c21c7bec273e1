#pragma once
// Templates for handles' holes, true to size, one for all faces whose holes lie alike. Private to this folder.

#include "job/work.h"
#include "print/page.h"

namespace kw::print {

// A page each, not yet finished. One that is higher or wider than the paper is said in numbers alone. None where no bank has handles.
std::vector<Page> handle_templates(const Work& work, Paper paper);

}  // namespace kw::print
