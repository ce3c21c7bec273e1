#pragma once
// The card that comes first: boards and sheets broken down, a box to tick for each setting of fence and stop. Private to this folder.

#include "job/lay_out.h"
#include "job/work.h"
#include "print/page.h"

namespace kw::print {

// Without head and foot; none where nothing is to be laid out. What can't be is named, with what would do.
std::vector<Page> breaking_card(const Work& work, const LayOut& layout, Paper paper);

}  // namespace kw::print
